#include "wording/typography.h"

#include <doctest/doctest.h>

using thawslip::wording::between;
using thawslip::wording::capitalised;
using thawslip::wording::typeset_text;

TEST_CASE("what a keyboard offers is set as a compositor would") {
    struct Case {
        const char* typed;
        const char* set;
    };
    const Case cases[] = {
        {"7-9 h", "7–9 h"},
        {"2-litre pot, size A-4", "2-litre pot, size A-4"},
        {"1 1/2 tsp", "1½ tsp"},
        {"1/2 cup", "½ cup"},
        {"2/3 cup", "⅔ cup"},
        {"2 x 400 g", "2 × 400 g"},
        {"heat to 74 C", "heat to 74 °C"},
        {"165F in the middle", "165 °F in the middle"},
        {"74 °C", "74 °C"},
        {"the cook's \"secret\"", "the cook’s “secret”"},
        {"wait...", "wait…"},
        {"½ l", "½ l"},
    };
    for (const auto& c : cases) {
        CHECK(typeset_text(c.typed) == c.set);
    }
}

TEST_CASE("what only looks like a fraction, a range or a degree stays as it is") {
    for (const char* text : {"2026-10-17", "11/12 done", "a 1/25 scale", "4 Courses",
                             "step-by-step", "3 x", "C", "1/2/3"}) {
        CHECK(typeset_text(text) == text);
    }
}

TEST_CASE("a sentence opens with a capital in Latin, Greek and Cyrillic") {
    CHECK(capitalised("last 10 min") == "Last 10 min");
    CHECK(capitalised("épinards") == "Épinards");
    CHECK(capitalised("σούπα") == "Σούπα");
    CHECK(capitalised("борщ") == "Борщ");
    CHECK(capitalised("½ cup") == "½ cup");
    CHECK(capitalised("") == "");
}

TEST_CASE("things in a row are parted by semicolons where one of them has a comma") {
    CHECK(between({"300 g rice", "peas"}) == ", ");
    CHECK(between({"potatoes, halved", "peas"}) == "; ");
    CHECK(between({"1,5 l Brühe", "Erbsen"}) == ", ");
}
