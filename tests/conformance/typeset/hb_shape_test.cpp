// Glyphs, advances and offsets against the program hb-shape of Debian's libharfbuzz-bin 6.0.0,
// which reads the font file and finds script and direction by itself.

#include "base/utf8.h"
#include "support/shipped_fonts.h"
#include "typeset/paragraph.h"

#include <array>
#include <cmath>
#include <cstdio>
#include <doctest/doctest.h>
#include <fmt/format.h>
#include <fstream>
#include <memory>
#include <random>
#include <sstream>

using namespace thawslip;
using namespace thawslip::typeset;
using namespace thawslip::test_support;

namespace {

constexpr int string_count = 1000;

/// Letters of three scripts, rich in pairs that kern and letters that ligate.
constexpr std::array<std::u32string_view, 3> alphabets{
    U"AVTWYLPFaevwyTofiflffijrcdéšžčöüÅÆøßŁłňőţğ",
    U"ΑΥΤΛΓΡΠαβγδεζηθικλμνξοπρστυφχψωςάέήίόύώΆΈ",
    U"АУТГРДЛЧЬабвгдежзийклмнопрстуфхцчшщъыьэюяёЇїЄєЉџ",
};
constexpr std::u32string_view marks = U"  \u00A0--.,;:!?()’“”–/0123456789½¼¾°×%";

std::string random_text(std::mt19937& random, std::u32string_view alphabet) {
    std::string text;
    append_utf8(text, alphabet[random() % alphabet.size()]); // says which script it is
    const auto length = 8 + random() % 60;
    for (unsigned i = 0; i < length; ++i) {
        const auto& pool = random() % 4 == 0 ? marks : alphabet;
        append_utf8(text, pool[random() % pool.size()]);
    }
    append_utf8(text, alphabet[random() % alphabet.size()]); // no space at the end
    return text;
}

/// Glyphs as hb-shape writes them: [id=cluster+advance|…], offsets as @x,y, font units.
std::string as_hb_shape_writes(const Line& line, double em) {
    const auto units = [em](double n) { return std::lround(n * em); };
    std::string text;
    for (const auto& piece : line.pieces) {
        std::uint32_t cluster = 0;
        for (const auto& glyph : piece.run.glyphs) {
            cluster = glyph.text_begin == glyph.text_end ? cluster : glyph.text_begin;
            text += text.empty() ? "[" : "|";
            text += fmt::format("{}={}", glyph.id, cluster);
            if (glyph.x_offset != 0.0 || glyph.y_offset != 0.0) {
                text += fmt::format("@{},{}", units(glyph.x_offset), units(glyph.y_offset));
            }
            text += fmt::format("+{}", units(glyph.advance));
        }
    }
    return text + "]";
}

std::string text_of(const Line& line) {
    std::string text;
    for (const auto& piece : line.pieces) {
        text += piece.run.text;
    }
    return text;
}

std::vector<std::string> ask_hb_shape(const std::string& font,
                                      const std::vector<std::string>& texts) {
    // Test cases may run side by side, and differ in how many texts they ask about.
    const auto path = fmt::format("{}/tests/hb_shape_{}.txt", THAWSLIP_BINARY_DIR, texts.size());
    std::ofstream file{path};
    for (const auto& text : texts) {
        file << text << '\n';
    }
    file.close();
    const auto command =
        "hb-shape --no-glyph-names --utf8-clusters --language=en --font-file=" + font +
        " --text-file=" + path;
    const std::unique_ptr<std::FILE, int (*)(std::FILE*)> pipe{popen(command.c_str(), "r"),
                                                               &pclose};
    std::string answer;
    std::array<char, 4096> buffer{};
    for (std::size_t n = 0; (n = std::fread(buffer.data(), 1, buffer.size(), pipe.get())) > 0;) {
        answer.append(buffer.data(), n);
    }
    std::vector<std::string> lines;
    std::istringstream stream{answer};
    for (std::string line; std::getline(stream, line);) {
        lines.push_back(line);
    }
    return lines;
}

/// The lines of 1,000 random paragraphs in three scripts, each set at a measure of `width` em.
std::vector<Line> random_lines(const FontSet& fonts, double width) {
    std::mt19937 random{2026};
    std::vector<Line> lines;
    for (unsigned i = 0; i < string_count; ++i) {
        const auto text = random_text(random, alphabets[i % alphabets.size()]);
        const auto paragraph = prepare({{text, Weight::Regular}}, fonts);
        REQUIRE(paragraph);
        for (auto& line : paragraph.value().set(width)) {
            lines.push_back(std::move(line));
        }
    }
    return lines;
}

/// How many lines look otherwise when hb-shape is given their text alone.
int count_differences(const std::string& font, const std::vector<Line>& lines) {
    std::vector<std::string> texts;
    for (const auto& line : lines) {
        texts.push_back(text_of(line));
    }
    const auto answers = ask_hb_shape(font, texts);
    REQUIRE(answers.size() == lines.size());
    const double em = face_from(font).units_per_em();
    int differences = 0;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        CAPTURE(texts[i]);
        const auto ours = as_hb_shape_writes(lines[i], em);
        CHECK(ours == answers[i]);
        differences += ours == answers[i] ? 0 : 1;
    }
    return differences;
}

FontSet only(const std::string& font) {
    auto set = make_font_set({{font}, {font}, {font}});
    REQUIRE(set);
    return std::move(set).value();
}

} // namespace

TEST_CASE("1,000 strings in Latin, Greek and Cyrillic are shaped as hb-shape shapes them") {
    for (const auto& font : {clear_sans + "Regular.ttf", dejavu + ".ttf"}) {
        const auto lines = random_lines(only(font), 1e6);
        CHECK(lines.size() == string_count);
        CHECK(count_differences(font, lines) == 0);
    }
}

TEST_CASE("words on a broken line stand where hb-shape puts them when it is given that line") {
    // Narrow measures cut words as well; such lines open and end amid kerned letters.
    for (const double width : {4.0, 11.0}) {
        for (const auto& font : {clear_sans + "Bold.ttf", dejavu + ".ttf"}) {
            const auto lines = random_lines(only(font), width);
            CHECK(lines.size() > 2 * string_count);
            CHECK(count_differences(font, lines) == 0);
        }
    }
}
