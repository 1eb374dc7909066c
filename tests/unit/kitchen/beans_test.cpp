#include "kitchen/foods/beans.h"

#include <doctest/doctest.h>

namespace beans_test {

using namespace thawslip::kitchen;
using std::chrono::minutes;

namespace {

struct Case {
    const char* text;
    BeanState state;
};

void check(std::initializer_list<Case> cases) {
    for (const auto& c : cases) {
        CAPTURE(std::string{c.text});
        CHECK(static_cast<int>(bean_state(worded(c.text), minutes{30})) ==
              static_cast<int>(c.state));
    }
}

} // namespace

TEST_CASE("dried beans are dried in every language, and no doubtful word lifts that") {
    check({
        {"300 g dried great northern beans", BeanState::Dry},
        {"dried pinto beans (not canned)", BeanState::Dry},
        {"kidney beans, not from a can", BeanState::Dry},
        {"dried navy beans, do not boil", BeanState::Dry},
        {"dried beans soaked and boiled for 10 min", BeanState::Dry},
        {"dried beans, boil if you like", BeanState::Dry},
        {"500 g dried cannellini beans and 1 can tomatoes", BeanState::Dry},
        {"beans, dried or canned", BeanState::Dry},
        {"black beans, soaked overnight", BeanState::Dry},
        {"400 g getrocknete Kidneybohnen", BeanState::Dry},
        {"weiße Bohnen, eingeweicht", BeanState::Dry},
        {"200 g alubias secas", BeanState::Dry},
        {"judías pintas sin cocer", BeanState::Dry},
        {"frijoles negros remojados", BeanState::Dry},
    });
}

TEST_CASE("canned and boiled beans are safe") {
    check({
        {"2 cans of black beans", BeanState::Safe},
        {"kidney beans, canned, not dried", BeanState::Safe},
        {"tinned beans in tomato sauce", BeanState::Safe},
        {"dried beans, boiled 30 minutes", BeanState::Safe},
        {"dried beans boiled for 1 h", BeanState::Safe},
        {"black beans, soaked overnight, then boiled hard for 30 min", BeanState::Safe},
        {"2 Dosen Kidneybohnen", BeanState::Safe},
        {"Bohnen, getrocknet, 30 Minuten gekocht", BeanState::Safe},
        {"1 bote de alubias cocidas", BeanState::Safe},
        {"alubias secas, hervidas 30 minutos", BeanState::Safe},
    });
}

TEST_CASE("where it is not said, it is asked, and other beans are none") {
    check({
        {"kidney beans", BeanState::Unclear},
        {"Bohneneintopf", BeanState::Unclear},
        {"borlotti", BeanState::Unclear},
        {"green beans", BeanState::None},
        {"grüne Bohnen", BeanState::None},
        {"judías verdes", BeanState::None},
        {"dried chickpeas", BeanState::None},
        {"broad beans, dried", BeanState::None},
        {"Kaffeebohnen", BeanState::None},
        {"bean sprouts", BeanState::None},
        {"dried lentils", BeanState::None},
    });
}

TEST_CASE("dried beans go by their names in other kitchens too") {
    check({
        {"250 g rajma", BeanState::Unclear},
        {"pasta e fagioli", BeanState::Unclear},
        {"kuru fasulye", BeanState::Unclear},
        {"gigantes plaki", BeanState::Unclear},
        {"200 g fasolia, dried", BeanState::Dry},
        {"haricots blancs", BeanState::Unclear},
        {"fagiolini", BeanState::None},
        {"haricots verts", BeanState::None},
    });
}

TEST_CASE("a step that leaves out the boiling is about dried beans") {
    const auto forbids = [](const char* text) {
        const std::vector<ReadText> texts{{FreeText::Step, text, worded(text), {}}};
        return steps_forbid_boiling(texts);
    };
    for (const auto* text : {"Do not boil the beans first.", "There is no need to boil them.",
                             "No soaking or boiling is needed.", "The beans need not be boiled.",
                             "No hace falta hervirlas.", "Las alubias no se hierven antes.",
                             "Einweichen ist nicht nötig.", "Die Bohnen nicht vorkochen."}) {
        CAPTURE(std::string{text});
        CHECK(forbids(text));
    }
    for (const auto* text : {"Do not let the stew boil.", "Boil the beans hard for 30 min.",
                             "Boil the beans for no less than 30 minutes.", "Serve at once.",
                             "Nicht kochen lassen.", "No dejar hervir la salsa."}) {
        CAPTURE(std::string{text});
        CHECK_FALSE(forbids(text));
    }
}

} // namespace beans_test
