#pragma once

#include "kitchen/allergens/allergen_list.h"
#include "kitchen/date.h"
#include "kitchen/heat/thaw_lead.h"

#include <optional>

namespace thawslip::kitchen {

/// Which measures of temperature, weight and volume are printed; `Written`: as the cook wrote them.
enum class Units { Metric, Us, Both, Written };

/// Which spoons and cups stand in the cook's own drawer.
enum class Measures { Us, Metric, Australian, Imperial };

/// What the rules need to know about a kitchen and the people who eat there. Whose list of
/// storage life is asked first is said by `StorageTable::rule_set`.
struct KitchenSettings {
    /// The list that declared allergens are held against; never nullptr.
    const AllergenList* allergens = allergen_lists().data();
    Units units = Units::Both;
    Measures measures = Measures::Us;
    double altitude_metres = 0.0; ///< above sea level; cautions start at 914 m (3000 ft)
    bool people_at_risk = false;  ///< pregnant, very young, old, or with weak immunity
    ThawSettings thaw = {};       ///< how cold the refrigerator is, among others

    /// What dates are held against for what is reported; of prints the door list alone has it, as
    /// the day that it holds for. Kitchen asks no clock.
    std::optional<Date> today = std::nullopt;

    /// Which of several kitchens that share an archive this is, up to
    /// kitchen::highest_kitchen_number: it stands in the ids of bags. 0: it has no number.
    int number = 0;
};

} // namespace thawslip::kitchen
