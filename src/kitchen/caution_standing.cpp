#include "kitchen/caution_topics.h"

namespace thawslip::kitchen {
namespace {

// These belong to no single package: the day sheet, or every print, carries them.
constexpr CautionRule rules[] = {
    {standing_line, CautionLevel::Card,
     "The rules of your food authority come first. This is no medical advice.", "",
     "common practice, no source"},
    {quality_line, CautionLevel::Card,
     "The date is for best quality: kept at {0} or colder all the time, it stays safe for longer.",
     "", "FoodSafety.gov, Cold Food Storage Chart; USDA FSIS, Freezing and Food Safety"},
    {"two-hour-rule", CautionLevel::Check,
     "food that spoils may stand between {0} and {1} for two hours in all, one hour above {2}", "",
     "USDA FSIS, Leftovers and Food Safety"},
    {"cool-before-freezing", CautionLevel::Check,
     "cool hot food in shallow pans or an ice bath, from {0} to {1} within 2 h and to {2} within "
     "6 h in all, before it goes into the freezer",
     "", "FDA Food Code 3-501.14, Cooling"},
};

} // namespace

std::span<const CautionRule> standing_rules() {
    return rules;
}

} // namespace thawslip::kitchen
