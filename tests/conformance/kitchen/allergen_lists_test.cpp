// The lists of allergens, class by class and kind by kind.

#include "kitchen/allergens/allergens.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <set>

using namespace thawslip::kitchen;

namespace {

const AllergenList& us = *find_allergen_list("us");
const AllergenList& eu = *find_allergen_list("eu");
const AllergenList& canada = *find_allergen_list("canada");

bool is_on(std::string_view written, const AllergenList& list) {
    const auto declared = read_allergen(written);
    return std::ranges::any_of(declared.meant,
                               [&](const auto& named) { return is_listed(named, list); });
}

int listed_classes(const AllergenList& list) {
    std::set<std::string> names;
    for (const auto& allergen : allergen_names) {
        const NamedAllergen named{allergen.value, ""};
        if (is_listed(named, list)) {
            const auto text = label_name(named, list);
            names.insert(text.substr(0, text.find(" (")));
        }
    }
    return static_cast<int>(names.size());
}

} // namespace

TEST_CASE("the US list has nine classes") {
    // Food Allergen Labeling and Consumer Protection Act of 2004; FASTER Act of 2021.
    for (const auto* name : {"milk", "eggs", "fish", "Crustacean shellfish", "tree nuts", "peanuts",
                             "wheat", "soybeans", "sesame"}) {
        CAPTURE(name);
        CHECK(is_on(name, us));
    }
    CHECK(listed_classes(us) == 9);
}

TEST_CASE("the EU list has fourteen classes") {
    // Regulation (EU) 1169/2011, Annex II.
    for (const auto* name : {"cereals containing gluten", "crustaceans", "eggs", "fish", "peanuts",
                             "soybeans", "milk", "nuts", "celery", "mustard", "sesame seeds",
                             "sulphur dioxide and sulphites", "lupin", "molluscs"}) {
        CAPTURE(name);
        CHECK(is_on(name, eu));
    }
    CHECK(listed_classes(eu) == 14);
}

TEST_CASE("Canada's list has eleven priority allergens, with shellfish in two, and gluten") {
    // Health Canada, "Priority food allergens" (as of 2017: read in its catalogue record of
    // "Crustaceans and molluscs"); Food and Drug Regulations (C.R.C., c. 870), B.01.010.1(1), which
    // adds gluten, and counts crustaceans and molluscs as two foods.
    for (const auto* name :
         {"peanuts", "tree nuts", "sesame seeds", "milk", "eggs", "fish", "crustaceans", "molluscs",
          "soy", "wheat", "triticale", "mustard", "sulphites", "gluten", "barley", "oats", "rye"}) {
        CAPTURE(name);
        CHECK(is_on(name, canada));
    }
    for (const auto* name : {"celery", "lupin", "buckwheat", "coconut"}) {
        CAPTURE(name);
        CHECK_FALSE(is_on(name, canada));
    }
    CHECK(listed_classes(canada) == 13);
}

TEST_CASE("Canada names nine nuts, and wheat apart from the sources of gluten") {
    // Food and Drug Regulations (C.R.C., c. 870), B.01.010.1(1): "food allergen", (a) and (d).
    for (const auto* nut : {"almonds", "Brazil nuts", "cashews", "hazelnuts", "macadamia nuts",
                            "pecans", "pine nuts", "pistachios", "walnuts"}) {
        CAPTURE(nut);
        CHECK(is_on(nut, canada));
    }
    CHECK_FALSE(is_on("heartnut", canada));
    CHECK(label_name({Allergen::Wheat, "triticale"}, canada) == "wheat (triticale)");
    CHECK(must_name_kind(Allergen::Molluscs, canada));
    CHECK(goes_by_kind({Allergen::GlutenCereals, "barley"}, canada));
}

TEST_CASE("every list has a name and a law of its own, and no class twice") {
    std::set<std::string_view> names;
    for (const auto& list : allergen_lists()) {
        CAPTURE(list.name);
        CHECK(names.insert(list.name).second);
        CHECK(find_allergen_list(list.name) == &list);
        CHECK_FALSE(list.law.empty());
        std::set<Allergen> classes;
        for (const auto& listed : list.classes) {
            CHECK(classes.insert(listed.allergen).second);
            CHECK_FALSE((list.has_cereal_class && listed.allergen == Allergen::Wheat));
        }
    }
    CHECK(find_allergen_list("mars") == nullptr);
}

TEST_CASE("the US names twelve tree nuts since January 2025, and no coconut") {
    // FDA, Questions and Answers Regarding Food Allergens, edition 5, January 2025.
    for (const auto* nut :
         {"almond", "black walnut", "Brazil nut", "California walnut", "cashew", "filbert",
          "hazelnut", "heartnut", "Japanese walnut", "macadamia nut", "bush nut", "pecan",
          "pine nut", "pinon nut", "pistachio", "English walnut", "Persian walnut"}) {
        CAPTURE(nut);
        const auto meant = read_allergen(nut).meant;
        REQUIRE(meant.size() == 1);
        CHECK(meant[0].allergen == Allergen::TreeNuts);
        CHECK_FALSE(meant[0].kind.empty());
        CHECK(is_on(nut, us));
    }
    for (const auto* removed : {"coconut", "chestnut", "butternut", "beechnut", "ginkgo", "hickory",
                                "pili", "shea butter", "kola nut"}) {
        CAPTURE(removed);
        CHECK_FALSE(is_on(removed, us));
    }
}

TEST_CASE("the EU names eight nuts, and no pine nut") {
    // Regulation (EU) 1169/2011, Annex II, entry 8.
    for (const auto* nut : {"almonds", "hazelnuts", "walnuts", "cashews", "pecan nuts",
                            "Brazil nuts", "pistachio nuts", "Queensland nuts"}) {
        CAPTURE(nut);
        CHECK(is_on(nut, eu));
    }
    CHECK_FALSE(is_on("pine nuts", eu));
    CHECK_FALSE(is_on("coconut", eu));
}

TEST_CASE("the EU's cereals are wheat, spelt, khorasan, rye, barley and oats") {
    // Regulation (EU) 1169/2011, Annex II, entry 1.
    for (const auto* cereal : {"wheat", "spelt", "khorasan", "rye", "barley", "oats"}) {
        CAPTURE(cereal);
        const auto meant = read_allergen(cereal).meant;
        REQUIRE(meant.size() == 1);
        CHECK(label_name(meant[0], eu).starts_with("cereals containing gluten"));
    }
    CHECK_FALSE(is_on("buckwheat", eu));
    CHECK_FALSE(is_on("rye", us));
}

TEST_CASE("the classes of Annex II are understood in the words of its Spanish and German texts") {
    // Regulation (EU) 1169/2011, Annex II; the German text read in a copy (freirecht.de), the
    // Spanish one in copies by consumers' advisers.
    for (const auto* name : {"Cereales que contengan gluten",
                             "Crustáceos",
                             "Huevos",
                             "Pescado",
                             "Cacahuetes",
                             "Soja",
                             "Leche",
                             "Frutos de cáscara",
                             "Apio",
                             "Mostaza",
                             "Granos de sésamo",
                             "Dióxido de azufre y sulfitos",
                             "Altramuces",
                             "Moluscos",
                             "almendras",
                             "avellanas",
                             "nueces",
                             "anacardos",
                             "pacanas",
                             "nueces de Brasil",
                             "alfóncigos",
                             "pistachos",
                             "macadamias",
                             "nueces de Australia",
                             "trigo",
                             "espelta",
                             "centeno",
                             "cebada",
                             "avena",
                             "Glutenhaltiges Getreide",
                             "Krebstiere",
                             "Eier",
                             "Fische",
                             "Erdnüsse",
                             "Sojabohnen",
                             "Milch",
                             "Schalenfrüchte",
                             "Sellerie",
                             "Senf",
                             "Sesamsamen",
                             "Schwefeldioxid",
                             "Sulfite",
                             "Lupinen",
                             "Weichtiere",
                             "Mandeln",
                             "Haselnüsse",
                             "Walnüsse",
                             "Kaschunüsse",
                             "Pecannüsse",
                             "Paranüsse",
                             "Pistazien",
                             "Macadamianüsse",
                             "Queenslandnüsse",
                             "Weizen",
                             "Dinkel",
                             "Khorasan-Weizen",
                             "Roggen",
                             "Gerste",
                             "Hafer"}) {
        CAPTURE(std::string{name});
        CHECK(is_on(name, eu));
    }
}

TEST_CASE("the examples that the US law itself gives are understood") {
    // 21 U.S.C. 321(qq)(1); the nine foods read in a copy (Food Safety Magazine, The FASTER Act,
    // 2021), the examples from memory.
    for (const auto* name : {"bass", "flounder", "cod", "crab", "lobster", "shrimp", "almonds",
                             "pecans", "walnuts", "sesame"}) {
        CAPTURE(std::string{name});
        CHECK(is_on(name, us));
    }
}
