#include "kitchen/measures/number_text.h"

#include <doctest/doctest.h>
#include <string>

using namespace thawslip::kitchen;

TEST_CASE("a number is read in every form that cooks write, exactly") {
    struct Case {
        const char* text;
        Amount amount;
        std::size_t end;
    };
    const Case cases[] = {
        {"2", {2, 1}, 1},          {"007", {7, 1}, 3},        {"999999", {999999, 1}, 6},
        {"2.2 kg", {11, 5}, 3},    {"2,25", {9, 4}, 4},       {"0,125 kg", {1, 8}, 5},
        {"1.250 kg", {5, 4}, 5},   {"0.0001", {1, 10000}, 6}, {"½", {1, 2}, 2},
        {"1½ h", {3, 2}, 3},       {"1 ½", {3, 2}, 4},        {"1/2", {1, 2}, 3},
        {"10/4", {5, 2}, 4},       {"1\u20442", {1, 2}, 5},   {"1 1/2 tsp", {3, 2}, 5},
        {"1\u00A01/2", {3, 2}, 6}, {"⅐", {1, 7}, 3},          {"⅒", {1, 10}, 3},
        {"2 onions", {2, 1}, 1},   {"3. Stir", {3, 1}, 1},    {"3, peeled", {3, 1}, 1},
        {"2 3 4", {2, 1}, 1},
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
        const char* message; ///< empty: there is no number at all
        std::size_t offset;
    };
    const char* const absent = "";
    const char* const too_long = "the number has more digits than a kitchen needs";
    const char* const over_zero = "nothing can be divided by 0";
    const char* const malformed = "expected a number such as 2, 2.5, ½ or 1 1/2";
    const Case cases[] = {
        {"", absent, 0},
        {"onions", absent, 0},
        {".5", absent, 0},
        {"-3", absent, 0},
        {"1234567", too_long, 0},
        {"1.23456", too_long, 2},
        {"1/1234", too_long, 2},
        {"1/0", over_zero, 1},
        {"2 1/0", over_zero, 3},
        {"1,000", "it may mean 1 or 1000: write one of them without a comma", 1},
        {"12,500 g", "it may mean 12,5 or 12500: write one of them", 2},
        {"1.000 g", "it may mean 1 or 1000: write one of them without a point", 1},
        {"1/2/3", malformed, 0},
        {"2.5.1", malformed, 0},
        {"1/", malformed, 2},
        {"1//2", malformed, 2},
        {"½¼", malformed, 0},
        {"1½2", malformed, 0},
        {"1 3/2", malformed, 2},
        {"2.5½", malformed, 0},
    };
    for (const auto& c : cases) {
        CAPTURE(c.text);
        const auto number = read_amount(c.text, 0);
        REQUIRE_FALSE(number.ok());
        CHECK(number.fault().message == c.message);
        CHECK(number.fault().offset == c.offset);
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
    CHECK(read_range("3-1/0", 0).fault().offset == 3);
    CHECK(read_range("3-9999999", 0).fault().offset == 2);
}

TEST_CASE("reading past the end of a text finds nothing") {
    for (const std::size_t at : {3U, 4U, 400U}) {
        CHECK(read_amount("2.5", at).fault().message.empty());
        CHECK(read_range("2.5", at).fault().message.empty());
        CHECK(skip_spaces("2.5", at) == at);
        CHECK(range_mark("2.5", at) == 0);
    }
}
