#include "toml/type_hints.h"

#include <doctest/doctest.h>
#include <string>
#include <vector>

namespace type_hints_test {

using namespace thawslip;
using toml::trimmed;

namespace {

std::string hint_of(std::string_view expected, std::string text, std::string_view example = {}) {
    return toml::type_hint({"a", example}, expected, {std::move(text), {}});
}

std::string without_quotes(const std::string& text) {
    return "write it without quotes: a = " + text;
}

} // namespace

TEST_CASE("blanks around a text are none of it, and those inside are") {
    CHECK(trimmed(" \t two words \t") == "two words");
    CHECK(trimmed("word") == "word");
    CHECK(trimmed(" \t ").empty());
    CHECK(trimmed("").empty());
}

TEST_CASE("a number in quotes is to be written without, where it is one of the kind") {
    for (const auto* whole : {"7", "42", "123456789"}) {
        CAPTURE(whole);
        CHECK(hint_of(toml::expected_integer, whole) == without_quotes(whole));
        CHECK(hint_of(toml::expected_real, whole) == without_quotes(whole));
        CHECK(hint_of(toml::expected_boolean, whole).empty());
        CHECK(hint_of(toml::expected_text, whole).empty());
    }
    for (const auto* real : {"2.5", "0.123456"}) {
        CAPTURE(real);
        CHECK(hint_of(toml::expected_real, real) == without_quotes(real));
        CHECK(hint_of(toml::expected_integer, real).empty());
    }
    CHECK(hint_of(toml::expected_integer, "\t7 ") == without_quotes("7"));
    for (const auto* none : {"", "six", "7 kg", "1234567890", ".5", "5.", "1.2.3", "-7", "."}) {
        CAPTURE(none);
        CHECK(hint_of(toml::expected_integer, none).empty());
        CHECK(hint_of(toml::expected_real, none).empty());
    }
}

TEST_CASE("a truth and a date in quotes are to be written without, and a text as a list of one") {
    for (const auto* truth : {"true", "false"}) {
        CHECK(hint_of(toml::expected_boolean, truth) == without_quotes(truth));
        CHECK(hint_of(toml::expected_integer, truth).empty());
    }
    CHECK(hint_of(toml::expected_boolean, "yes").empty());
    CHECK(hint_of(toml::expected_boolean, "True").empty());
    CHECK(hint_of(toml::expected_date, "2026-11-02") == without_quotes("2026-11-02"));
    CHECK(hint_of(toml::expected_integer, "2026-11-02").empty());
    for (const auto* none : {"2026-11-023", "2026-11-2", "02.11.2026", "today"}) {
        CAPTURE(none);
        CHECK(hint_of(toml::expected_date, none) == "write, for example, a = 2026-10-17");
    }
    CHECK(hint_of(toml::expected_list, "Stir.") == "write a = [\"Stir.\"]");
    CHECK(hint_of(toml::expected_list, std::string(40, 'x')) ==
          "write a = [\"" + std::string(40, 'x') + "\"]");
    CHECK(hint_of(toml::expected_list, std::string(41, 'x')).empty());
    CHECK(hint_of(toml::expected_text_or_list, "x").empty());
}

TEST_CASE("where nothing better is known the key's example is shown") {
    CHECK(hint_of(toml::expected_integer, "six", "6") == "write, for example, a = 6");
    CHECK(hint_of(toml::expected_integer, "7", "6") == without_quotes("7"));
    CHECK(hint_of(toml::expected_date, "today", "2026-09-09") ==
          "write, for example, a = 2026-09-09");
    CHECK(toml::type_hint({"a", "\"x\""}, toml::expected_text, {std::int64_t{7}, {}}) ==
          "write, for example, a = \"x\"");
    CHECK(toml::type_hint("a", toml::expected_text, {std::int64_t{7}, {}}).empty());
}

TEST_CASE("the nearest key and the nearest word are named, by any spelling of that") {
    CHECK(toml::nearest_key_hint("sevings", {"dish", "servings"}) == "did you mean \"servings\"?");
    CHECK(toml::nearest_key_hint("zzz", {"dish", "servings"}) == "keys known here: dish, servings");
    CHECK(toml::nearest_key_hint("zzz", {}) == "no key is known here");
    const std::vector<toml::Word> words = {
        {"pot", {"saucepan", "stockpot"}}, {"oven"}, {"griddle", {"bakestone"}}};
    CHECK(toml::nearest_word("ovem", words) == "oven");
    CHECK(toml::nearest_word("suacepan", words) == "pot");
    CHECK(toml::nearest_word("stokcpot", words) == "pot");
    CHECK(toml::nearest_word("bakestne", words) == "griddle");
    CHECK(toml::nearest_word("gridle", words) == "griddle");
    CHECK_FALSE(toml::nearest_word("xylophone", words));
    CHECK_FALSE(toml::nearest_word("oven", {}));
}

TEST_CASE("a whole number serves where a real one is asked for, and nothing else does") {
    CHECK(toml::as_real({2.5, {}}) == 2.5);
    CHECK(toml::as_real({std::int64_t{3}, {}}) == 3.0);
    CHECK_FALSE(toml::as_real({true, {}}));
    CHECK_FALSE(toml::as_real({std::string{"3"}, {}}));
}

} // namespace type_hints_test
