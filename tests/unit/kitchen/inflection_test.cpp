#include "kitchen/texts/inflection.h"

#include <algorithm>
#include <doctest/doctest.h>

using namespace thawslip::kitchen;

namespace {

bool may_be(std::string_view word, std::string_view form, Tongue tongue) {
    const auto forms = dictionary_forms(word);
    const auto found = std::ranges::find(forms, form, &Form::text);
    return found != forms.end() && found->changes[static_cast<std::size_t>(tongue)] != no_form;
}

} // namespace

TEST_CASE("English plurals compare equal to their singular") {
    for (const auto& [plural, one] : {std::pair{"anchovies", "anchovy"},
                                      {"oats", "oat"},
                                      {"tomatoes", "tomato"},
                                      {"radishes", "radish"},
                                      {"peaches", "peach"},
                                      {"pistachios", "pistachio"},
                                      {"bass", "bass"},
                                      {"rye", "rye"},
                                      {"us", "us"}}) {
        CHECK(singular(plural) == one);
        CHECK(may_be(plural, one, Tongue::English));
    }
    CHECK(may_be("loaves", "loaf", Tongue::English));
    CHECK_FALSE(may_be("ives", "if", Tongue::English));
}

TEST_CASE("Spanish words are known in either number and gender") {
    for (const auto& [word, one] : {std::pair{"nueces", "nuez"},
                                    {"peces", "pez"},
                                    {"panes", "pan"},
                                    {"cocidas", "cocido"},
                                    {"secas", "seco"},
                                    {"frijoles", "frijol"},
                                    {"descongelarlo", "descongelar"}}) {
        CHECK(may_be(word, one, Tongue::Spanish));
        CHECK_FALSE(may_be(word, one, Tongue::English));
    }
}

TEST_CASE("German words are known in every case, and without umlauts") {
    for (const auto& [word, one] : {std::pair{"nusse", "nuss"},
                                    {"nuesse", "nuss"},
                                    {"getrocknete", "getrocknet"},
                                    {"getrocknetem", "getrocknet"},
                                    {"bohnen", "bohne"},
                                    {"kaese", "kase"},
                                    {"krabben", "krabbe"}}) {
        CHECK(may_be(word, one, Tongue::German));
    }
    CHECK_FALSE(may_be("ein", "ei", Tongue::German)); // an article is no egg
}
