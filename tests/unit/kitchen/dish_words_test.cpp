#include "kitchen/foods/dish_words.h"

#include <doctest/doctest.h>

using namespace thawslip::kitchen;

namespace {

Package called(const char* dish) {
    Package package;
    package.dish = dish;
    return package;
}

} // namespace

TEST_CASE("stuffed food is known by its words, in three languages") {
    for (const char* dish : {"Stuffed loin", "Hombro de cordero relleno", "Brust mit Apfelfüllung",
                             "Gefüllter Rücken", "Leg of lamb with spinach filling"}) {
        CAPTURE(std::string{dish});
        const auto filled = filled_in(called(dish));
        REQUIRE(filled);
        CHECK(filled->stuffed);
    }
    for (const char* dish : {"Involtini", "Putenroulade", "Pelmeni"}) {
        CAPTURE(std::string{dish});
        const auto filled = filled_in(called(dish));
        REQUIRE(filled);
        CHECK_FALSE(filled->stuffed);
    }
    for (const char* dish :
         {"Loin without stuffing", "Beef pie filling", "Lamb with stuffed olives",
          "Chops, stuffing in its own bag", "Lomo con aceitunas rellenas"}) {
        CAPTURE(std::string{dish});
        CHECK_FALSE(filled_in(called(dish)));
    }
}

TEST_CASE("soups and rice are known by the dish's name") {
    CHECK(names_soup(called("Crema de puerros")));
    CHECK(names_soup(called("Selleriecremesuppe")));
    CHECK_FALSE(names_soup(called("Ratatouille")));
    CHECK(names_rice(called("Hühnerreis")));
    CHECK(names_rice(called("Mushroom risotto")));
    CHECK_FALSE(names_rice(called("Beef with rice noodles")));
    CHECK_FALSE(names_rice(called("Preiselbeertopf")));
}
