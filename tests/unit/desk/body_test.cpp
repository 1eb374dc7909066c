#include "desk/body.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::desk;

TEST_CASE("a body that our page never sends is refused") {
    for (const auto* text : {"", "[]", "3", "{", R"({"a":1)", "\xff"}) {
        CAPTURE(text);
        CHECK_THROWS_AS(body_of({.body = text}), BadRequest);
    }
    CHECK_THROWS_AS(body_of({.body = R"({"a":)" + std::string(10'000, '[')}), BadRequest);
}

TEST_CASE("a member of another type is refused, one that is absent or null is nothing") {
    const auto body = body_of({.body = R"({"text":"a","number":3,"flag":true,"null":null,
                                           "texts":["a","b"],"large":3000000000})"});
    CHECK(text_at(body, "text") == "a");
    CHECK_FALSE(text_at(body, "null"));
    CHECK_FALSE(text_at(body, "absent"));
    CHECK_THROWS_AS(text_at(body, "number"), BadRequest);
    CHECK(number_at(body, "number") == 3);
    CHECK_THROWS_AS(number_at(body, "large"), BadRequest);
    CHECK_THROWS_AS(needed_number(body, "absent"), BadRequest);
    CHECK(flag_at(body, "flag"));
    CHECK(flag_at(body, "absent", true));
    CHECK(texts_at(body, "texts") == std::vector<std::string>{"a", "b"});
    CHECK_THROWS_AS(texts_at(body, "text"), BadRequest);
}
