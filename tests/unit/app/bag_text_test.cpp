// How commands tell of bags.

#include "app/bag_text.h"

#include <doctest/doctest.h>

using namespace thawslip;
using std::chrono::days;

TEST_CASE("a bag is told by its date, its dish and whether it is raw") {
    archive::Bag bag;
    bag.dish = "Mince patties";
    bag.basis = kitchen::DateBasis::SetByCook;
    CHECK(app::date_head(bag) == "use by");
    CHECK(app::dish_text(bag) == "Mince patties");
    bag.basis = kitchen::DateBasis::StorageTable;
    bag.classes = {"raw ground meat"};
    CHECK(app::date_head(bag) == "best by");
    CHECK(app::dish_text(bag).starts_with("RAW"));
    CHECK(app::dish_text(bag).ends_with("Mince patties"));
}

TEST_CASE("a moment is told to the minute, and days as people count them") {
    CHECK(app::shown_moment("2026-10-17T14:05:59") == "2026-10-17 14:05");
    CHECK(app::shown_moment("2026-10-17") == "2026-10-17");
    CHECK(app::shown_moment("") == "");
    CHECK(app::days_text(days{0}, days{0}) == "the same day");
    CHECK(app::days_text(days{1}, days{1}) == "1 day");
    CHECK(app::days_text(days{2}, days{2}) == "2 days");
    CHECK(app::days_text(days{3}, days{5}) == "3 to 5 days");
    CHECK(app::days_text(days{0}, days{1}) == "0 to 1 day");
}
