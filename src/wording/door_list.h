#pragma once

#include "kitchen/allergens/allergens.h"
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

/// A bag of a row: it gets a box.
struct DoorBag {
    std::string id;
    int number = 1; ///< as on its label: bag `number` of its dish
};

/// What a dish is said to contain.
struct DoorAllergens {
    std::vector<kitchen::DeclaredAllergen> contains;
    std::vector<kitchen::DeclaredAllergen> may_contain;
    std::vector<kitchen::DeclaredAllergen> added = {}; ///< on cook day: kitchen::added_allergens
};

/// What the freezer door list says of bags of one dish that share a date. It needs no description
/// of the day, so that an archive can fill it as well.
struct DoorRow {
    kitchen::Date keep_until;
    kitchen::DateBasis basis = kitchen::DateBasis::SetByCook;
    std::string dish;
    int servings = 0; ///< of one bag
    std::vector<DoorBag> bags;
    std::optional<kitchen::ThawMethod> thaw;         ///< nothing: not known
    std::optional<std::chrono::minutes> thaw_lead{}; ///< nothing: not known
    bool raw = false;
    bool eaten_frozen = false;                   ///< there is no thawing
    std::optional<DoorAllergens> allergens = {}; ///< nothing: not known
    std::string place = {};                      ///< where the bags lie; may be empty
};

/// The freezer door list: a heading for each month, a row for each dish and date, or several where
/// its bags are very many, and in it a box to tick for every bag, with its number. Soonest date
/// first; equal dates by dish, then as given. Where bags lie at places, each place has its months,
/// with its name in their headings; what lies nowhere stands last. Where two rows say the same dish
/// and date and serve as many, the boxes have ids, so that every bag can be told. Runs on over as
/// many pages as it needs. \param printed_on the day that the list holds for; nothing: it does not
/// say
Print door_list(std::span<const DoorRow> rows, const Style& style,
                std::optional<kitchen::Date> printed_on = {});

} // namespace thawslip::wording
