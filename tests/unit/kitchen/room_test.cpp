#include "kitchen/room.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::kitchen;

namespace {

Package flat_bags(int bags, std::optional<Mass> weight, std::optional<Length> thickness) {
    Package package;
    package.bags = bags;
    package.weight = weight;
    package.thickness = thickness;
    return package;
}

} // namespace

TEST_CASE("frozen food takes more room than before, less than all of it turned to ice would") {
    // Water grows by 9 % as it freezes (density of ice at 0 °C 916.7 kg/m³: CRC Handbook of
    // Chemistry and Physics, from memory); a dish is three quarters to nine tenths water.
    for (const auto wetness : {Wetness::Dish, Wetness::Soup, Wetness::Either}) {
        const double unfrozen = 1000.0 / 1050.0;
        const double frozen = frozen_litres(Mass{1000}, wetness);
        CHECK(frozen > unfrozen * 1.05);
        CHECK(frozen < unfrozen * 1.09);
    }
    CHECK(frozen_litres(Mass{1000}, Wetness::Soup) > frozen_litres(Mass{1000}, Wetness::Dish));
    // What it is is not known: no less than it may turn out to be.
    CHECK(frozen_litres(Mass{1000}, Wetness::Either) == frozen_litres(Mass{1000}, Wetness::Soup));
    // What the sheet says: a kilogram is 1.02 l at most.
    CHECK(frozen_litres(Mass{1000}, Wetness::Soup) == doctest::Approx(1.02).epsilon(0.005));
}

TEST_CASE("a stack is as high as its bags are thick, on the face of the widest") {
    auto room = room_of(flat_bags(3, Mass{2200}, Length::millimetres(30)), Wetness::Soup);
    room += room_of(flat_bags(4, Mass{1400}, Length::millimetres(25)), Wetness::Soup);
    CHECK(room.bags == 7);
    CHECK(room.stack.in_millimetres() == doctest::Approx(3 * 30 + 4 * 25));
    CHECK(room.litres == doctest::Approx(frozen_litres(Mass{3 * 2200 + 4 * 1400}, Wetness::Soup)));
    // Its volume over its thickness: 2.246 l of 3 cm are 749 cm².
    CHECK(room.largest_face == doctest::Approx(749).epsilon(0.002));
    CHECK(room.unweighed == 0);
    CHECK(room.unmeasured == 0);
}

TEST_CASE("bags without a size are counted apart, not guessed") {
    auto room = room_of(flat_bags(2, std::nullopt, Length::millimetres(40)), Wetness::Dish);
    room += room_of(flat_bags(5, Mass{900}, std::nullopt), Wetness::Dish);
    CHECK(room.bags == 7);
    CHECK(room.unweighed == 2);
    CHECK(room.unmeasured == 5);
    CHECK(room.stack.in_millimetres() == doctest::Approx(80));
    CHECK(room.largest_face == 0.0);
}

TEST_CASE("a freezer is tight from three quarters on, and full beyond its litres") {
    CHECK(fill_of(100, 40, 30) == Fill::Fits);
    CHECK(fill_of(100, 75, 0) == Fill::Fits);
    CHECK(fill_of(100, 40, 40) == Fill::Tight);
    CHECK(fill_of(100, 60, 40) == Fill::Tight);
    CHECK(fill_of(100, 60, 41) == Fill::Over);
}
