
#include "paragraphs.h"

#include <doctest/doctest.h>
#include <random>
#include <thread>
#include <utility>

using namespace thawslip::typeset;
using namespace thawslip::test_support;

namespace {

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

TEST_CASE(
    "a word is cut behind a vowel with letters on either side where that takes no line more") {
    CHECK(set_at(prepared("Streuobstwiesenkürbisauflauf"), 6.6) ==
          "Streuobstwie- | senkürbisau- | flauf");
    CHECK(set_at(prepared("Zwetschgenknödel"), 5.8) == "Zwetschge- | nknödel");
    CHECK(set_at(prepared("grmphlbrtzk"), 5.2) == "grmphlbr- | tzk");
    for (double measure = 3.0; measure < 9.0; measure += 0.1) {
        const auto paragraph = prepared("two Streuobstwiesenkürbisauflauf at once");
        CHECK(std::cmp_equal(paragraph.set(measure).size(), paragraph.count_lines(measure)));
    }
}

TEST_CASE("a paragraph without words is no lines") {
    for (const auto* text : {"", " ", "\u00AD \u2060"}) {
        const auto paragraph = prepared(text);
        CHECK(paragraph.empty());
        CHECK(paragraph.set(5.0).empty());
        CHECK(paragraph.count_lines(5.0) == 0);
        CHECK(paragraph.natural_width() == 0.0);
        CHECK(paragraph.widest_word() == 0.0);
    }
    CHECK(prepare({}, fonts()).value().empty());
}

TEST_CASE("what stays together is parted before any word is cut, and then says so") {
    const auto paragraph = prepared("add 2 × 400 g beans");
    CHECK(set_at(paragraph, 6.0) == "add | 2 × 400 g | beans");
    CHECK(set_at(paragraph, 4.0) == "add | 2 × 400 | g beans");
    CHECK(paragraph.set(4.0)[1].breaks_word);
    CHECK(set_at(prepared("180\u202F°C"), 2.5) == "180 | °C");
    CHECK(set_at(prepared("7–9"), 1.3) == "7– | 9");
}

TEST_CASE("a soft hyphen shows only where a word is cut at it") {
    const auto paragraph = prepared("Kürbis\u00ADlinsen\u00ADeintopf");
    CHECK(set_at(paragraph, 20.0) == "Kürbislinseneintopf");
    CHECK(set_at(paragraph, 7.5) == "Kürbislinsen- | eintopf");
    CHECK(set_at(paragraph, 4.5) == "Kürbis- | linsen- | eintopf");
}

TEST_CASE("an accented letter is never parted, and a dash needs no hyphen after it") {
    CHECK(set_at(prepared("x\u030Cx\u030Cx\u030C"), 1.1) == "x\u030C- | x\u030Cx\u030C");
    CHECK(set_at(prepared("aaa\u2011bbb"), 2.5) == "aaa\u2011 | bbb");
}

TEST_CASE("composed and decomposed text give equal lines, wherever the spans part") {
    const std::string composed = "Cr\u00E8me br\u00FBl\u00E9e";
    const std::string apart = "Cre\u0300me bru\u0302le\u0301e";
    const auto lines = prepared(composed).set(4.0);
    const auto same = [&lines](const PreparedParagraph& other) {
        const auto others = other.set(4.0);
        REQUIRE(others.size() == lines.size());
        for (std::size_t i = 0; i < lines.size(); ++i) {
            CHECK(others[i].width == lines[i].width);
            CHECK(others[i].pieces.front().run == lines[i].pieces.front().run);
        }
    };
    same(prepared(apart));
    same(prepared({{"Cre", Weight::Regular}, {"\u0300me bru\u0302le\u0301e", Weight::Regular}}));
    same(prepared({{"Cre", Weight::Regular}, {"\u0300", Weight::Bold}, {apart.substr(5)}}));
}

TEST_CASE("words of one weight kern across spans as if they were one") {
    const auto whole = prepared("AVATAR To");
    const auto parts = prepared({{"AV", Weight::Regular}, {"ATAR T", Weight::Regular}, {"o"}});
    CHECK(parts.natural_width() == whole.natural_width());
    CHECK(parts.set(50.0).front().pieces.size() == 1);
    const auto& face = fonts().faces.front();
    int unkerned = 0;
    for (const char32_t c : U"AVATAR To") {
        unkerned += c == 0 ? 0 : face.advance(face.glyph_of(c));
    }
    CHECK(whole.natural_width() < unkerned / 2048.0 - 0.2);
}

TEST_CASE("each weight has its face, and a character its face lacks comes from the next") {
    const auto line =
        prepared({{"Use by ", Weight::Regular}, {"17 Oct", Weight::Bold}, {" ✓"}}).set(50.0)[0];
    std::vector<std::string> pieces;
    for (const auto& piece : line.pieces) {
        pieces.push_back(fonts().faces[piece.run.face].postscript_name() + ": " + piece.run.text);
    }
    CHECK(pieces == std::vector<std::string>{"ClearSans: Use by ", "ClearSans-Bold: 17 Oct",
                                             "ClearSans:  ", "DejaVuSans: ✓"});
    double x = 0.0;
    for (const auto& piece : line.pieces) {
        CHECK(piece.x == doctest::Approx(x));
        x += piece.run.width();
    }
    CHECK(line.width == doctest::Approx(x));
}

TEST_CASE("a narrow no-break space and a no-break hyphen do not change the face") {
    const auto line = prepared("180\u202F°C oven\u2011proof").set(50.0).front();
    REQUIRE(line.pieces.size() == 1);
    CHECK(line.pieces[0].run.text == "180\u202F°C oven\u2011proof");
    for (const auto& glyph : line.pieces[0].run.glyphs) {
        CHECK(glyph.id != 0);
    }
    CHECK(prepared("180\u202F°C").natural_width() < prepared("180\u00A0°C").natural_width());
}

TEST_CASE("every glyph says which text it stands for, ligatures and accents included") {
    const auto line = prepared("o\uFB03ce office x\u030C½").set(50.0).front();
    for (const auto& piece : line.pieces) {
        std::string spelled;
        for (const auto& glyph : piece.run.glyphs) {
            spelled += piece.run.text.substr(glyph.text_begin, glyph.text_end - glyph.text_begin);
        }
        CHECK(spelled == piece.run.text);
    }
    const auto run = prepared("office").set(50.0)[0].pieces[0].run;
    CHECK(run.glyphs.size() == 4); // o, ffi, c, e
    CHECK(run.text.substr(run.glyphs[1].text_begin,
                          run.glyphs[1].text_end - run.glyphs[1].text_begin) == "ffi");
}

TEST_CASE("what cannot be set is refused with the character and the reason") {
    using Reason = UnsettableCharacter::Reason;
    const struct {
        const char* text;
        char32_t character;
        Reason reason;
    } cases[] = {
        {"stew\twith", U'\t', Reason::Control},
        {"two\nlines", U'\n', Reason::Control},
        {"\u2028", U'\u2028', Reason::Control},
        {"bad \xFF bytes", U'\uFFFD', Reason::Control},
        {"\xE2\x82", U'\uFFFD', Reason::Control},
        {"מרק", U'מ', Reason::Script},
        {"شوربة", U'ش', Reason::Script},
        {"सूप", U'स', Reason::Script},
        {"ซุป", U'ซ', Reason::Script},
        {"スープ", U'ス', Reason::Script},
        {"a\u202Eb", U'\u202E', Reason::Script},
        {"pear 🍐", U'🍐', Reason::NoGlyph},
        {"👩‍🍳", U'👩', Reason::NoGlyph},
        {"\uE000", U'\uE000', Reason::NoGlyph},
    };
    for (const auto& c : cases) {
        CAPTURE(c.text);
        const auto paragraph = prepare({{c.text, Weight::Regular}}, fonts());
        REQUIRE_FALSE(paragraph);
        CHECK(paragraph.fault().character == c.character);
        CHECK(paragraph.fault().reason == c.reason);
    }
}

TEST_CASE("Latin with all European accents, Greek, Cyrillic, Armenian and Georgian are set") {
    for (const auto* text :
         {"Żurek, ğüveç, smørrebrød, šťáva, țuică, Ħobż, þorramatur, ŀŋĸ", "Ψωμί, ἄρτος, σούπα",
          "Щи, їжак, ђувеч, қазы", "Հաց", "სუპი", "½ ⅓ ⅔ ⅛ ℃ ☐ ✓ − × ≈ →"}) {
        CAPTURE(text);
        for (const auto& line : prepared(text).set(50.0)) {
            for (const auto& piece : line.pieces) {
                for (const auto& glyph : piece.run.glyphs) {
                    CHECK(glyph.id != 0);
                }
            }
        }
    }
}

namespace {

/// Paragraphs of a kitchen with the words that make trouble.
std::string random_paragraph(std::mt19937& random) {
    constexpr const char* words[] = {"stir",        "in",
                                     "the",         "plum",
                                     "and",         "Zwetschgenknödelteig",
                                     "2 × 400 g",   "180 °C",
                                     "7–9 h",       "(4¼ cups)",
                                     "slow-cooker", "AVATAR",
                                     "a",           "Kürbis\u00ADlinsen\u00ADeintopf",
                                     "½ cup",       "1 1/2 tsp",
                                     "–",           "fflfi",
                                     "17 Oct 2026", "oven\u2011proof\u00A0tin",
                                     "To,"};
    std::string text;
    const auto count = 1 + random() % 14;
    for (unsigned i = 0; i < count; ++i) {
        text += (i == 0 ? "" : " ") + std::string{words[random() % std::size(words)]};
    }
    return text;
}

/// Text without what lines gain and lose at their ends: hyphens, spaces.
std::string bare(std::string text) {
    for (const std::string_view dropped : {" ", "-", "\u00A0", "\u00AD", "\u2011"}) {
        for (auto at = text.find(dropped); at != std::string::npos; at = text.find(dropped)) {
            text.erase(at, dropped.size());
        }
    }
    return text;
}

} // namespace

TEST_CASE("at every measure all words are there, lines fit, and more width gives no more lines") {
    std::mt19937 random{17};
    for (int i = 0; i < 150; ++i) {
        const auto text = random_paragraph(random);
        CAPTURE(text);
        const auto paragraph = prepared(text);
        int lines_before = 1'000'000;
        for (double width = 1.6; width < 40.0; width *= 1.07) {
            CAPTURE(width);
            const auto lines = paragraph.set(width);
            const auto count = static_cast<int>(lines.size());
            CHECK(paragraph.count_lines(width) == count);
            CHECK(count <= lines_before);
            lines_before = count;
            std::string all;
            for (const auto& line : lines) {
                all += text_of(line);
                CHECK(line.width <= width + 1e-9);
                CHECK((!line.breaks_word || width < paragraph.widest_word()));
            }
            CHECK(bare(all) == bare(text));
        }
        CHECK(paragraph.set(paragraph.natural_width()).size() == 1);
    }
}

TEST_CASE("several threads may prepare and set with the same faces") {
    const std::string text = "Tip the thawed bag into the slow cooker, 7–9 h, AVATAR ✓";
    const auto expected = set_at(prepared(text), 8.0);
    std::vector<std::string> seen(4);
    std::vector<std::thread> threads;
    for (auto& lines : seen) {
        threads.emplace_back([&lines, &text] {
            for (int i = 0; i < 50; ++i) {
                const auto paragraph = prepare({{text, Weight::Regular}}, fonts());
                lines = paragraph ? set_at(paragraph.value(), 8.0) : "refused";
            }
        });
    }
    for (auto& thread : threads) {
        thread.join();
    }
    CHECK(seen == std::vector<std::string>(4, expected));
}

TEST_CASE("a measure narrower than a letter gives a letter a line") {
    const auto lines = prepared("plum").set(0.01);
    CHECK(lines.size() == 4);
    CHECK(lines.front().width > 0.01);
}
