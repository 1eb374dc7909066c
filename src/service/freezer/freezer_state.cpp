#include "service/freezer/freezer_state.h"

#include <fmt/format.h>

namespace thawslip::service {
namespace {

/// Whether the archive has it so now; what stands against it, and what to mind, is said.
bool is_noted(archive::Archive& archive, const archive::Bag& before, archive::State state,
              Messages& messages) {
    const auto now = archive.bag(before.id);
    if (!now || now->state != state) {
        messages.error(fmt::format("{} {} is still noted as {}: what the archive knows of it is of "
                                   "a time to come that nothing can follow",
                                   before.id, before.dish, shown_word(before.state)),
                       {"thawslip archive check"});
        return false;
    }
    if (state == archive::State::Frozen && before.state == archive::State::Out) {
        messages.caution(
            fmt::format("{} has been out since {}; what was thawed in cold water or in the "
                        "microwave must be cooked before it is frozen again",
                        before.id, before.changed));
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
    std::vector<std::string> ids;
    for (const auto& bag : *outcome.value) {
        ids.push_back(bag.id);
    }
    archive.set_state(ids, state, moment.at, moment.station);
    std::erase_if(*outcome.value, [&](const archive::Bag& before) {
        return !is_noted(archive, before, state, outcome.messages);
    });
    return outcome;
}

} // namespace thawslip::service
