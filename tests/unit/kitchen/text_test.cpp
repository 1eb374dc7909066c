#include "kitchen/texts/text.h"

#include <doctest/doctest.h>

using namespace thawslip::kitchen;

using Words = std::vector<std::string>;

TEST_CASE("a text is cut into small words without accents") {
    CHECK(words_of("Crème fraîche, 200 g") == Words{"creme", "fraiche", "g"});
    CHECK(words_of("gluten-free") == Words{"gluten", "free"});
    CHECK(words_of("don't; DON’T") == Words{"dont", "dont"});
    CHECK(words_of("Kürbis und Œuf, Straße") == Words{"kurbis", "und", "oeuf", "strasse"});
    CHECK(words_of("3×4÷2") == Words{});
    CHECK(words_of("борщ ½ l") == Words{"борщ", "l"});
    CHECK(words_of("") == Words{});
    CHECK(words_of("\xFF\xFE") == Words{});
}

TEST_CASE("decimals end where they have nothing to say") {
    CHECK(decimal(2.2, 2) == "2.2");
    CHECK(decimal(2.25, 2, ',') == "2,25");
    CHECK(decimal(74.0, 1) == "74");
    CHECK(decimal(100.0, 0) == "100");
    CHECK(decimal(-0.001, 2) == "0");
    CHECK(decimal(-17.8, 1) == "-17.8");
}
