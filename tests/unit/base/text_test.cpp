#include "base/nearest.h"
#include "base/split.h"
#include "base/utf8.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <string>
#include <vector>

using namespace thawslip;

TEST_CASE("UTF-8 is checked as RFC 3629 defines it") {
    struct Case {
        const char* about;
        std::string_view text;
        long first_bad; ///< -1: all good
    };
    using namespace std::string_view_literals;
    const Case cases[] = {
        {"plain ASCII", "stew"sv, -1},
        {"two, three and four bytes", "é – 🍐"sv, -1},
        {"a lone continuation byte", "ab\x80"sv, 2},
        {"an overlong slash", "\xC0\xAF"sv, 0},
        {"an overlong three-byte form", "\xE0\x80\xAF"sv, 0},
        {"a surrogate", "\xED\xA0\x80"sv, 0},
        {"above U+10FFFF", "\xF4\x90\x80\x80"sv, 0},
        {"a sequence cut short", "a\xE2\x82"sv, 1},
        {"a byte that never occurs", "a\xFF"sv, 1},
        {"the last code point there is", "\xF4\x8F\xBF\xBF"sv, -1},
    };
    for (const auto& c : cases) {
        CAPTURE(c.about);
        const auto bad = first_invalid_utf8(c.text);
        CHECK((bad ? static_cast<long>(*bad) : -1) == c.first_bad);
    }
}

TEST_CASE("decoding and encoding UTF-8 are inverse") {
    const std::string text = "½ cup jalapeño, 74 °C – Борщ 🍐";
    CHECK(to_utf8(to_utf32(text)) == text);
    CHECK(count_code_points(text) == to_utf32(text).size());
}

TEST_CASE("a character is named by its number, and shown unless it could drive a terminal") {
    CHECK(name_of(U'é') == "U+00E9 \"é\"");
    CHECK(name_of(U'\a') == "U+0007");
    CHECK(name_of(U'🍐') == "U+1F350 \"🍐\"");
}

TEST_CASE("words to search by are runs of letters and digits, letters beyond ASCII among them") {
    using Words = std::vector<std::string>;
    CHECK(searchable_words("Nuß-Eintopf, 2 l") == Words{"Nuß", "Eintopf", "2", "l"});
    CHECK(searchable_words("(ají)") == Words{"ají"});
    CHECK(searchable_words(" \n-").empty());
}

TEST_CASE("edit distance counts insertions, deletions, substitutions and swaps") {
    struct Case {
        const char* a;
        const char* b;
        std::size_t distance;
    };
    const Case cases[] = {{"", "", 0},
                          {"stew", "", 4},
                          {"stew", "stew", 0},
                          {"stew", "stwe", 1},
                          {"thaw", "thaws", 1},
                          {"kitten", "sitting", 3},
                          {"refridgerator", "refrigerator", 1}};
    for (const auto& c : cases) {
        CAPTURE(c.a);
        CHECK(edit_distance(c.a, c.b) == c.distance);
        CHECK(edit_distance(c.b, c.a) == c.distance);
    }
}

TEST_CASE("the nearest word is offered only when it is near") {
    const std::vector<std::string> methods = {"refrigerator", "cold water", "microwave",
                                              "from frozen"};
    CHECK(nearest("refridgerator", methods) == "refrigerator");
    CHECK(nearest("Cold Water", methods) == "cold water");
    CHECK(nearest("sunshine", methods) == std::nullopt);
    CHECK(nearest(std::string(100'000, 'x'), methods) == std::nullopt);
}

TEST_CASE("a list of choices reads as a sentence") {
    CHECK(list_of(std::vector<std::string>{"a", "b", "c"}) == "\"a\", \"b\" or \"c\"");
    CHECK(list_of(std::vector<std::string>{"a"}) == "\"a\"");
}

TEST_CASE("a third of a word's letters may be wrong, at least one and at most three") {
    const std::string letters = "abcdefghijklmnopqrstuvwxyz";
    for (std::size_t size = 1; size <= 24; ++size) {
        const std::vector<std::string> candidates{letters.substr(0, size)};
        const auto allowed = std::min<std::size_t>(std::max<std::size_t>(size / 3, 1), 3);
        for (std::size_t wrong = 0; wrong <= size; ++wrong) {
            auto word = candidates.front();
            std::fill_n(word.begin(), wrong, '5');
            CAPTURE(word);
            CHECK(nearest(word, candidates).has_value() == (wrong <= allowed));
        }
    }
}

TEST_CASE("a text is taken line by line, the last with or without an end") {
    std::string_view text = "one\n\nthree";
    CHECK(take_line(text) == "one");
    CHECK(take_line(text).empty());
    CHECK(take_line(text) == "three");
    CHECK(text.empty());
    CHECK(take_line(text).empty());
    CHECK(lines_in("one\n\nthree") == std::vector<std::string>{"one", "", "three"});
    CHECK(lines_in("one\n") == std::vector<std::string>{"one"});
    CHECK(lines_in("\n") == std::vector<std::string>{""});
    CHECK(lines_in("").empty());
}
