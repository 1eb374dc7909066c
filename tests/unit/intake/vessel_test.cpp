#include "intake/vessel.h"

#include <doctest/doctest.h>

using namespace thawslip::intake;
using thawslip::kitchen::Vessel;

TEST_CASE("what it is cooked in is known by its words, whatever stands around them") {
    struct Case {
        const char* words;
        Vessel vessel;
    };
    const Case cases[] = {
        {"slow cooker", Vessel::SlowCooker},
        {"my big Slow-Cooker", Vessel::SlowCooker},
        {"pressure cooker", Vessel::PressureCooker},
        {"microwave oven", Vessel::Microwave},
        {"Dutch oven", Vessel::Pot},
        {"oven, in a pan", Vessel::Oven},
        {"baking dish", Vessel::Oven},
        {"cast-iron pot", Vessel::Pot},
        {"saucepan", Vessel::Pot},
        {"frying pan", Vessel::Pan},
        {"grill", Vessel::Grill},
        {"steamer", Vessel::Steamer},
        {"pancake stone", Vessel::Other},
        {"potato pit", Vessel::Other},
        {"tagine", Vessel::Other},
        {"", Vessel::Other},
        {"\xFF", Vessel::Other},
    };
    for (const auto& c : cases) {
        CAPTURE(c.words);
        CHECK(vessel_of(c.words) == c.vessel);
    }
}

TEST_CASE("a slip of the finger in a vessel's name is noticed, another vessel is not") {
    CHECK(nearest_vessel("slow coker") == "slow cooker");
    CHECK(nearest_vessel("the big slow cokker") == "slow cooker");
    CHECK(nearest_vessel("microvawe") == "microwave");
    CHECK(nearest_vessel("ovne") == "oven");
    for (const char* words : {"tagine", "hot stones", "bread machine", "", "the lot"}) {
        CAPTURE(words);
        CHECK_FALSE(nearest_vessel(words));
    }
}
