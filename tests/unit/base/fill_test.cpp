#include "base/fill.h"

#include <doctest/doctest.h>

using thawslip::fill;

TEST_CASE("filling leaves what it cannot fill") {
    CHECK(fill("{0} and {1}", {"a"}) == "a and {1}");
    CHECK(fill("{1}{0}", {"{1}", "b"}) == "b{1}");
    CHECK(fill("{} {x} {", {"a"}) == "{} {x} {");
    CHECK(fill("{0}", {"z"}) == "z");
    CHECK(fill("is {0", {"a"}) == "is {0");
}
