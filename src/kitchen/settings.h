#pragma once

#include "kitchen/date.h"
#include "kitchen/heat/thaw_lead.h"

#include <optional>

namespace thawslip::kitchen {

/// Which list of allergens declared ones are held against.
enum class AllergenRules {
    Us, ///< the nine of the US (FALCPA 2004 and FASTER Act 2021)
    Eu, ///< the fourteen of Regulation (EU) 1169/2011, Annex II; also the United Kingdom's
};

/// Which measures of temperature, weight and volume are printed; `Written`: as the cook wrote them.
enum class Units { Metric, Us, Both, Written };

/// Which spoons and cups stand in the cook's own drawer.
enum class Measures { Us, Metric, Australian, Imperial };

/// What the rules need to know about a kitchen and the people who eat there. Whose list of
/// storage life is asked first is said by `StorageTable::rule_set`.
struct KitchenSettings {
    AllergenRules allergens = AllergenRules::Us;
    Units units = Units::Both;
    Measures measures = Measures::Us;
    double altitude_metres = 0.0; ///< above sea level; cautions start at 914 m (3000 ft)
    bool people_at_risk = false;  ///< pregnant, very young, old, or with weak immunity
    ThawSettings thaw = {};       ///< how cold the refrigerator is, among others

    /// What dates are held against for what is reported and never printed; kitchen asks no clock.
    std::optional<Date> today = std::nullopt;

    /// Which of several kitchens that share an archive this is, up to
    /// kitchen::highest_kitchen_number: it stands in the ids of bags. 0: it has no number.
    int number = 0;
};

} // namespace thawslip::kitchen
