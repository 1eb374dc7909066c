// Where a word is cut that is wider than its column.

#include "paragraphs.h"

#include <doctest/doctest.h>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace word_cut_test {

using namespace thawslip::typeset;
using namespace thawslip::test_support;

namespace {

bool fit(const std::string& text, double measure) {
    return prepared(text).natural_width() <= measure + 1e-9;
}

std::vector<std::string> lines_of(const std::string& text, double measure) {
    std::vector<std::string> lines;
    for (const auto& line : prepared(text).set(measure)) {
        lines.emplace_back();
        for (const auto& piece : line.pieces) {
            lines.back() += piece.run.text;
        }
    }
    return lines;
}

/// How many letters fit with a hyphen behind them; one at least.
std::size_t farthest(std::string_view rest, double measure) {
    std::size_t letters = 1;
    while (letters + 1 < rest.size() &&
           fit(std::string{rest.substr(0, letters + 1)} + "-", measure)) {
        ++letters;
    }
    return letters;
}

bool is_vowel(char c) {
    return std::string_view{"aeiou"}.find(c) != std::string_view::npos;
}

/// Of the places in the line's second half with three letters on either side the last behind a
/// vowel and before none; else the last; else the farthest of all.
std::size_t kindest(std::string_view rest, double measure) {
    const auto most = farthest(rest, measure);
    std::size_t roomy = 0;
    for (auto letters = most; letters > (most - 1) / 2; --letters) {
        if (letters < 3 || rest.size() - letters < 3) {
            continue;
        }
        if (is_vowel(rest[letters - 1]) && !is_vowel(rest[letters])) {
            return letters;
        }
        roomy = roomy == 0 ? letters : roomy;
    }
    return roomy == 0 ? most : roomy;
}

template <class Cut>
std::vector<std::string> cut_by(std::string_view word, double measure, const Cut& cut) {
    std::vector<std::string> lines;
    while (!fit(std::string{word}, measure) && word.size() > 1) {
        const auto letters = cut(word, measure);
        lines.push_back(std::string{word.substr(0, letters)} + "-");
        word.remove_prefix(letters);
    }
    lines.emplace_back(word);
    return lines;
}

} // namespace

TEST_CASE("a word is cut where a reader stumbles least, at every measure, unless that takes a line "
          "more") {
    int kind = 0;
    for (const std::string word : {"plumcompoteandoatbiscuits", "grmphlbrtzkndsfgh",
                                   "eieioaueiouaei", "squashandlentilstew"}) {
        CAPTURE(word);
        for (double measure = 1.5; measure < prepared(word).natural_width(); measure += 0.07) {
            CAPTURE(measure);
            const auto far = cut_by(word, measure, farthest);
            const auto kindly = cut_by(word, measure, kindest);
            const bool is_kind = kindly.size() <= far.size();
            CHECK(lines_of(word, measure) == (is_kind ? kindly : far));
            kind += is_kind && kindly != far ? 1 : 0;
        }
    }
    CHECK(kind > 100);
}

TEST_CASE("a word is parted behind a dash of its own without another, whichever dash it is") {
    for (const std::string dash : {"-", "\u2010", "\u2011", "\u2013", "\u2014", "/"}) {
        CAPTURE(dash);
        const std::string front = "MM\u2060" + dash; // held together
        const auto lines =
            lines_of("1" + front + "\u2060MMMM", prepared("1" + front).natural_width() + 0.01);
        REQUIRE(lines.size() > 1);
        CHECK(lines[0] == "1MM" + dash);
    }
}

TEST_CASE("a dot between two things is not drawn at the end of a line, but at that of the text") {
    const std::string text = "Serves six · use soon";
    CHECK(lines_of(text, 50.0) == std::vector<std::string>{text});
    CHECK(lines_of(text, 7.0) == std::vector<std::string>{"Serves six", "use soon"});
    CHECK(prepared(text).set(7.0)[0].width ==
          doctest::Approx(prepared("Serves six").natural_width()));
    CHECK(lines_of("use soon ·", 50.0) == std::vector<std::string>{"use soon ·"});
    CHECK(lines_of("use· soon", 3.0) == std::vector<std::string>{"use·", "soon"});
}

TEST_CASE("of places where a word may be parted the farthest is taken, up to its very end") {
    const std::string soft = "oats\u00ADplums\u00ADkale";
    const double two = prepared("oatsplums-").natural_width();
    CHECK(lines_of(soft, two) == std::vector<std::string>{"oatsplums-", "kale"});
    CHECK(lines_of(soft, two - 0.01) == std::vector<std::string>{"oats-", "plumskale"});
    const double last = prepared("plumskale").natural_width();
    CHECK(lines_of(soft, last - 0.01) == std::vector<std::string>{"oats-", "plums-", "kale"});
    // A place before the word's first letter is none.
    CHECK(lines_of("\u00ADplum", 100.0) == std::vector<std::string>{"plum"});
    CHECK(lines_of("2\u00A0\u00A0kg", 1.2) == std::vector<std::string>{"2", "kg"});
}

} // namespace word_cut_test
