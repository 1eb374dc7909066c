#include "kitchen/cautions/cautions.h"
#include "wording/fields.h"

#include <doctest/doctest.h>
#include <string>
#include <vector>

using namespace thawslip;
using namespace thawslip::kitchen;

namespace {

/// The standing cautions of a packing day that has food which spoils, in these units.
std::vector<Caution> of_a_day(Units units) {
    StorageTable table;
    table.rule_set = "us";
    table.rows = {
        {"stew", "us", std::chrono::months{2}, std::chrono::months{3}, "Stews", "a list", "read"}};
    table.classes = {{"stew", FoodKind::CookedDish}};
    Package stew;
    stew.dish = "Barley stew";
    stew.food = {"stew"};
    KitchenSettings settings;
    settings.units = units;
    return day_cautions({{}, "", std::nullopt, {stew}}, table, settings);
}

struct Case {
    const char* language;
    Units units;
    std::vector<std::string> sentences;
};

} // namespace

TEST_CASE("the standing cautions are these, whole, in every language and in every unit") {
    // 40 to 140 °F, above 90 °F one hour: USDA FSIS, Leftovers and Food Safety. 135 °F to 70 °F in
    // 2 h and to 41 °F in 6 h in all: FDA Food Code 3-501.14, Cooling, which prints 57, 21 and 5
    // °C.
    const Case cases[] = {
        {"en",
         Units::Both,
         {"perishable food may stand between 40 °F (4 °C) and 140 °F (60 °C) for two hours in "
          "all, "
          "one hour above 90 °F (32 °C)",
          "cool hot food in shallow pans or an ice bath, from 135 °F (57 °C) to 70 °F (21 °C) "
          "within 2 h and to 41 °F (5 °C) within 6 h in all, before it goes into the freezer",
          "freeze the bags in a single layer with air around them; do not stack them until they "
          "are solid"}},
        {"en",
         Units::Us,
         {"perishable food may stand between 40 °F and 140 °F for two hours in all, one hour "
          "above "
          "90 °F",
          "cool hot food in shallow pans or an ice bath, from 135 °F to 70 °F within 2 h and to "
          "41 °F within 6 h in all, before it goes into the freezer",
          "freeze the bags in a single layer with air around them; do not stack them until they "
          "are solid"}},
        {"es",
         Units::Metric,
         {"los alimentos perecederos pueden estar entre 4 °C y 60 °C dos horas en total, una hora "
          "por encima de 32 °C",
          "enfríe la comida caliente en bandejas poco hondas o en agua con hielo, de 57 °C a 21 °C "
          "en 2 h y a 5 °C en 6 h en total, antes de meterla en el congelador",
          "congele las bolsas en una sola capa con aire alrededor; no las apile hasta que estén "
          "duras"}},
        {"de",
         Units::Metric,
         {"leicht Verderbliches darf insgesamt zwei Stunden zwischen 4 °C und 60 °C stehen, eine "
          "Stunde über 32 °C",
          "Heißes vor dem Einfrieren in flachen Schalen oder im Eisbad kühlen, von 57 °C auf 21 °C "
          "in 2 h und auf 5 °C in insgesamt 6 h",
          "die Beutel einlagig mit Luft ringsum einfrieren; erst stapeln, wenn sie hart sind"}},
    };
    for (const auto& c : cases) {
        CAPTURE(c.language);
        const auto given = of_a_day(c.units);
        REQUIRE(given.size() == c.sentences.size());
        for (std::size_t i = 0; i < given.size(); ++i) {
            CHECK(wording::say_caution(given[i], wording::shipped_language(c.language)) ==
                  c.sentences[i]);
        }
    }
}

TEST_CASE("every print with food advice carries this line, and a trial that one") {
    const struct {
        const char* language;
        const char* local_rules;
        const char* trial;
    } rows[] = {
        {"en", "Local food-safety rules come first.", "TRIAL – not for food"},
        {"es", "Las normas locales de seguridad alimentaria son lo primero.",
         "PRUEBA – no es para alimentos"},
        {"de", "Die örtlichen Regeln zur Lebensmittelsicherheit gehen vor.",
         "PROBEDRUCK – nicht für Lebensmittel"},
    };
    for (const auto& row : rows) {
        const auto& language = wording::shipped_language(row.language);
        CHECK(language.say("standing.local-rules") == row.local_rules);
        CHECK(language.say("standing.trial") == row.trial);
    }
}
