// Which lines a paragraph has, against every other way to break it.

#include "paragraphs.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <optional>
#include <string>
#include <vector>

namespace line_choice_test {

using namespace thawslip::typeset;
using namespace thawslip::test_support;

namespace {

/// What no line parts, with the space behind it, and what it costs to end a line there.
struct Piece {
    std::string text;
    double penalty = 0.0;
};

/// As header and comments say it: inside a word with a hyphen of its own, inside an amount.
constexpr double in_word = 50.0;
constexpr double in_amount = 400.0;

using Lines = std::vector<std::string>;

class Paragraph {
public:
    explicit Paragraph(std::vector<Piece> pieces) : pieces_{std::move(pieces)} {
        for (std::size_t begin = 0; begin < pieces_.size(); ++begin) {
            widths_.emplace_back(pieces_.size() + 1, 0.0);
            for (auto end = begin + 1; end <= pieces_.size(); ++end) {
                widths_[begin][end] = prepared(joined(begin, end)).natural_width();
            }
        }
    }

    std::string text() const { return joined(0, pieces_.size()); }
    double widest() const {
        double widest = 0.0;
        for (std::size_t i = 0; i < pieces_.size(); ++i) {
            widest = std::max(widest, widths_[i][i + 1]);
        }
        return widest;
    }

    /// The lines of the least cost; nothing where two ways cost nearly the same.
    std::optional<Lines> best(double measure) const {
        std::optional<LineCost> least;
        unsigned chosen = 0;
        bool is_close = false;
        for (unsigned breaks = 0; breaks < 1U << (pieces_.size() - 1); ++breaks) {
            const auto cost = cost_of_way(breaks, measure);
            if (cost) {
                is_close = least && (is_nearly(*cost, *least) || (is_close && !(*cost < *least)));
                chosen = !least || *cost < *least ? breaks : chosen;
                least = !least || *cost < *least ? cost : least;
            }
        }
        return least && !is_close ? std::optional{lines_of_way(chosen)} : std::nullopt;
    }

private:
    static bool is_nearly(const LineCost& a, const LineCost& b) {
        return a.lines == b.lines && a.dangling == b.dangling &&
               std::abs(a.demerits - b.demerits) < 1e-6 * (1.0 + b.demerits);
    }

    std::string joined(std::size_t begin, std::size_t end) const {
        std::string text;
        for (auto i = begin; i < end; ++i) {
            text += pieces_[i].text;
        }
        return text.substr(0, text.find_last_not_of(' ') + 1);
    }
    bool ends_line(unsigned breaks, std::size_t piece) const {
        return piece + 1 == pieces_.size() || (breaks >> piece & 1U) != 0;
    }
    /// Knuth and Plass 1981: demerits (1 + badness + penalty)², badness 100 r³, r of a fourth of
    /// the measure. A last line of one word dangles that is narrower than a third.
    std::optional<LineCost> cost_of_way(unsigned breaks, double measure) const {
        LineCost cost;
        std::size_t begin = 0;
        for (std::size_t i = 0; i < pieces_.size(); ++i) {
            if (!ends_line(breaks, i)) {
                continue;
            }
            const double wide = widths_[begin][i + 1];
            if (wide > measure + 1e-9) {
                return std::nullopt;
            }
            ++cost.lines;
            if (i + 1 == pieces_.size()) {
                cost.dangling = begin == i && begin > 0 && wide < measure / 3.0 ? 1 : 0;
            } else {
                const double r = (measure - wide) / (measure / 4.0);
                const double sum = 1.0 + 100.0 * r * r * r + pieces_[i].penalty;
                cost.demerits += sum * sum;
            }
            begin = i + 1;
        }
        return cost;
    }
    Lines lines_of_way(unsigned breaks) const {
        Lines lines;
        std::size_t begin = 0;
        for (std::size_t i = 0; i < pieces_.size(); ++i) {
            if (ends_line(breaks, i)) {
                lines.push_back(joined(begin, i + 1));
                begin = i + 1;
            }
        }
        return lines;
    }

    std::vector<Piece> pieces_;
    std::vector<std::vector<double>> widths_; ///< of the pieces from the first to before the last
};

Lines lines_of(const PreparedParagraph& paragraph, double measure) {
    Lines lines;
    for (const auto& line : paragraph.set(measure)) {
        lines.emplace_back();
        for (const auto& piece : line.pieces) {
            lines.back() += piece.run.text;
        }
    }
    return lines;
}

} // namespace

TEST_CASE("at every measure the lines are those of least cost, words and amounts parted for need") {
    const std::vector<std::vector<Piece>> paragraphs = {
        {{"plum "},
         {"and "},
         {"slow-", in_word},
         {"baked "},
         {"oats "},
         {"in "},
         {"a "},
         {"half-", in_word},
         {"full "},
         {"tin"}},
        {{"Stir "},
         {"in "},
         {"1 l ", in_amount},
         {"(4¼ cups) "},
         {"of "},
         {"the "},
         {"stock "},
         {"and "},
         {"2 ", in_amount},
         {"limes"}},
        {{"well-", in_word},
         {"to-", in_word},
         {"do "},
         {"kale "},
         {"3 ", in_amount},
         {"ways "},
         {"I "},
         {"say"}},
    };
    for (const auto& pieces : paragraphs) {
        const Paragraph paragraph{pieces};
        const auto shaped = prepared(paragraph.text());
        CAPTURE(paragraph.text());
        int compared = 0;
        for (double measure = paragraph.widest(); measure < shaped.natural_width();
             measure += 0.01) {
            const auto best = paragraph.best(measure);
            if (best) {
                CAPTURE(measure);
                CHECK(lines_of(shaped, measure) == *best);
                ++compared;
            }
        }
        CHECK(compared > 500);
    }
}

TEST_CASE("a last line of one word dangles below a third of the measure, and no other does") {
    const auto dangles = [](const LineBoxes& set, LineRange line, double measure) {
        const auto cost = cost_of(set, line, measure);
        CHECK(cost.lines == 1);
        return cost.dangling == 1;
    };
    const auto two = boxes({10, 5});
    CHECK(dangles(two, {1, 1}, 15.01));
    CHECK_FALSE(dangles(two, {1, 1}, 15.0));
    CHECK_FALSE(dangles(two, {0, 0}, 100.0));        // not the last
    CHECK_FALSE(dangles(two, {0, 1}, 100.0));        // of two words
    CHECK_FALSE(dangles(boxes({5}), {0, 0}, 100.0)); // the only one
    CHECK(cost_of(two, {1, 1}, 100.0).demerits == 0.0);
    // Short by a tenth of the measure: r = 0.4.
    CHECK(cost_of(boxes({9, 9}), {0, 0}, 10.0).demerits ==
          doctest::Approx((1.0 + 6.4) * (1.0 + 6.4)));
    CHECK(cost_of(boxes({12, 9}), {0, 0}, 10.0).demerits == 1.0); // wider than the measure
}

} // namespace line_choice_test
