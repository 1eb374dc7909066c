#include "kitchen/number_text.h"

#include <doctest/doctest.h>
#include <string>

using namespace thawslip::kitchen;
using Kind = NumberFault::Kind;

TEST_CASE("a number is read in every form that cooks write, exactly") {
    struct Case {
        const char* text;
        Amount amount;
        std::size_t end;
    };
    const Case cases[] = {
        {"2", {2, 1}, 1},          {"007", {7, 1}, 3},       {"999999", {999999, 1}, 6},
        {"2.2 kg", {11, 5}, 3},    {"2,25", {9, 4}, 4},      {"0,125 kg", {1, 8}, 5},
        {"0.0001", {1, 10000}, 6}, {"½", {1, 2}, 2},         {"1½ h", {3, 2}, 3},
        {"1 ½", {3, 2}, 4},        {"1/2", {1, 2}, 3},       {"10/4", {5, 2}, 4},
        {"1\u20442", {1, 2}, 5},   {"1 1/2 tsp", {3, 2}, 5}, {"1\u00A01/2", {3, 2}, 6},
        {"⅐", {1, 7}, 3},          {"⅒", {1, 10}, 3},        {"2 onions", {2, 1}, 1},
        {"3. Stir", {3, 1}, 1},    {"3, peeled", {3, 1}, 1}, {"2 3 4", {2, 1}, 1},
    };
    for (const auto& c : cases) {
        CAPTURE(c.text);
        const auto number = read_amount(c.text, 0);
        REQUIRE(number.ok());
        CHECK(number.value().amount == c.amount);
        CHECK(number.value().end == c.end);
    }
}

TEST_CASE("what is no number, or two numbers at once, is refused where that shows") {
    struct Case {
        const char* text;
        Kind kind;
        std::size_t offset;
    };
    const Case cases[] = {
        {"", Kind::Absent, 0},
        {"onions", Kind::Absent, 0},
        {".5", Kind::Absent, 0},
        {"-3", Kind::Absent, 0},
        {"1234567", Kind::TooLong, 0},
        {"1.23456", Kind::TooLong, 2},
        {"1/1234", Kind::TooLong, 2},
        {"1/0", Kind::OverZero, 1},
        {"2 1/0", Kind::OverZero, 3},
        {"1,000", Kind::Thousands, 1},
        {"12,500 g", Kind::Thousands, 2},
        {"1/2/3", Kind::Malformed, 0},
        {"2.5.1", Kind::Malformed, 0},
        {"1/", Kind::Malformed, 2},
        {"1//2", Kind::Malformed, 2},
        {"½¼", Kind::Malformed, 0},
        {"1½2", Kind::Malformed, 0},
        {"1 3/2", Kind::Malformed, 2},
        {"2.5½", Kind::Malformed, 0},
    };
    for (const auto& c : cases) {
        CAPTURE(c.text);
        const auto number = read_amount(c.text, 0);
        REQUIRE_FALSE(number.ok());
        CHECK(number.fault().kind == c.kind);
        CHECK(number.fault().offset == c.offset);
        CHECK_FALSE(message(c.kind).empty());
    }
}

TEST_CASE("a range has two numbers, and one number is both its ends") {
    struct Case {
        const char* text;
        Amount low, high;
        std::size_t end;
    };
    const Case cases[] = {
        {"3-4 onions", {3, 1}, {4, 1}, 3}, {"3–4", {3, 1}, {4, 1}, 5},
        {"3 — 4", {3, 1}, {4, 1}, 7},      {"3 to 4", {3, 1}, {4, 1}, 6},
        {"1 or 2", {1, 1}, {2, 1}, 6},     {"½-¾ cup", {1, 2}, {3, 4}, 5},
        {"3-3 1/2 h", {3, 1}, {7, 2}, 7},  {"1 1/2-2", {3, 2}, {2, 1}, 7},
        {"5-spice", {5, 1}, {5, 1}, 1},    {"3 - onions", {3, 1}, {3, 1}, 1},
        {"2 to taste", {2, 1}, {2, 1}, 1}, {"4-3", {4, 1}, {3, 1}, 3},
    };
    for (const auto& c : cases) {
        CAPTURE(c.text);
        const auto range = read_range(c.text, 0);
        REQUIRE(range.ok());
        CHECK(range.value().low == c.low);
        CHECK(range.value().high == c.high);
        CHECK(range.value().end == c.end);
    }
    CHECK(read_range("3-1/0", 0).fault().kind == Kind::OverZero);
    CHECK(read_range("3-9999999", 0).fault().kind == Kind::TooLong);
}

TEST_CASE("reading past the end of a text finds nothing") {
    for (const std::size_t at : {3U, 4U, 400U}) {
        CHECK(read_amount("2.5", at).fault().kind == Kind::Absent);
        CHECK(read_range("2.5", at).fault().kind == Kind::Absent);
        CHECK(skip_spaces("2.5", at) == at);
        CHECK(range_mark("2.5", at) == 0);
    }
}
