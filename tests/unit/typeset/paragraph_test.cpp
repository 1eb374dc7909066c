#include "support/shipped_fonts.h"
#include "typeset/paragraph.h"

#include <doctest/doctest.h>

using namespace thawslip::typeset;
using namespace thawslip::test_support;

namespace {

const FontSet& fonts() {
    static const FontSet set = shipped_fonts();
    return set;
}

PreparedParagraph prepared(const std::vector<StyledText>& spans) {
    auto paragraph = prepare(spans, fonts());
    REQUIRE(paragraph);
    return std::move(paragraph).value();
}

PreparedParagraph prepared(const std::string& text) {
    return prepared(std::vector{StyledText{text, Weight::Regular}});
}

std::string text_of(const Line& line) {
    std::string text;
    for (const auto& piece : line.pieces) {
        text += piece.run.text;
    }
    return text;
}

/// The lines for a measure of `width` em, " | " between them.
std::string set_at(const PreparedParagraph& paragraph, double width) {
    std::string lines;
    for (const auto& line : paragraph.set(width)) {
        lines += (lines.empty() ? "" : " | ") + text_of(line);
    }
    return lines;
}

} // namespace

TEST_CASE("a paragraph that fits is one line of its natural width") {
    const auto paragraph = prepared("Squash and red lentil stew");
    CHECK(set_at(paragraph, 100.0) == "Squash and red lentil stew");
    CHECK(paragraph.count_lines(100.0) == 1);
    const auto line = paragraph.set(100.0).front();
    CHECK(line.width == doctest::Approx(paragraph.natural_width()));
    CHECK(line.pieces.front().run.width() == doctest::Approx(line.width));
    CHECK(paragraph.set(line.width).size() == 1);
    CHECK(paragraph.set(line.width - 0.001).size() == 2);
}

TEST_CASE("no single short word is left on the last line where as many lines do without") {
    CHECK(set_at(prepared("Squash and red lentil stew"), 11.0) == "Squash and red | lentil stew");
}

TEST_CASE("a word wider than the measure is cut, with a hyphen, on lines of its own") {
    const auto paragraph = prepared("plum Zwetschgenknödelteig dough");
    CHECK(set_at(paragraph, 5.0) == "plum | Zwetschg- | enknödelt- | eig dough");
    const auto lines = paragraph.set(5.0);
    CHECK_FALSE(lines[0].breaks_word);
    CHECK(lines[1].breaks_word);
    CHECK(lines[2].breaks_word);
    CHECK_FALSE(lines[3].breaks_word);
    CHECK(paragraph.count_lines(5.0) == 4);
}
