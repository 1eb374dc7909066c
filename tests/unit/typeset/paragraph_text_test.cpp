// A paragraph's words made ready for shaping: what is dropped, what keeps its place.

#include "typeset/paragraph_text.h"

#include <doctest/doctest.h>
#include <string>
#include <utility>
#include <vector>

namespace paragraph_text_test {

using namespace thawslip::typeset;

namespace {

ParagraphText read(const std::vector<StyledText>& spans) {
    auto text = read_text(spans);
    REQUIRE(text);
    return std::move(text).value();
}

ParagraphText read(const std::string& text) {
    return read(std::vector{StyledText{text, Weight::Regular}});
}

/// The text of each weight, as "regular|bold|…" with a letter for the weight: r, m, b.
std::string by_weight(const ParagraphText& text) {
    std::string told;
    std::size_t begin = 0;
    for (const auto& range : text.weights) {
        if (range.end > begin) {
            told += (told.empty() ? "" : "|");
            told += "rmb"[static_cast<std::size_t>(range.weight)];
            told += ":" + text.text.substr(begin, range.end - begin);
        }
        begin = range.end;
    }
    CHECK(begin == text.text.size());
    return told;
}

std::vector<BreakOpportunity> breaks_of(const std::string& text) {
    return read(text).breaks;
}

using Breaks = std::vector<BreakOpportunity>;
using enum BreakKind;

} // namespace

TEST_CASE("spaces and unseen characters at either end are dropped, those inside are kept or do "
          "their work") {
    CHECK(read("  plum jam \u00A0").text == "plum jam");
    for (const std::string edge : {" ", "\u00A0", "\u202F", "\u00AD", "\u200B", "\u2060", "  "}) {
        CHECK(read(edge + "plum" + edge).text == "plum");
    }
    CHECK(read("pl\u00ADum").text == "plum");
    CHECK(read("pl\u200Bum").text == "plum");
    CHECK(read("pl\u2060um").text == "plum");
    CHECK(read("plum  jam").text == "plum  jam");
    // Joiners and variation selectors choose glyphs, from the first to the last of them.
    for (const std::string chooser : {"\u200C", "\u200D", "\uFE00", "\uFE0F"}) {
        CHECK(read("pl" + chooser + "um").text == "pl" + chooser + "um");
    }
    CHECK(read("").text.empty());
    CHECK(read("").breaks.empty());
    CHECK(read("").graphemes.empty());
}

TEST_CASE("a weight holds for its span's text, wherever spaces and unseen characters fall away") {
    using enum Weight;
    CHECK(by_weight(read({{"plum ", Bold}, {"jam", Regular}, {" now", Medium}})) ==
          "b:plum |r:jam|m: now");
    CHECK(by_weight(read({{"  ", Bold}, {" plum", Regular}, {"  ", Medium}})) == "r:plum");
    CHECK(by_weight(read({{"pl\u00AD", Bold}, {"\u00ADum", Regular}})) == "b:pl|r:um");
    CHECK(by_weight(read({{"", Bold}, {"plum", Medium}, {"", Regular}})) == "m:plum");
    // An accent at the start of a span goes with the letter before it.
    CHECK(by_weight(read({{"Cre", Bold}, {"\u0300me", Regular}})) == "b:Crè|r:me");
    CHECK(by_weight(read({{"\u0301", Bold}, {"\u0300", Regular}, {"a", Medium}})).ends_with("m:a"));
    CHECK(by_weight(read({{"e", Bold}, {"\u0301\u0323", Regular}, {"x", Medium}})) ==
          "b:ẹ\u0301|m:x");
}

TEST_CASE("a line may end where the text lets it, the freest of what falls on one place") {
    CHECK(breaks_of("plum jam") == Breaks{{5, Free}});
    CHECK(breaks_of("2 kg") == Breaks{{2, Held}});
    CHECK(breaks_of("2 limes") == Breaks{{2, Unwilling}});
    CHECK(breaks_of("pl\u00ADum") == Breaks{{2, SoftHyphen}});
    CHECK(breaks_of("pl\u200Bum") == Breaks{{2, Free}});
    CHECK(breaks_of("pl\u00AD\u200Bum") == Breaks{{2, Free}});
    CHECK(breaks_of("pl\u200B\u00ADum") == Breaks{{2, Free}});
    CHECK(breaks_of("pl\u00AD\u00ADum") == Breaks{{2, SoftHyphen}});
    CHECK(breaks_of("a\u00A0b") == Breaks{{3, Held}});
    CHECK(breaks_of("a  b") == Breaks{{2, Held}, {3, Free}});
    // None at the ends.
    CHECK(breaks_of("\u00ADplum\u00AD").empty());
    CHECK(breaks_of(" plum ").empty());
    CHECK(breaks_of("\u200Bplum\u200B").empty());
}

TEST_CASE("a reader counts a letter and its accents as one, and the ink ends before a space") {
    CHECK(read("ax\u030C½").graphemes == std::vector<std::size_t>{1, 4, 6});
    const std::string text = "plum  \u00A0jam ";
    CHECK(ink_end(text, 0, text.size()) == 11);
    CHECK(ink_end(text, 0, 8) == 4);
    CHECK(ink_end(text, 0, 4) == 4);
    CHECK(ink_end(text, 0, 3) == 3);
    CHECK(ink_end(text, 4, 8) == 4); // nothing but spaces
    CHECK(ink_end(text, 5, 11) == 11);
}

TEST_CASE("the first character that cannot be set is told, of the first span that has one") {
    using Reason = UnsettableCharacter::Reason;
    const auto fault = [](const std::vector<StyledText>& spans) {
        const auto text = read_text(spans);
        REQUIRE_FALSE(text);
        return text.fault();
    };
    CHECK(fault({{"plum\tשלום"}}).character == U'\t');
    CHECK(fault({{"plum ש\t"}}).character == U'ש');
    CHECK(fault({{"plum"}, {"ש"}, {"\t"}}).reason == Reason::Script);
    CHECK(fault({{"plum"}, {"\t"}, {"ש"}}).reason == Reason::Control);
    CHECK(fault({{"ש\xFF"}}).character == U'\uFFFD'); // no text at all
}

} // namespace paragraph_text_test
