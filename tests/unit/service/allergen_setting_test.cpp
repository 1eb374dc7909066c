#include "kitchen/allergens/allergens.h"
#include "service/settings.h"
#include "wording/style.h"

#include <doctest/doctest.h>

using namespace thawslip;

namespace {

std::string printed(const std::string& list, const std::vector<std::string>& contains) {
    const auto settings = service::settings_from("allergens = \"" + list + "\"\n", "settings.toml");
    REQUIRE(settings.value);
    return say_contains(kitchen::read_allergens(contains), service::style_of(*settings.value));
}

} // namespace

TEST_CASE("every list of allergens can be set by its name, and prints what it calls things") {
    for (const auto& list : kitchen::allergen_lists()) {
        const std::string name{list.name};
        CAPTURE(name);
        const auto settings =
            service::settings_from("allergens = \"" + name + "\"\n", "settings.toml");
        REQUIRE(settings.value);
        CHECK(settings.value->kitchen.allergens == &list);
    }
    const std::vector<std::string> contains{"wheat", "barley", "pine nuts"};
    CHECK(printed("us", contains) == "wheat, barley, tree nuts (pine nut)");
    CHECK(printed("eu", contains) == "cereals containing gluten (wheat, barley), "
                                     "tree nuts (pine nut)");
    CHECK(printed("canada", contains) == "wheat, barley, tree nuts (pine nut)");
}

TEST_CASE("another name of a list is understood, and the hint says which one is taken") {
    const auto settings = service::settings_from("allergens = \"uk\"\n", "settings.toml");
    CHECK_FALSE(settings.value);
    CHECK(to_text(settings.messages).find("\"eu\"") != std::string::npos);
}

TEST_CASE("cups and the degrees that come first are those of the language, unless they are set") {
    const auto measures = [](const std::string& text, const char* language) {
        auto settings = service::settings_from(text, "settings.toml");
        REQUIRE(settings.value);
        if (language != nullptr) {
            CHECK_FALSE(set_languages(*settings.value, language)); // as --language does
        }
        return settings.value->kitchen.measures;
    };
    using kitchen::Measures;
    CHECK(measures("", nullptr) == Measures::Us);
    CHECK(measures("language = \"de\"\n", nullptr) == Measures::Metric);
    CHECK(measures("language = [\"es\", \"en\"]\n", nullptr) == Measures::Metric);
    CHECK(measures("language = \"de\"\n", "en") == Measures::Us);
    CHECK(measures("", "es") == Measures::Metric);
    CHECK(measures("language = \"es\"\ncups = \"us\"\n", nullptr) == Measures::Us);
    CHECK(measures("cups = \"imperial\"\n", "de") == Measures::Imperial);
}
