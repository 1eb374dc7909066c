#include "base/letters.h"
#include "kitchen/allergens/allergens.h"

#include <algorithm>
#include <doctest/doctest.h>

namespace allergens_test {

using namespace thawslip::kitchen;

namespace {

const AllergenList& us = *find_allergen_list("us");
const AllergenList& eu = *find_allergen_list("eu");

using enum Allergen;

/// "milk; tree nuts (almond)" for what a text names under the US list and the EU list together.
std::string named_in(std::string_view text) {
    std::string all;
    for (const auto& mention : mentioned_allergens(text)) {
        all += (all.empty() ? "" : "; ") + label_name(mention.named, us);
    }
    return all;
}

std::string meaning(std::string_view written) {
    std::string all;
    for (const auto& named : read_allergen(written).meant) {
        all += (all.empty() ? "" : "; ") + label_name(named, us);
    }
    return all;
}

struct Case {
    const char* text;
    const char* expected;
};

} // namespace

TEST_CASE("what is declared is read under its proper name, with its kind") {
    const Case cases[] = {
        {"sesame seeds", "sesame"},
        {"Sesame", "sesame"},
        {"walnuts", "tree nuts (walnut)"},
        {"tree nuts", "tree nuts"},
        {"tree nuts (pecan)", "tree nuts; tree nuts (pecan)"},
        {"pine nuts", "tree nuts (pine nut)"},
        {"eggs", "eggs"},
        {"dairy", "milk"},
        {"lactose", "milk"},
        {"soya", "soybeans"},
        {"gluten", "cereals containing gluten"},
        {"barley", "cereals containing gluten (barley)"},
        {"spelt", "wheat (spelt)"},
        {"Shrimp", "crustaceans (shrimp)"},
        {"shellfish", "crustaceans; molluscs"},
        {"salmon", "fish (salmon)"},
        {"celery", "celery"},
        {"sulfites", "sulphites"},
        {"mollusks", "molluscs"},
        {"soy sauce", "wheat; soybeans"},
        {"leche", "milk"},
        {"Œufs", "eggs"},
        {"Sellerie", "celery"},
        {"frutos de cáscara", "tree nuts"},
        {"kiwi", ""},
        {"coconut", ""},
        {"chestnuts", ""},
        {"", ""},
    };
    for (const auto& c : cases) {
        CAPTURE(std::string{c.text});
        CHECK(meaning(c.text) == c.expected);
        CHECK(read_allergen(c.text).as_written == c.text);
    }
}

TEST_CASE("words that only sound like an allergen are passed over") {
    for (const char* text : {
             "1 butternut squash",
             "2 eggplants",
             "grated nutmeg",
             "1 tsp cream of tartar",
             "200 g buckwheat",
             "buckwheat flour",
             "400 ml coconut milk",
             "coconut cream",
             "coconut",
             "cocoa butter",
             "shea butter",
             "apple butter",
             "1 head butter lettuce",
             "butter beans",
             "rice milk",
             "rice flour",
             "rice noodles",
             "cornflour",
             "corn flour",
             "water chestnuts",
             "500 g chestnuts",
             "doughnut peach",
             "crab apples",
             "crab-apple jelly",
             "oyster mushrooms",
             "king oyster mushrooms",
             "lobster mushrooms",
             "gram flour",
             "ginger beer",
             "shallots",
             "boats",
             "codes",
             "malted",
             "creamy",
             "tiger nuts",
             "pearl onions",
             "wheatless",
         }) {
        CAPTURE(std::string{text});
        CHECK(named_in(text) == "");
    }
}

TEST_CASE("words that name an allergen are found, each as what it is") {
    const Case cases[] = {
        {"2 tbsp peanut butter", "peanuts"},
        {"30 g butter", "milk"},
        {"almond milk", "tree nuts (almond)"},
        {"1 l oat milk", "cereals containing gluten (oats)"},
        {"soy milk", "soybeans"},
        {"buttermilk", "milk"},
        {"crème fraîche", "milk"},
        {"100 g Parmesan", "milk"},
        {"sour cream", "milk"},
        {"3 eggs", "eggs"},
        {"egg noodles", "eggs; wheat"},
        {"plain flour", "wheat"},
        {"200 g pearl barley", "cereals containing gluten (barley)"},
        {"rolled oats", "cereals containing gluten (oats)"},
        {"soy sauce", "wheat; soybeans"},
        {"fish sauce", "fish"},
        {"anchovies", "fish (anchovy)"},
        {"prawns and mussels", "crustaceans (prawn); molluscs (mussel)"},
        {"oyster sauce", "molluscs (oyster); wheat; soybeans"},
        {"walnuts, chopped", "tree nuts (walnut)"},
        {"pine nuts", "tree nuts (pine nut)"},
        {"mixed nuts", "tree nuts"},
        {"tahini", "sesame"},
        {"hummus", "sesame"},
        {"celeriac", "celery"},
        {"Dijon mustard", "mustard"},
        {"150 ml red wine", "sulphites"},
        {"mayonnaise", "eggs; mustard"},
        {"butter, butter and more butter", "milk"},
        {"breadcrumbs", "wheat"},
    };
    for (const auto& c : cases) {
        CAPTURE(std::string{c.text});
        CHECK(named_in(c.text) == c.expected);
    }
}

TEST_CASE("what a text denies is not asked about") {
    const Case cases[] = {
        {"gluten-free flour", ""},  {"gluten-free oats", ""},        {"dairy-free cream", ""},
        {"vegan butter", ""},       {"vegan mayonnaise", "mustard"}, {"egg-free noodles", "wheat"},
        {"plant-based milk", ""},   {"wheat-free bread", ""},        {"lactose-free milk", "milk"},
        {"nut-free pesto", "milk"}, {"vegan tofu", "soybeans"},
    };
    for (const auto& c : cases) {
        CAPTURE(std::string{c.text});
        CHECK(named_in(c.text) == c.expected);
    }
}

TEST_CASE("what is denied among what a dish contains is not declared, and the rest still is") {
    for (int i = 0; i <= static_cast<int>(Molluscs); ++i) {
        const auto denied = static_cast<Allergen>(i);
        const std::string name{key(denied)};
        for (int j = 0; j <= static_cast<int>(Molluscs); ++j) {
            const auto other = static_cast<Allergen>(j);
            const bool goes_along = // wheat is one of those cereals, and peanuts are called nuts
                (denied == GlutenCereals && other == Wheat) ||
                (denied == TreeNuts && other == Peanuts);
            if (i == j || goes_along) {
                continue;
            }
            const auto written = name + "-free, " + std::string{key(other)};
            CAPTURE(written);
            const auto meant = read_allergen(written).meant;
            const auto is_of = [&](Allergen which) {
                return std::ranges::any_of(
                    meant, [&](const auto& named) { return named.allergen == which; });
            };
            CHECK_FALSE(is_of(denied));
            CHECK(is_of(other));
        }
        for (const auto* alone : {"no ", "without ", "free of "}) {
            CAPTURE(alone + name);
            CHECK(read_allergen(alone + name).meant.empty());
        }
    }
    CHECK(meaning("gluten-free flour, wheat starch") == "");
    CHECK(meaning("nut-free peanut butter") == "");
    CHECK(meaning("vegan butter, walnuts") == "tree nuts (walnut)");
}

TEST_CASE("the law wants the kind of some classes named") {
    // FALCPA 2004, section 203: the type of nut, the species of fish and crustacean shellfish.
    // Regulation (EU) 1169/2011, Annex II, 1 and 8: the cereal and the nut.
    for (int i = 0; i <= static_cast<int>(Molluscs); ++i) {
        const auto allergen = static_cast<Allergen>(i);
        CAPTURE(key(allergen));
        CHECK(must_name_kind(allergen, us) ==
              (allergen == TreeNuts || allergen == Fish || allergen == Crustaceans));
        CHECK(must_name_kind(allergen, eu) == (allergen == TreeNuts || allergen == GlutenCereals));
    }
}

TEST_CASE("the two lists differ where the laws do") {
    struct Row {
        NamedAllergen named;
        bool us;
        bool eu;
    };
    const Row rows[] = {
        {{Milk, ""}, true, true},
        {{Wheat, ""}, true, true},
        {{GlutenCereals, "rye"}, false, true},
        {{Celery, ""}, false, true},
        {{Mustard, ""}, false, true},
        {{Sulphites, ""}, false, true},
        {{Lupin, ""}, false, true},
        {{Molluscs, "squid"}, false, true},
        {{TreeNuts, "pine nut"}, true, false},
        {{TreeNuts, "heartnut"}, true, false},
        {{TreeNuts, "walnut"}, true, true},
        {{TreeNuts, ""}, true, true},
        {{Sesame, ""}, true, true},
        {{Crustaceans, "crab"}, true, true},
    };
    for (const auto& row : rows) {
        CAPTURE(label_name(row.named, us));
        CHECK(is_listed(row.named, us) == row.us);
        CHECK(is_listed(row.named, eu) == row.eu);
    }
    CHECK(label_name({Wheat, ""}, us) == "wheat");
    CHECK(label_name({Wheat, ""}, eu) == "cereals containing gluten (wheat)");
    CHECK(label_name({Wheat, "spelt"}, eu) == "cereals containing gluten (spelt)");
}

TEST_CASE("another kind of nut is not covered by the one declared") {
    const std::vector declared{read_allergen("walnuts"), read_allergen("gluten")};
    CHECK(is_declared({TreeNuts, "walnut"}, declared, us));
    CHECK(is_declared({TreeNuts, ""}, declared, us));
    CHECK_FALSE(is_declared({TreeNuts, "almond"}, declared, us));
    CHECK(is_declared({Wheat, ""}, declared, eu));
    CHECK_FALSE(is_declared({Wheat, ""}, declared, us));
    CHECK_FALSE(is_declared({Milk, ""}, declared, us));
    const std::vector any_nut{read_allergen("tree nuts")};
    CHECK(is_declared({TreeNuts, "almond"}, any_nut, us));
}

TEST_CASE("every class can be declared by its own name") {
    for (const auto& [allergen, name] : allergen_names) {
        CAPTURE(name);
        const auto read = read_allergen(name);
        REQUIRE_FALSE(read.meant.empty());
        CHECK(read.meant.front().allergen == allergen);
    }
}

TEST_CASE("no text is too strange to be looked through") {
    CHECK(mentioned_allergens("\xC3\x28").empty());
    CHECK(mentioned_allergens(std::string(200'000, 'a')).empty());
    CHECK(mentioned_allergens("🥛🥜").empty());
}

TEST_CASE("in a step, what is no ingredient names no allergen") {
    struct Step {
        const char* text;
        const char* expected; ///< the first allergen that it names; empty for none
    };
    const Step steps[] = {
        {"Tip it into a hot pan.", ""},
        {"Wrap it in foil, or toast the seeds.", ""},
        {"Form dumplings the size of a walnut.", "wheat"},
        {"Roll it into walnut-sized balls.", ""},
        {"Simmer to the consistency of cream.", ""},
        {"Leave out the cashews.", ""},
        {"Serve without bread or cheese.", ""},
        {"Guests at table 3 are allergic to nuts.", ""},
        {"Nut allergy in the crew: keep apart.", ""},
        {"Serve on toast.", "wheat"},
        {"Fold in the yoghurt.", "milk"},
        {"Do not let the milk boil over.", "milk"},
        {"Walnussgroße Stücke abstechen.", ""},
        {"Mit dem Teigschaber in eine Lasagneform füllen.", ""},
        {"In Eis kühlen.", ""},
        {"Für die Geburtstagsfeier.", ""},
        {"Ohne Nüsse servieren.", ""},
        {"Nüsse weglassen.", ""},
        {"Mit Parmesan bestreuen.", "milk"},
        {"Sofreír hasta que la cebolla esté dorada.", ""},
        {"Bolas del tamaño de una nuez.", ""},
        {"Servir con pan.", "wheat"},
        {"Sin añadir leche.", ""},
        {"Añadir una nuez de mantequilla.", "milk"},
        {"Repartir anacardos picados por encima.", "tree nuts"},
    };
    for (const auto& step : steps) {
        CAPTURE(std::string{step.text});
        const auto found = allergens_in_step(worded(step.text));
        CHECK((found.empty() ? "" : key(found.front().named.allergen)) == step.expected);
    }
}

TEST_CASE("a compound brings the allergens of all its parts") {
    const auto names = [](const char* text) {
        std::string all;
        for (const auto& mention : mentioned_allergens(text)) {
            all += std::string{key(mention.named.allergen)} + "; ";
        }
        return all;
    };
    CHECK(names("Scampifond").find("crustaceans") != std::string::npos);
    CHECK(names("Frischeinudeln").find("wheat") != std::string::npos);
    CHECK(names("Trockenpfirsiche").find("sulphites") != std::string::npos);
    CHECK(names("palitos de mar").find("crustaceans") != std::string::npos);
    CHECK(names("Nusskuchen") == "milk; eggs; tree nuts; wheat; ");
    CHECK(names("Butterkekse") == "milk; wheat; ");
    CHECK(names("Fischfond") == "fish; celery; ");
    CHECK(names("crema inglesa") == "milk; eggs; ");
    CHECK(names("Milchkalbsschulter").empty());
    CHECK(names("milk-fed veal").empty());
    CHECK(names("ternera de leche").empty());
}

TEST_CASE("a misspelt allergen brings the word that comes near, in any of the languages") {
    CHECK(allergen_near("selery") == "celery");
    CHECK(allergen_near("hazlenut") == "hazelnut");
    CHECK(thawslip::lower(allergen_near("Sellrie").value_or("")) == "sellerie");
    CHECK(allergen_near("almendr") == "almendra");
    CHECK_FALSE(allergen_near("kiwi"));
    CHECK_FALSE(allergen_near("zeppelin"));
}

} // namespace allergens_test
