#include "toml/type_hints.h"

#include <doctest/doctest.h>

using thawslip::toml::trimmed;

TEST_CASE("blanks around a text are none of it, and those inside are") {
    CHECK(trimmed(" \t two words \t") == "two words");
    CHECK(trimmed("word") == "word");
    CHECK(trimmed(" \t ").empty());
    CHECK(trimmed("").empty());
}
