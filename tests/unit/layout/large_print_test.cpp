#include "labels.h"
#include "layout/large_print.h"

using namespace thawslip;
using namespace thawslip::layout;
using namespace thawslip::literals;

TEST_CASE("large print raises smallest and comfortable type, headings of write areas among it") {
    const auto layout = testing::layout_from(R"(
print = "finishing card"
picture = ["dish", "pen"]
[area]
dish = { words = "dish", x_height = ["1.2 mm", "2.0 mm", "2.5 mm"] }
pen  = { kind = "write", words = "pen-notes", x_height = ["1.5 mm", "2.0 mm", "4 mm"] }
)");
    const auto large = in_large_print(layout);
    const auto& dish = text_of(*large.area("dish"))->x_height;
    CHECK(dish.smallest.in_millimetres() == doctest::Approx(1.68));
    CHECK(dish.comfortable.in_millimetres() == doctest::Approx(2.8));
    CHECK(dish.largest == dish.comfortable); // what a layout wanted at most is below that
    const auto& pen = text_of(*large.area("pen"))->x_height;
    CHECK(pen.smallest.in_millimetres() == doctest::Approx(2.1));
    CHECK(pen.largest == 4.0_mm);
}

TEST_CASE("in large print strips of rows are as much wider as their type is larger") {
    const auto large = in_large_print(testing::layout_from(R"(
print = "day sheet"
picture = ["shopping", "numbers"]
[area]
shopping = { words = "shopping", x_height = ["1.3 mm", "2.3 mm", "2.6 mm"], strips = "80 mm", table = ["share", "content"] }
numbers  = { words = "dish-numbers", x_height = ["1.3 mm", "1.9 mm", "2.2 mm"], strips = "80 mm" }
)"));
    CHECK(text_of(*large.area("shopping"))->strips.in_millimetres() == doctest::Approx(112));
    CHECK(text_of(*large.area("numbers"))->strips == 80_mm);
}
