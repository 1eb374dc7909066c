// Words so short that what has to be shaped again at either end meets: "T-V-A-", whose hyphens kern
// with the letters on both sides.

#include "paragraphs.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <string>
#include <vector>

namespace touching_words_test {

using namespace thawslip::typeset;
using namespace thawslip::test_support;

namespace {

/// Words that follow one another without a space, in one face.
class Chain {
public:
    Chain(const FontSet& fonts, std::vector<std::string> words)
        : fonts_{fonts}, words_{std::move(words)} {}

    const std::vector<std::string>& words() const { return words_; }
    std::string text() const { return joined(0, words_.size()); }
    std::string joined(std::size_t begin, std::size_t end) const {
        std::string text;
        for (auto i = begin; i < end; ++i) {
            text += words_[i];
        }
        return text;
    }
    PreparedParagraph prepared(const std::string& text) const {
        auto paragraph = prepare({{text, Weight::Regular}}, fonts_);
        REQUIRE(paragraph);
        return std::move(paragraph).value();
    }
    /// How wide some of the words are on a line of their own.
    double width(const std::string& words) const { return prepared(words).natural_width(); }

    /// The fewest lines: each is filled with what fits on it when it is set by itself.
    int fewest_lines(double measure) const {
        int lines = 0;
        for (std::size_t begin = 0; begin < words_.size(); ++lines) {
            auto end = begin + 1;
            while (end < words_.size() && width(joined(begin, end + 1)) <= measure + 1e-9) {
                ++end;
            }
            begin = end;
        }
        return lines;
    }

private:
    const FontSet& fonts_;
    std::vector<std::string> words_;
};

const std::vector<std::vector<std::string>> chains = {
    {"T-", "T-", "T-", "T"},
    {"A-", "T-", "V-", "Y-", "T-", "W-", "T-", "A"},
    {"v-", "T-", "plum-", "T-", "y-", "Y-", "oats"},
};

} // namespace

TEST_CASE("touching words are as wide on a line as that line is by itself, and as many fit") {
    for (const auto& file : {clear_sans + "Regular.ttf", dejavu + ".ttf"}) {
        const auto fonts = only(file);
        for (const auto& words : chains) {
            const Chain chain{fonts, words};
            CAPTURE(chain.text());
            const auto paragraph = chain.prepared(chain.text());
            double widest = 0.0;
            for (const auto& word : words) {
                widest = std::max(widest, chain.width(word));
            }
            CHECK(paragraph.widest_word() == doctest::Approx(widest));
            for (std::size_t begin = 0; begin < words.size(); ++begin) {
                for (std::size_t end = begin + 1; end <= words.size(); ++end) {
                    // Just as wide as some words are, and a hair less.
                    const double exact = chain.width(chain.joined(begin, end));
                    for (const double measure : {exact, exact - 0.001}) {
                        if (measure < widest) {
                            continue;
                        }
                        CAPTURE(measure);
                        const auto lines = paragraph.set(measure);
                        CHECK(static_cast<int>(lines.size()) == chain.fewest_lines(measure));
                        CHECK(paragraph.count_lines(measure) == chain.fewest_lines(measure));
                        for (const auto& line : lines) {
                            CHECK(line.width <= measure + 1e-9);
                            CHECK(line.width == doctest::Approx(chain.width(text_of(line))));
                            CHECK_FALSE(line.breaks_word);
                        }
                    }
                }
            }
        }
    }
}

TEST_CASE("what is left of a cut word takes touching words behind it, as many as fit") {
    for (const auto& file : {clear_sans + "Regular.ttf", dejavu + ".ttf"}) {
        const auto fonts = only(file);
        const std::vector<std::string> behind = {"T-", "V-", "T-", "Y-", "T"};
        for (const std::string word : {"AVATAVATATAVT-", "plumplumoaT-", "TTTTTTTTTTTT-"}) {
            std::vector<std::string> words{word};
            words.insert(words.end(), behind.begin(), behind.end());
            const auto text = Chain{fonts, words}.text();
            CAPTURE(text);
            const auto paragraph = Chain{fonts, words}.prepared(text);
            for (double measure = 1.6; measure < 4.0; measure += 0.04) {
                CAPTURE(measure);
                std::string left = text;
                int cut_lines = 0;
                const auto lines = paragraph.set(measure);
                for (const auto& line : lines) {
                    CHECK(line.width <= measure + 1e-9);
                    CHECK(line.width == doctest::Approx(Chain{fonts, {}}.width(text_of(line))));
                    if (line.breaks_word) {
                        ++cut_lines;
                        left.erase(0, text_of(line).size() - 1); // but for its hyphen
                    }
                }
                REQUIRE(cut_lines > 0);
                // The word's last part, and those behind it.
                const auto tail = left.substr(0, left.size() - Chain{fonts, behind}.text().size());
                auto rest = behind;
                rest.insert(rest.begin(), tail);
                const auto fewest = Chain{fonts, rest}.fewest_lines(measure);
                CHECK(static_cast<int>(lines.size()) == cut_lines + fewest);
                CHECK(paragraph.count_lines(measure) <= cut_lines + fewest);
            }
        }
    }
}

} // namespace touching_words_test
