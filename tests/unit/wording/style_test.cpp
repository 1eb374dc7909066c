#include "wording/style.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::kitchen;
using wording::say_quantity;
using wording::shipped_language;
using wording::Style;
using wording::style_for;

namespace {

Style style(const char* language, Units units, const char* list = "us") {
    KitchenSettings settings;
    settings.units = units;
    settings.allergens = find_allergen_list(list);
    return style_for(shipped_language(language), settings);
}

Quantity quantity(std::string_view text) {
    const auto read = parse_quantity(text);
    REQUIRE(read.ok());
    return read.value();
}

PlannedPackage containing(const std::vector<std::string>& contains) {
    PlannedPackage planned;
    planned.package.contains = contains;
    for (const auto& written : contains) {
        planned.allergens.push_back(read_allergen(written));
    }
    return planned;
}

} // namespace

TEST_CASE("quantities are printed in the units that are set, with the language's words") {
    struct Case {
        const char* written;
        const char* language;
        Units units;
        const char* printed;
    };
    const Case cases[] = {
        {"1 l vegetable stock", "en", Units::Both, "1 l (4¼ cups) vegetable stock"},
        {"1 l vegetable stock", "en", Units::Metric, "1 l vegetable stock"},
        {"1 l vegetable stock", "en", Units::Us, "4¼ cups vegetable stock"},
        {"1 l vegetable stock", "en", Units::Written, "1 l vegetable stock"},
        {"2 cups stock", "en", Units::Written, "2 cups stock"},
        {"1 l Gemüsebrühe", "de", Units::Both, "1 l (4¼ Tassen) Gemüsebrühe"},
        {"1 l caldo", "es", Units::Both, "1 l (4¼ tazas) caldo"},
        {"1.5 kg Kürbis", "de", Units::Metric, "1,5 kg Kürbis"},
        {"100 ml Sahne", "de", Units::Us, "7 EL Sahne"},
        {"4 lb 14 oz pork", "en", Units::Both, "4 lb 14 oz (2.25 kg) pork"},
        {"500-750 g squash", "en", Units::Both, "500–750 g (1 lb 2 oz–1 lb 10 oz) squash"},
        {"about 1 l stock", "en", Units::Both, "about 1 l (4¼ cups) stock"},
        {"2 heaping tbsp capers", "en", Units::Metric, "2 heaping tbsp capers"},
        {"2 x 400 g tins tomatoes", "en", Units::Us, "2 × 400 g tins tomatoes"},
        {"salt to taste", "en", Units::Us, "salt to taste"},
        {"3 onions, sliced", "en", Units::Us, "3 onions, sliced"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.written);
        CHECK(say_quantity(quantity(c.written), style(c.language, c.units)) == c.printed);
    }
}

TEST_CASE("a target temperature converted is never lower than the one that is meant") {
    // FoodSafety.gov, Safe Minimum Internal Temperatures: 165 °F (74 °C), 145 °F (63 °C).
    const Temperature in_celsius{74.0, TemperatureScale::Celsius};
    CHECK(say_target(in_celsius, style("en", Units::Both)) == "74 °C (165 °F)");
    CHECK(say_target(in_celsius, style("en", Units::Us)) == "165 °F");
    const Temperature in_fahrenheit{(145.0 - 32.0) / 1.8, TemperatureScale::Fahrenheit};
    CHECK(say_target(in_fahrenheit, style("en", Units::Both)) == "145 °F (63 °C)");
    CHECK(say_target(in_fahrenheit, style("en", Units::Metric)) == "63 °C");
}

TEST_CASE("a setting that is a temperature is turned to what dials show, and other words stay") {
    CHECK(say_setting("190 °C", style("en", Units::Both)) == "190 °C (375 °F)");
    CHECK(say_setting("425 °F", style("en", Units::Metric)) == "220 °C");
    CHECK(say_setting("low", style("en", Units::Both)) == "low");
    CHECK(say_setting("160 °C, lid on", style("en", Units::Both)) == "160 °C (325 °F), lid on");
    CHECK(say_setting("180 °C fan", style("en", Units::Us)) == "350 °F fan");
    for (const char* as_written :
         {"190 °C (375 °F)", "220 °C, then 180 °C", "gas mark 4", "level 3, lid on",
          "190 ºC / 375 ºF", "160 °C, lid off after 20 min", ""}) {
        CHECK(say_setting(as_written, style("en", Units::Both)) == as_written);
    }
}

TEST_CASE("allergens are printed as the list that is set names them, in the language") {
    struct Case {
        std::vector<std::string> contains;
        const char* language;
        const char* list;
        const char* printed;
    };
    const Case cases[] = {
        {{"Sesame seeds"}, "en", "us", "sesame"},
        {{"walnuts", "Walnut"}, "en", "us", "tree nuts (walnut)"},
        {{"wheat"}, "en", "us", "wheat"},
        {{"wheat", "barley"}, "en", "eu", "cereals containing gluten (wheat, barley)"},
        {{"walnuts", "celery", "hazelnuts"}, "en", "eu", "tree nuts (walnut, hazelnut), celery"},
        {{"nuts", "walnuts", "almonds"}, "en", "us", "tree nuts, tree nuts (walnut, almond)"},
        {{"barley", "celery"}, "en", "us", "barley, celery"},
        {{"walnuts"}, "de", "eu", "Schalenfrüchte (Walnuss)"},
        {{"walnuts", "celery"}, "es", "eu", "frutos de cáscara (nuez), apio"},
        {{"Brazil nuts"}, "es", "us", "frutos de cáscara (nuez de Brasil)"},
        {{"soy sauce"}, "en", "us", "wheat, soybeans"},
        {{"triticale", "rye"}, "en", "canada", "wheat (triticale), rye"},
        {{"mussels", "pine nuts"}, "en", "canada", "molluscs (mussel), tree nuts (pine nut)"},
        {{"kiwi"}, "de", "eu", "kiwi"}, // on no list: as written
        {{}, "en", "us", ""},           // never "free from"
    };
    for (const auto& c : cases) {
        CAPTURE(c.printed);
        CHECK(say_contains(containing(c.contains).allergens,
                           style(c.language, Units::Both, c.list)) == c.printed);
    }
}

TEST_CASE("no phrase of any language says that food is free of something") {
    for (const auto& code : wording::shipped_languages()) {
        const auto& language = shipped_language(code);
        for (const auto& key : language.keys()) {
            CAPTURE(key);
            const auto phrase = language.say(key);
            for (const char* claim : {"free from", "free of", "-free", "libre de", "frei von",
                                      "sin gluten", "glutenfrei"}) {
                CHECK(phrase.find(claim) == std::string::npos);
            }
        }
    }
}

TEST_CASE("every class of allergens has the name that the law or common use gives it") {
    // 21 U.S.C. 321(qq), as amended by the FASTER Act of 2021; Regulation (EU) No 1169/2011, Annex
    // II, in English, Spanish and German. Sulphites, lupin, fish and sesame by their short names:
    // common practice, no source.
    using enum Allergen;
    const struct {
        Allergen allergen;
        const char* en;
        const char* es;
        const char* de;
    } rows[] = {
        {Milk, "milk", "leche", "Milch"},
        {Eggs, "eggs", "huevos", "Eier"},
        {Fish, "fish", "pescado", "Fisch"},
        {Crustaceans, "crustaceans", "crustáceos", "Krebstiere"},
        {TreeNuts, "tree nuts", "frutos de cáscara", "Schalenfrüchte"},
        {Peanuts, "peanuts", "cacahuetes", "Erdnüsse"},
        {Wheat, "wheat", "trigo", "Weizen"},
        {Soybeans, "soybeans", "soja", "Sojabohnen"},
        {Sesame, "sesame", "sésamo", "Sesam"},
        {GlutenCereals, "cereals containing gluten", "cereales que contienen gluten",
         "glutenhaltiges Getreide"},
        {Celery, "celery", "apio", "Sellerie"},
        {Mustard, "mustard", "mostaza", "Senf"},
        {Sulphites, "sulphites", "sulfitos", "Sulfite"},
        {Lupin, "lupin", "altramuces", "Lupinen"},
        {Molluscs, "molluscs", "moluscos", "Weichtiere"},
    };
    CHECK(std::size(rows) == static_cast<std::size_t>(Molluscs) + 1);
    for (const auto& row : rows) {
        const auto said = [&](const char* language) {
            return wording::say_allergen({row.allergen, ""}, style(language, Units::Both));
        };
        CHECK(said("en") == row.en);
        CHECK(said("es") == row.es);
        CHECK(said("de") == row.de);
    }
}

TEST_CASE("spoons and cups have their names in every language, one and several") {
    // Common practice, no source.
    const struct {
        const char* language;
        const char* written[6];
    } rows[] = {
        {"en", {"1 tsp", "2 tsp", "1 tbsp", "2 tbsp", "1 cup", "2 cups"}},
        {"es", {"1 cdta.", "2 cdtas.", "1 cda.", "2 cdas.", "1 taza", "2 tazas"}},
        {"de", {"1 TL", "2 TL", "1 EL", "2 EL", "1 Tasse", "2 Tassen"}},
    };
    const Unit units[] = {Unit::Teaspoon, Unit::Tablespoon, Unit::Cup};
    for (const auto& row : rows) {
        for (std::size_t i = 0; i < std::size(row.written); ++i) {
            const Amount amount{static_cast<int>(i % 2) + 1, 1};
            CHECK(say_quantity({amount, amount, units[i / 2], "", "", ""},
                               style(row.language, Units::Us)) == row.written[i]);
        }
    }
}
