#include "kitchen/vessel.h"

#include <doctest/doctest.h>

using namespace thawslip::kitchen;

TEST_CASE("free words name a vessel by whole words, the more particular one first") {
    const std::pair<const char*, Vessel> cases[] = {
        {"slow cooker", Vessel::SlowCooker},
        {"my big Slow-Cooker", Vessel::SlowCooker},
        {"slow  cooker or pot", Vessel::SlowCooker},
        {"slow cookers", Vessel::SlowCooker},
        {"pressure cooker", Vessel::PressureCooker},
        {"microwave oven", Vessel::Microwave},
        {"oven", Vessel::Oven},
        {"a pot in the oven", Vessel::Oven},
        {"Dutch oven", Vessel::Pot},
        {"cast-iron pot", Vessel::Pot},
        {"large saucepan", Vessel::Pot},
        {"pan", Vessel::Pan},
        {"frying pan", Vessel::Pan},
        {"wok", Vessel::Pan},
        {"barbecue", Vessel::Grill},
        {"bamboo steamer", Vessel::Steamer},
        // Words that only hold such a name.
        {"pancake iron", Vessel::Other},
        {"spotless tin", Vessel::Other},
        {"rice cooker", Vessel::Other},
        {"", Vessel::Other},
        {"\xFF", Vessel::Other},
    };
    for (const auto& [words, vessel] : cases) {
        CAPTURE(words);
        CHECK(vessel_of(words) == vessel);
    }
}
