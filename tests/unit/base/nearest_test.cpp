#include "base/nearest.h"

#include <doctest/doctest.h>
#include <vector>

using namespace thawslip;

TEST_CASE("what may be meant is told: the one, the few, or the nearest of many") {
    const std::vector<std::string> few{"labels", "cards", "lists"};
    CHECK(near_names("lables", few) == "did you mean \"labels\"?");
    CHECK(near_names("LABELS", few) == "did you mean \"labels\"?");
    CHECK(near_names("sandwich", few) == "expected \"labels\", \"cards\" or \"lists\"");
    const std::vector<std::string> many{"roll-100x150mm", "a4-full", "letter-full",   "card-a6",
                                        "card-a7",        "a5-full", "a4-2x7-99x38mm"};
    // Those that hold the word come first, though others take fewer edits.
    CHECK(near_names("x150", many) ==
          "did you mean \"roll-100x150mm\", \"a4-full\" or \"card-a6\"?");
    CHECK(near_names("FULL", many) == "did you mean \"a4-full\", \"a5-full\" or \"letter-full\"?");
    // No word at all is held by none of them.
    CHECK(near_names("", many) == "did you mean \"a4-full\", \"card-a6\" or \"card-a7\"?");
}
