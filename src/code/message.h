#pragma once

#include "base/result.h"
#include "kitchen/day.h"
#include "kitchen/plan.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::code {

/// A target temperature to a tenth of a degree, on the scale it was written in.
struct Target {
    int tenths = 0;
    kitchen::TemperatureScale scale = kitchen::TemperatureScale::Celsius;
    friend bool operator==(const Target&, const Target&) = default;
};

struct KeepUntil {
    kitchen::Date date;
    kitchen::DateBasis basis = kitchen::DateBasis::SetByCook;
    friend bool operator==(const KeepUntil&, const KeepUntil&) = default;
};

/// What is added on cook day.
struct Addition {
    kitchen::When when;
    std::string what; ///< amount and item, as the cook wrote them: `1 L VEGETABLE STOCK`
    std::string bag;  ///< where it waits; empty when not said
    friend bool operator==(const Addition&, const Addition&) = default;
};

struct Cooking {
    std::string in; ///< empty when not said, as `setting`
    std::string setting;
    std::optional<kitchen::TimeRange> time; ///< whole minutes, low ≤ high, at most 30 days
    std::optional<Target> until;
    friend bool operator==(const Cooking&, const Cooking&) = default;
};

/// Another way to thaw than the first, as the fields of a message.
struct OtherThaw {
    kitchen::ThawMethod thaw = kitchen::ThawMethod::ColdWater;
    std::optional<kitchen::TimeRange> thaw_time;
    std::optional<kitchen::Placing> placing;
    std::optional<int> cook_within_days;
    /// From frozen, where the cooking time is of thawed food: how long that takes; or only that it
    /// takes longer, where nobody publishes how long.
    std::optional<kitchen::TimeRange> cook_time = {};
    bool cooks_longer = false;
    friend bool operator==(const OtherThaw&, const OtherThaw&) = default;
};

/// Is everything in the text, or does it send the reader to the cook-day card?
enum class Extent { Whole, SeeCard };

/// What a label's code says, as plain values. Words are folded (fold.h); nothing and empty mean
/// "not said", which is how the shorter forms differ from the fullest.
struct Message {
    std::string dish;
    bool raw = false;            ///< what is in the bag is raw, or may be
    std::optional<int> servings; ///< 1 to 9999
    std::string bag_id;
    std::optional<kitchen::Date> made;
    std::optional<KeepUntil> keep_until;
    std::optional<kitchen::ThawMethod> thaw;
    /// Look at it after the first, allow for the last; one number where they are the same. Only
    /// with a `thaw` that takes time.
    std::optional<kitchen::TimeRange> thaw_time;
    std::optional<kitchen::Placing> placing; ///< in the refrigerator, with `thaw_time`
    std::optional<int> cook_within_days;     ///< of being thawed in the refrigerator, 1 to 99
    std::string thaw_note;                   ///< only with `thaw`
    std::vector<OtherThaw> other_thaws = {}; ///< only with `thaw`: what may be done instead
    std::vector<Addition> additions;
    Cooking cooking;
    std::vector<std::string> cautions; ///< those that stop harm, each in a few words
    std::vector<std::string> steps;
    std::vector<std::string> allergens;
    std::vector<std::string> may_contain;
    std::string note;
    Extent extent = Extent::Whole;
    friend bool operator==(const Message&, const Message&) = default;
};

/// Whether the code says, among its cautions, that the food is eaten as it comes out of the
/// freezer: it has no way to thaw then.
bool is_eaten_frozen(const Message& message);

/// Everything about one bag in the cook's own words. All of `bag` that counts is its id.
Message message_in_full(const kitchen::PlannedPackage& package, const kitchen::Bag& bag);

/// What the code of one bag says: the same, folded.
Message message_for(const kitchen::PlannedPackage& package, const kitchen::Bag& bag);

/// `message` with all its words folded, empty ones left out, and numbers brought into range.
/// Whatever it is given, `parse(write(m)) == m` holds for the result.
Message folded(Message message);

/// The text of a message: lines that a person reads as instructions, in capitals, without a
/// newline at the end, in the oldest version of the grammar from the second on that can say all of
/// it; GRAMMAR.md has them. Folds `message` first.
std::string write(const Message& message);

/// What the code may say, fullest first. Each form leaves out one thing more, in this order:
/// the note; the day it was made; the servings; other ways to thaw; where the additions wait and
/// the note to the thaw line; the steps. Thaw, additions, temperature, cautions and allergens stay
/// in all of these. The last three send the reader to the cook-day card: dish, bag, keep-until,
/// thaw, temperature, cautions and allergens; the same without how to thaw, but that it must not
/// thaw stays; then dish and bag alone. Raw food is called raw in every form.
std::vector<std::string> texts(const Message& message);

/// Why a text is not a message.
struct ReadFault {
    enum class Kind {
        Foreign,      ///< not a text of ours at all
        LaterGrammar, ///< ours, of a version this program is too old for
        Damaged,      ///< ours, but characters are missing or wrong: the check does not agree
    };
    Kind kind = Kind::Foreign;
    std::string message; ///< for a person: lower case, no full stop
    std::string text;    ///< of LaterGrammar: what the label says, instructions all the same
};

/// The inverse of `write`, for every version of the grammar there has been. Line ends may be LF,
/// CR, CRLF or tab, with more of them at either end, and letters of either case: what handheld
/// scanners make of a text. Beyond that the text must be exactly what `write` gives, so a foreign
/// or damaged text never passes for another message. Takes anything, of any length.
Result<Message, ReadFault> parse(std::string_view text);

} // namespace thawslip::code
