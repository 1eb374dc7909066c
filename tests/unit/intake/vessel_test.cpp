#include "intake/vessel.h"
#include "kitchen/texts/lexicon.h"

#include <doctest/doctest.h>

using namespace thawslip::intake;
using thawslip::kitchen::Vessel;
using namespace std::chrono_literals;

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
        {"tagine", Vessel::Pot},
        {"", Vessel::Other},
        {"\xFF", Vessel::Other},
    };
    for (const auto& c : cases) {
        CAPTURE(c.words);
        CHECK(vessel_of(c.words) == c.vessel);
    }
}

TEST_CASE("appliances are known in every language, and slow ones by many names") {
    struct Case {
        const char* words;
        Vessel vessel;
    };
    const Case cases[] = {
        {"Schongarer", Vessel::SlowCooker},
        {"im großen Schongartopf", Vessel::SlowCooker},
        {"olla de cocción lenta", Vessel::SlowCooker},
        {"OLLA DE COCCION LENTA", Vessel::SlowCooker},
        {"multicooker", Vessel::SlowCooker},
        {"Reiskocher", Vessel::SlowCooker},
        {"arrocera", Vessel::SlowCooker},
        {"Gusseisenpfanne", Vessel::Pan},
        {"sartenes", Vessel::Pan},
        {"Auflaufformen", Vessel::Oven},
        {"Schnellkochtopf", Vessel::PressureCooker},
        {"olla a presión", Vessel::PressureCooker},
        {"Wärmeschublade", Vessel::Warmer},
        {"microondas", Vessel::Microwave},
        {"Kochtopf, nicht in die Mikrowelle", Vessel::Pot},
        {"slow cooker or pot", Vessel::SlowCooker},
        {"Shcongartopf", Vessel::SlowCooker},
        {"Schoongartopf", Vessel::SlowCooker}, // a letter too many, and one too few
        {"Schngartopf", Vessel::SlowCooker},
        {"crockpot", Vessel::SlowCooker},
        {"stew pot", Vessel::Pot},
        {"Schmortopf", Vessel::Pot},
        {"pan, stir slowly", Vessel::Pan},
        {"Schonbadtopf", Vessel::Pot}, // two letters beside "schongar": no slip
    };
    for (const auto& c : cases) {
        CAPTURE(c.words);
        CHECK(vessel_of(c.words) == c.vessel);
    }
    CHECK(vessel_of("multicooker", "high pressure") == Vessel::PressureCooker);
    CHECK(vessel_of("Multikocher", "Druck") == Vessel::PressureCooker);
    CHECK(vessel_of("pressure cooker", "slow cook, low") == Vessel::SlowCooker);
}

TEST_CASE("a slip in the middle of any long word for a vessel is noticed among other words") {
    std::size_t tried = 0;
    for (const auto& file : thawslip::kitchen::lexicon_files()) {
        for (const auto& row : file.rows) {
            const std::string name{row.words};
            constexpr std::size_t long_enough = 6; // "hot" is near "pot" but no slip for it
            if (row.section != thawslip::kitchen::Section::Appliance || row.phrase.ends_with('-') ||
                name.size() < long_enough || vessel_of(name) == Vessel::Other) {
                continue;
            }
            auto slip = name;
            slip.erase(name.size() / 2, 1);
            if (name[name.size() / 2] == ' ' || vessel_of(slip) != Vessel::Other) {
                continue; // still names a vessel: no slip
            }
            CAPTURE(slip);
            CHECK(nearest_vessel("my " + slip + ", lidded").has_value());
            ++tried;
        }
    }
    CHECK(tried > 50);
}

TEST_CASE("what cooks for hours by a low step is taken for a slow cooker, whatever it is called") {
    const auto slow = [](const char* setting, std::optional<thawslip::kitchen::TimeRange> time) {
        thawslip::kitchen::Cook cook;
        cook.in = "grandmother's hay box";
        cook.setting = setting;
        cook.time = time;
        return cooks_like_slow_cooker(cook);
    };
    const thawslip::kitchen::TimeRange long_time{2h, 3h};
    for (const char* setting : {"low", "auf niedriger Stufe", "low heat", "keep warm"}) {
        CAPTURE(setting);
        CHECK(slow(setting, long_time));
        CHECK_FALSE(slow(setting, thawslip::kitchen::TimeRange{2h, 2h + 59min}));
        CHECK_FALSE(slow(setting, std::nullopt));
    }
    CHECK_FALSE(slow("180 °C", long_time));
    CHECK_FALSE(slow("", long_time));
}

TEST_CASE("a slip of the finger in a vessel's name is noticed, another vessel is not") {
    const auto near = [](const char* words) {
        const auto vessel = nearest_vessel(words);
        return vessel ? vessel->name : std::string{};
    };
    CHECK(near("slow coker") == "slow cooker");
    CHECK(near("the big slow cokker") == "slow cooker");
    CHECK(near("Shcongarer") == "slow cooker");
    CHECK(near("crokpot") == "slow cooker");
    CHECK(near("microvawe") == "microwave");
    CHECK(near("ovne") == "oven");
    for (const char* words : {"hot stones", "bread machine", "", "the lot", "potato pit"}) {
        CAPTURE(words);
        CHECK(near(words).empty());
    }
}
