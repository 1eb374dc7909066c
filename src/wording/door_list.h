#pragma once

#include "kitchen/day.h"
#include "kitchen/storage/keep_until.h"
#include "wording/print.h"
#include "wording/style.h"

#include <chrono>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace thawslip::wording {

/// What the freezer door list says of bags of one dish that share a date. It needs no description
/// of the day, so that an archive can fill it as well.
struct DoorRow {
    kitchen::Date keep_until;
    kitchen::DateBasis basis = kitchen::DateBasis::SetByCook;
    std::string dish;
    int servings = 0;                                ///< of one bag
    std::vector<std::string> bags;                   ///< their ids; each gets a line and a box
    std::optional<kitchen::ThawMethod> thaw;         ///< nothing: not known
    std::optional<std::chrono::minutes> thaw_lead{}; ///< nothing: not known
    bool raw = false;
};

/// The freezer door list: a line and a box to tick for every bag, soonest date first; equal dates
/// by dish, then as given. Runs on over as many pages as it needs.
Print door_list(std::span<const DoorRow> rows, const Style& style);

} // namespace thawslip::wording
