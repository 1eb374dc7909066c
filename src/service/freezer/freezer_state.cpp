#include "service/freezer/freezer_state.h"

#include "archive/events.h"
#include "archive/limits.h"
#include "base/list.h"
#include "base/split.h"
#include "kitchen/figures.h"
#include "service/freezer/packages_of_bags.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::service {
namespace {

std::string minute_text(const std::string& at) {
    return at.size() < 16 ? at : at.substr(0, 10) + " " + at.substr(11, 5);
}

/// How long what is on a label may be out by one way to thaw until it must be cooked. Where nobody
/// knows how long it thaws in the refrigerator, a day, which even little food takes (USDA FSIS,
/// "The Big Thaw", from memory).
std::chrono::minutes good_for(const kitchen::PlannedPackage& way) {
    constexpr std::chrono::minutes least = std::chrono::days{1};
    const bool slow = way.package.thaw.method == kitchen::ThawMethod::Refrigerator;
    return allowed_thaw(way).value_or(slow ? least : std::chrono::minutes{0}) +
           cook_within(way).value_or(std::chrono::days{0});
}

/// Whether a bag was out for longer than any way on its label allows; where the label cannot be
/// told any longer, the cook has to know.
bool is_out_too_long(archive::Archive& archive, const archive::Bag& bag, const std::string& until) {
    PackagesOfBags packages{archive};
    const auto* package = packages.of(bag);
    if (package == nullptr) {
        return false;
    }
    auto good = good_for(*package);
    for (const auto& way : package->other_thaws) {
        good = std::max(good, good_for(way));
    }
    const std::chrono::seconds out{archive::seconds_of(until) - archive::seconds_of(bag.changed)};
    return out > good;
}

std::string back_text(archive::Archive& archive, const archive::Bag& bag, const std::string& at) {
    const auto since = fmt::format("{} has been out since {}", bag.id, minute_text(bag.changed));
    return is_out_too_long(archive, bag, at)
               ? since +
                     ", longer than its label allows to thaw and keep it: unless it was frozen "
                     "all that time it must not be eaten; discard it: thawslip freezer "
                     "discarded " +
                     bag.id
               : since + "; what was thawed in cold water or in the microwave must be cooked "
                         "before it is frozen again";
}

/// What was thrown away is not eaten, nor what was eaten taken out: its code was scanned again, or
/// one of the two notes is a slip.
bool is_gone_for(const archive::Bag& bag, archive::State state) {
    using enum archive::State;
    return (bag.state == Discarded && (state == Out || state == Eaten)) ||
           (bag.state == Eaten && state == Out);
}

Messages why_gone(const std::vector<archive::Bag>& bags, archive::State state) {
    Messages messages;
    for (const auto& bag : bags) {
        if (is_gone_for(bag, state)) {
            messages.error(fmt::format("{} {} was {} on {}", bag.id, bag.dish,
                                       shown_word(bag.state), bag.changed.substr(0, 10)),
                           {fmt::format("if that was a slip, it is in the freezer again with: "
                                        "thawslip freezer back {}",
                                        bag.id)});
        }
    }
    return messages;
}

/// Whether the archive has it so now; what stands against it, and what to mind, is said.
bool is_noted(archive::Archive& archive, const archive::Bag& before, archive::State state,
              const std::string& at, Messages& messages) {
    const auto now = archive.bag(before.id);
    if (!now || now->state != state) {
        messages.error(fmt::format("{} {} is still noted as {}: what the archive knows of it is of "
                                   "a time to come that nothing can follow",
                                   before.id, before.dish, shown_word(before.state)),
                       {"thawslip archive check"});
        return false;
    }
    if (state == archive::State::Frozen && before.state == archive::State::Out) {
        messages.caution(back_text(archive, before, at));
    }
    return true;
}

} // namespace

std::vector<archive::State> states_before(archive::State state) {
    using enum archive::State;
    switch (state) {
    case Out: return {Frozen};
    case Frozen: return {Out, Eaten, Discarded, NeverFilled};
    case Eaten:
    case Discarded: return {Out, Frozen};
    case NeverFilled: return {Frozen, Out};
    case Renamed: break;
    }
    return {};
}

Outcome<std::vector<archive::Bag>> note_state(archive::Archive& archive,
                                              const std::vector<std::string>& typed,
                                              archive::State state, const Moment& moment,
                                              const ChooseBags& choose) {
    auto outcome = chosen_bags(archive, {typed, states_before(state), choose});
    if (!outcome) {
        return outcome;
    }
    if (auto gone = why_gone(*outcome.value, state); !gone.all().empty()) {
        return {{}, std::move(gone)};
    }
    archive.set_state(mapped(*outcome.value, &archive::Bag::id), state, moment.at, moment.station);
    std::erase_if(*outcome.value, [&](const archive::Bag& before) {
        return !is_noted(archive, before, state, moment.at, outcome.messages);
    });
    return outcome;
}

Outcome<std::vector<archive::Bag>> move_bags(archive::Archive& archive,
                                             const std::vector<std::string>& typed,
                                             const std::string& place, const Moment& moment,
                                             const ChooseBags& choose) {
    Outcome<std::vector<archive::Bag>> outcome;
    const std::string named{trimmed(place)};
    if (named.empty() || !archive::is_name(named)) {
        outcome.messages.error(
            fmt::format("a place is one line of at most {} characters", archive::Most::letters),
            {"for example --to \"garage, basket 2\""});
        return outcome;
    }
    outcome = chosen_bags(archive, {typed, {archive::State::Frozen, archive::State::Out}, choose});
    if (outcome) {
        archive.note(mapped(*outcome.value, &archive::Bag::id), {.place = named}, moment.at,
                     moment.station);
    }
    return outcome;
}

Outcome<std::vector<archive::UndoneBag>> undo_last(archive::Archive& archive, const Moment& moment,
                                                   std::optional<std::int64_t> only) {
    Outcome<std::vector<archive::UndoneBag>> outcome;
    auto undone = archive.undo(moment.at, moment.station, only);
    if (undone.empty() && only) {
        outcome.messages.error("something else was noted or taken back since, so this is not taken "
                               "back any longer");
    } else if (undone.empty()) {
        outcome.messages.error(
            "there is nothing to undo: on this computer no bag was noted as out, back, eaten, "
            "discarded, never filled, moved or renamed",
            {"what was printed is not undone: thawslip freezer never-filled WORDS"});
    } else {
        outcome.value = std::move(undone);
    }
    return outcome;
}

} // namespace thawslip::service
