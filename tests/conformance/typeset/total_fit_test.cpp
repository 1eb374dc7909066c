// Total fit against a search through every way to break: D. E. Knuth and M. F. Plass, "Breaking
// Paragraphs into Lines", Software: Practice and Experience 11 (1981), claim the least demerits.

#include "typeset/total_fit.h"

#include <doctest/doctest.h>
#include <optional>
#include <random>

using namespace thawslip::typeset;

namespace {

/// A paragraph of 1 to 12 words, some parted by a hyphen.
LineBoxes random_boxes(std::mt19937& random) {
    const auto up_to = [&random](unsigned n) { return static_cast<double>(random() % n); };
    LineBoxes boxes;
    double place = 0.0;
    const auto count = 1 + random() % 12;
    for (unsigned i = 0; i < count; ++i) {
        const double width = 1.0 + up_to(9) / 2.0;
        const bool parted = random() % 5 == 0;
        boxes.boxes.push_back({place, place + width, parted ? 50.0 : 0.0});
        place += width + (parted ? 0.0 : 0.25);
    }
    return boxes;
}

/// Whether a line may be: its boxes fit, or nothing smaller could be set.
bool is_possible(const LineBoxes& boxes, const LineRange& line, double measure) {
    return line.first == line.last || fits(boxes.width(line.first, line.last), measure);
}

/// The least cost over all subsets of breaks, each tried in full.
LineCost exhaustive(const LineBoxes& boxes, double measure) {
    const auto gaps = boxes.boxes.size() - 1;
    std::optional<LineCost> best;
    for (unsigned breaks = 0; breaks < (1U << gaps); ++breaks) {
        LineCost cost;
        bool possible = true;
        std::size_t first = 0;
        for (std::size_t last = 0; last <= gaps && possible; ++last) {
            if (last == gaps || ((breaks >> last) & 1U) != 0) {
                possible = is_possible(boxes, {first, last}, measure);
                cost = possible ? cost + cost_of(boxes, {first, last}, measure) : cost;
                first = last + 1;
            }
        }
        if (possible && (!best || cost < *best)) {
            best = cost;
        }
    }
    REQUIRE(best);
    return *best;
}

} // namespace

TEST_CASE("total fit costs what the best of all ways to break costs, for 500 random paragraphs") {
    std::mt19937 random{1981};
    int several_lines = 0;
    for (int i = 0; i < 500; ++i) {
        const auto boxes = random_boxes(random);
        const double measure = 4.0 + static_cast<double>(random() % 12);
        LineCost cost;
        std::size_t next = 0;
        for (const auto& line : total_fit(boxes, measure)) {
            CHECK(line.first == next);
            CHECK(is_possible(boxes, line, measure));
            cost = cost + cost_of(boxes, line, measure);
            next = line.last + 1;
        }
        CHECK(next == boxes.boxes.size());
        const auto best = exhaustive(boxes, measure);
        CHECK(cost.lines == best.lines);
        CHECK(cost.dangling == best.dangling);
        CHECK(cost.demerits == doctest::Approx(best.demerits).epsilon(1e-12));
        CHECK(count_lines(boxes, measure) == best.lines);
        several_lines += best.lines > 2 ? 1 : 0;
    }
    CHECK(several_lines > 200);
}
