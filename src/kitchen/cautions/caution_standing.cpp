#include "kitchen/cautions/caution_topics.h"

namespace thawslip::kitchen {
namespace {

// These belong to no single package: the day sheet carries them.
constexpr CautionRule rules[] = {
    {"two-hour-rule", CautionLevel::Check,
     "food that spoils may stand between {0} and {1} for two hours in all, one hour above {2}", "",
     "USDA FSIS, Leftovers and Food Safety"},
    {"cool-before-freezing", CautionLevel::Check,
     "cool hot food in shallow pans or an ice bath, from {0} to {1} within 2 h and to {2} within "
     "6 h in all, before it goes into the freezer",
     "", "FDA Food Code 3-501.14, Cooling"},
    {"freeze-in-one-layer", CautionLevel::Check,
     "freeze the bags in a single layer with air around them; do not stack them until they are "
     "solid",
     "", "West Virginia University Extension, Freezing Guidelines"},
};

} // namespace

std::span<const CautionRule> standing_rules() {
    return rules;
}

} // namespace thawslip::kitchen
