#include "kitchen/cautions/caution_topics.h"

namespace thawslip::kitchen {
namespace {

// These belong to no single package: the day sheet carries them.
constexpr CautionRule standing_rows[] = {
    {"two-hour-rule", CautionLevel::Check, "USDA FSIS, Leftovers and Food Safety"},
    {"cool-before-freezing", CautionLevel::Check, "FDA Food Code 3-501.14, Cooling"},
    {"freeze-in-one-layer", CautionLevel::Check,
     "West Virginia University Extension, Freezing Guidelines"},
};

} // namespace

std::span<const CautionRule> standing_rules() {
    return standing_rows;
}

} // namespace thawslip::kitchen
