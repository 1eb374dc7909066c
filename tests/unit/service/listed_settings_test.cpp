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

TEST_CASE("every list of storage times and every paper can be set by its name") {
    const auto set = [](const std::string& key, const std::string& word) {
        return service::settings_from(key + " = \"" + word + "\"\n", "settings.toml").value;
    };
    for (const std::string name : {"us", "us-fsis", "us-fda", "us-older", "canada", "newfoundland",
                                   "oregon", "uk", "practice"}) {
        CAPTURE(name);
        const auto settings = set("storage_list", name);
        REQUIRE(settings);
        CHECK(settings->storage_list == name);
    }
    CHECK_FALSE(set("storage_list", "ours"));
    CHECK(set("paper", "a4")->paper == "a4");
    CHECK(set("paper", "letter")->paper == "letter");
    CHECK_FALSE(set("paper", "us letter")); // understood, and the hint names the word
    CHECK_FALSE(set("paper", "a3"));
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
