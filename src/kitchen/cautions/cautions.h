#pragma once

#include "kitchen/cautions/caution.h"
#include "kitchen/cooking/thaw_pairing.h"
#include "kitchen/day.h"
#include "kitchen/settings.h"
#include "kitchen/storage/keep_until.h"
#include "kitchen/storage/storage.h"
#include "kitchen/texts/free_texts.h"

#include <chrono>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::kitchen {

/// All that a rule may look at.
struct Scene {
    const Package& package;
    Date made;
    const KeepUntil& keep;
    const StorageTable& table;
    const KitchenSettings& settings;
    std::optional<Date> packing_day = std::nullopt; ///< the day's date, where it is known
    std::optional<Date> prepared = std::nullopt;    ///< when parts were made ready before it
    // What several rules ask of the package's words: `cautions` reads it once for all.
    std::vector<ReadText> texts = {};
    SaidHeat heat = {};
};

/// One place where a rule applies, and what fills `{0}`, `{1}`… of its words. Values are numbers,
/// temperatures, names of lists, the cook's own words and names of allergens; no sentences, so
/// that another language's words can take them over.
struct Finding {
    std::vector<std::string> values;
    KeyPath where;
};

/// Why a package is refused, and what to write instead, which may be empty. In English, as all
/// messages about a description are, with `{0}`, `{1}`… for the values.
struct Refusal {
    std::string_view message;
    std::string_view hint = {};
};

/// A caution that can be given. What is said of it stands in the wording tables, by `id`.
struct CautionRule {
    std::string_view id;
    CautionLevel level = CautionLevel::Check;
    std::string_view source; ///< publisher and title
    /// Where the rule applies in a package; nullptr for what belongs to the day.
    std::vector<Finding> (*find)(const Scene&) = nullptr;
    /// Where it stops harm that no other line of a label's code stops: a few words for the code,
    /// at most 40 capitals with `{0}`, `{1}`… for the values; else empty.
    std::string_view in_code = {};
    Refusal refusal = {}; ///< of level Refuse alone
};

/// Every rule there is. Ids are unique and never change their meaning.
std::vector<CautionRule> caution_rules();

/// The rule called `id`; nullptr where there is none.
const CautionRule* find_rule(std::span<const CautionRule> rules, std::string_view id);

/// The cautions of one package, the gravest first, equals in the order of the rules.
std::vector<Caution> cautions(const Scene& scene);

/// Whether a caution is for whoever thaws a bag; else it is for whoever cooks it.
bool is_of_thawing(const Caution& caution);

/// How long the middle of the food has to stay as hot as the prints say: as the publisher whose
/// minimum counts has it, or longer where the cook says so. Nothing where none does.
std::optional<std::chrono::seconds> holding(const Scene& scene);

/// The cautions of the packing day itself, to be said once: cooling, the two-hour rule, one
/// layer in the freezer.
/// None for a day of bread and fruit.
std::vector<Caution> day_cautions(const Day& day, const StorageTable& table,
                                  const KitchenSettings& settings);

/// The few words of a caution for a label's code, filled in; empty where its rule has none.
std::string words_in_code(const Caution& caution);

} // namespace thawslip::kitchen
