#include "kitchen/vessel.h"

#include "kitchen/phrases.h"
#include "kitchen/text.h"

#include <algorithm>
#include <array>

namespace thawslip::kitchen {
namespace {

struct Name {
    std::string_view words;
    Vessel vessel;
};

/// The first that is found counts: the narrower before the wider.
constexpr std::array<Name, 23> names = {{{"slow cooker", Vessel::SlowCooker},
                                         {"slowcooker", Vessel::SlowCooker},
                                         {"pressure cooker", Vessel::PressureCooker},
                                         {"microwave", Vessel::Microwave},
                                         {"steamer", Vessel::Steamer},
                                         {"dutch oven", Vessel::Pot},
                                         {"oven", Vessel::Oven},
                                         {"roasting tin", Vessel::Oven},
                                         {"baking tray", Vessel::Oven},
                                         {"grill", Vessel::Grill},
                                         {"broiler", Vessel::Grill},
                                         {"barbecue", Vessel::Grill},
                                         {"frying pan", Vessel::Pan},
                                         {"skillet", Vessel::Pan},
                                         {"wok", Vessel::Pan},
                                         {"saucepan", Vessel::Pot},
                                         {"stock pot", Vessel::Pot},
                                         {"stockpot", Vessel::Pot},
                                         {"casserole", Vessel::Pot},
                                         {"kettle", Vessel::Pot},
                                         {"cauldron", Vessel::Pot},
                                         {"pan", Vessel::Pan},
                                         {"pot", Vessel::Pot}}};

} // namespace

Vessel vessel_of(std::string_view words) {
    std::vector<std::string_view> phrases;
    for (const auto& name : names) {
        phrases.push_back(name.words);
    }
    auto first = names.size();
    for (const auto& match : PhraseBook{phrases}.find(words_of(words))) {
        first = std::min(first, match.entries.front());
    }
    return first == names.size() ? Vessel::Other : names[first].vessel;
}

} // namespace thawslip::kitchen
