#include "service/freezer/moved_bags.h"

#include "archive/limits.h"

#include <fmt/format.h>

namespace thawslip::service {

Outcome<std::vector<archive::Bag>> move_bags(archive::Archive& archive,
                                             const std::vector<std::string>& typed,
                                             const std::string& place, const Moment& moment,
                                             const ChooseBags& choose) {
    Outcome<std::vector<archive::Bag>> outcome;
    if (place.empty() || !archive::is_name(place)) {
        outcome.messages.error(
            fmt::format("a place is one line of at most {} characters", archive::Most::letters),
            {"for example --to \"garage, basket 2\""});
        return outcome;
    }
    outcome = chosen_bags(archive, {typed, {archive::State::Frozen, archive::State::Out}, choose});
    if (outcome) {
        std::vector<std::string> ids;
        for (const auto& bag : *outcome.value) {
            ids.push_back(bag.id);
        }
        archive.note(ids, {.place = place}, moment.at, moment.station);
    }
    return outcome;
}

Outcome<std::vector<archive::UndoneBag>> undo_last(archive::Archive& archive,
                                                   const Moment& moment) {
    Outcome<std::vector<archive::UndoneBag>> outcome;
    auto undone = archive.undo(moment.at, moment.station);
    if (undone.empty()) {
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
