#include "days.h"
#include "service/freezer/guest.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::test_support;
using service::NamedIn;

namespace {

std::string pot(const std::string& more, const std::string& below = {}) {
    return "[[package]]\ndish = \"Barn pot\"\nservings = 4\nfood = \"soup or stew\"\n" + more +
           below;
}

/// Where the description names what is avoided, and as what; "-" where it does not.
std::string named(const std::string& text, const std::string& avoided) {
    const auto read = service::read_avoided(avoided);
    REQUIRE(read);
    std::string found;
    for (const auto& one : service::avoided_in(packages_of(text).front(), *read.value)) {
        constexpr const char* places[] = {"contains", "may", "added", "words", "group"};
        found += std::string{found.empty() ? "" : ", "} + places[static_cast<int>(one.in)] + " " +
                 one.as;
    }
    return found.empty() ? "-" : found;
}

} // namespace

TEST_CASE("what a guest may not eat is found by contains, may contain and what is added") {
    const auto text =
        pot("contains = [\"butter\"]\nmay_contain = [\"hazelnuts\"]\n",
            "[[package.finish]]\nadd = \"2 eggs, beaten\"\nwhen = \"at the start\"\n");
    CHECK(named(text, "milk") == "contains butter");
    CHECK(named(text, "leche") == "contains butter");
    CHECK(named(text, "Milch") == "contains butter");
    CHECK(named(text, "nuts") == "may hazelnuts");
    CHECK(named(text, "Haselnuss") == "may hazelnuts");
    CHECK(named(text, "eggs") == "added 2 eggs, beaten");
    CHECK(named(text, "huevo, milk") == "added 2 eggs, beaten, contains butter");
    CHECK(named(text, "fish") == "-");
}

TEST_CASE("another of the group, or one without its kind, is never passed over") {
    const auto hazelnut = pot("contains = [\"hazelnuts\"]\n");
    CHECK(named(hazelnut, "walnut") == "group hazelnuts");
    CHECK(named(pot("contains = [\"tree nuts\"]\n"), "walnut") == "contains tree nuts");
    CHECK(named(pot("contains = [\"walnuts\"]\n"), "tree nuts") == "contains walnuts");
    CHECK(named(pot("contains = [\"peanuts\"]\n"), "nuts") == "contains peanuts");
    CHECK(named(pot("contains = [\"wheat\"]\n"), "gluten") == "contains wheat");
    CHECK(named(pot("contains = [\"barley\"]\n"), "gluten") == "contains barley");
    CHECK(named(pot("contains = [\"gluten\"]\n"), "wheat") == "contains gluten");
    CHECK(named(pot("contains = [\"prawns\"]\n"), "shellfish") == "contains prawns");
}

TEST_CASE("an entry that no list knows counts as what its spelling comes near") {
    CHECK(named(pot("contains = [\"milc\"]\n"), "milk") == "contains milc");
    CHECK(named(pot("contains = [\"Weizn\"]\n"), "gluten") == "contains Weizn");
    CHECK(named(pot("may_contain = [\"selery\"]\n"), "celery") == "may selery");
    CHECK(named(pot("contains = [\"kiwi\"]\n"), "milk") == "-");
}

TEST_CASE("what the cook only wrote among ingredients or steps counts as named") {
    CHECK(
        named(pot("contains = [\"celery\"]\n", "[[package.ingredient]]\nadd = \"200 g cheddar\"\n"),
              "milk") == "words 200 g cheddar");
    CHECK(named(pot("", "[package.cook]\nin = \"pot\"\ntime = \"20 min\"\nuntil = \"74 °C\"\n"
                        "steps = [\"Scatter walnuts over it.\"]\n"),
                "walnut") == "words Scatter walnuts over it.");
}

TEST_CASE("a word that no list knows is looked for as a word, and that is said") {
    const auto text = pot("", "[[package.ingredient]]\nadd = \"3 cloves garlic\"\n");
    CHECK(named(text, "garlic") == "words 3 cloves garlic");
    CHECK(named(text, "clove") == "words 3 cloves garlic");
    CHECK(named(text, "coriander") == "-");
    const auto read = service::read_avoided("coriander, milk");
    CHECK(to_text(read.messages).starts_with("caution: \"coriander\" is on no list of allergens"));
    for (const std::string wish :
         {"no nuts", "gluten-free", "sin leche", "vegan", "milk, ohne Eier"}) {
        CAPTURE(wish);
        CHECK_FALSE(service::read_avoided(wish));
    }
    CHECK_FALSE(service::read_avoided(" , "));
    CHECK_FALSE(service::read_avoided(""));
}

TEST_CASE("meat is found by the kind of food and by words for it, not only by the word") {
    const auto of_kind = [](const std::string& kind) {
        return "[[package]]\ndish = \"Press-house pot\"\nservings = 4\nfood = \"" + kind + "\"\n";
    };
    for (const std::string meat : {"meat", "Fleisch", "carne"}) {
        CAPTURE(meat);
        for (const std::string kind :
             {"raw ground meat", "raw sausage", "raw steaks", "cooked meat", "raw offal",
              "hot dogs", "raw poultry pieces", "bacon"}) {
            CHECK(named(of_kind(kind), meat) == "words " + kind);
        }
        CHECK(named(pot("", "[[package.ingredient]]\nadd = \"200 g chorizo\"\n"), meat) ==
              "words 200 g chorizo");
        CHECK(named(pot("", "[[package.ingredient]]\nadd = \"1 l chicken stock\"\n"), meat) ==
              "words 1 l chicken stock");
        CHECK(named(pot("", "[[package.ingredient]]\nadd = \"300 g Hähnchenbrust\"\n"), meat) ==
              "words 300 g Hähnchenbrust");
        CHECK(named(of_kind("cooked fish"), meat) == "-");
        CHECK(named(pot("", "[[package.ingredient]]\nadd = \"200 g vegan sausage\"\n"), meat) ==
              "-");
        CHECK(named(pot(""), meat) == "-");
    }
    CHECK(named(of_kind("gravy or broth"), "meat") == "group gravy or broth");
}

TEST_CASE("who avoids one animal is told to ask about meat of its sort, or of none that is named") {
    const auto with = [](const std::string& what) {
        return pot("", "[[package.ingredient]]\nadd = \"" + what + "\"\n");
    };
    CHECK(named(with("500 g pork shoulder"), "pork") == "words 500 g pork shoulder");
    CHECK(named(with("500 g beef"), "pork") == "group 500 g beef");
    CHECK(named(with("4 sausages"), "pork") == "group 4 sausages");
    CHECK(named(with("4 turkey legs"), "pork") == "-");
    CHECK(named(with("4 duck legs"), "poultry") == "group 4 duck legs");
    CHECK(named("[[package]]\ndish = \"Weir pot\"\nservings = 4\nfood = \"lean fish\"\n", "fish") ==
          "words lean fish");
    for (const std::string kind : {"cooked shellfish", "squid", "crab or lobster"}) {
        CHECK(named("[[package]]\ndish = \"Weir pot\"\nservings = 4\nfood = \"" + kind + "\"\n",
                    "shellfish") == "group " + kind);
    }
    CHECK(to_text(service::read_avoided("pork").messages).find("words for meat") !=
          std::string::npos);
}
