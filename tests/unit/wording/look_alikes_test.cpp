#include "wording/look_alikes.h"

#include <doctest/doctest.h>

using namespace thawslip::wording;

namespace {

/// A name with its strong words in brackets.
std::string marked(const std::string& dish, const std::vector<std::string>& others) {
    std::string text;
    for (const auto& span : told_apart(dish, others)) {
        text += span.emphasis == Emphasis::Strong ? "[" + span.text + "]" : span.text;
    }
    return text;
}

} // namespace

TEST_CASE("the words in which look-alikes differ are strong, and the others are not") {
    CHECK(marked("Pumpkin stew", {"Pumpkin curry"}) == "Pumpkin[ stew]");
    CHECK(marked("Pumpkin curry", {"Pumpkin stew"}) == "Pumpkin[ curry]");
    CHECK(marked("Mild lentil soup", {"Hot lentil soup"}) == "[Mild] lentil soup");
    CHECK(marked("Linsensuppe, scharf", {"Linsensuppe, mild"}) == "Linsensuppe,[ scharf]");
    CHECK(marked("Pumpkin stew", {"Pumpkin curry", "Bean stew"}) == "[Pumpkin stew]");
}

TEST_CASE("a name that nothing looks like has no strong word") {
    CHECK(marked("Pumpkin stew", {}) == "Pumpkin stew");
    CHECK(marked("Pumpkin stew", {"Kale and barley soup"}) == "Pumpkin stew");
    CHECK(marked("Pork with apple and sage", {"Beans with rice and corn"}) ==
          "Pork with apple and sage");
    CHECK(marked("Pumpkin stew", {"Pumpkin stew"}) == "Pumpkin stew");
}

TEST_CASE("names look alike by half of the shorter one's words, and by one at an end of it") {
    CHECK(marked("Pumpkin stew with barley, kale and leeks",
                 {"Pumpkin curry, rice, corn and lime"}) ==
          "Pumpkin stew with barley, kale and leeks"); // one word of five
    CHECK(marked("Smoky pumpkin barley stew", {"Mild pumpkin barley curry"}) ==
          "Smoky pumpkin barley stew"); // two of four, in the middle
    CHECK(marked("Smoky pumpkin barley stew", {"Smoky pumpkin"}) == "Smoky pumpkin[ barley stew]");
}

TEST_CASE("no word of a name is lost or changed by telling it apart") {
    const std::string dish = "Chestnut, kale and barley soup";
    for (const std::string other :
         {"Chestnut soup", "Barley soup", "Chestnut, kale and rice soup"}) {
        std::string text;
        for (const auto& span : told_apart(dish, {other})) {
            text += span.text;
        }
        CHECK(text == dish);
    }
}
