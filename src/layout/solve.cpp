#include "layout/solve.h"

#include <algorithm>

namespace thawslip::layout {
namespace {

/// Scales are tried in steps: finer than the eye, and the same on every machine.
constexpr int steps_per_unit = 64;

enum class Words { Whole, MayBeCut };

class Solver {
public:
    Solver(const Layout& layout, const Contents& contents, Size room, const typeset::FontSet& fonts)
        : layout_{layout}, contents_{contents}, room_{room}, fonts_{fonts} {}

    bool fits(int step, int left_out, Words words) const {
        const Choice choice{{static_cast<double>(step) / steps_per_unit}, left_out};
        const auto arrangement = arrange(layout_, contents_, room_, choice, fonts_);
        return arrangement.fits() && (words == Words::MayBeCut || !arrangement.cuts_words);
    }

    /// The largest step in [low, high] that fits: what fits at one size fits at every smaller one.
    std::optional<Solution> largest(int low, int high, int left_out, Words words) const {
        if (!fits(low, left_out, words)) {
            return std::nullopt;
        }
        while (low < high) {
            const int middle = (low + high + 1) / 2;
            if (fits(middle, left_out, words)) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        return Solution{{{static_cast<double>(low) / steps_per_unit}, left_out},
                        words == Words::MayBeCut};
    }

private:
    const Layout& layout_;
    const Contents& contents_;
    Size room_;
    const typeset::FontSet& fonts_;
};

} // namespace

std::optional<Solution> solve(const Layout& layout, const Contents& contents, Size room,
                              const typeset::FontSet& fonts) {
    constexpr int comfortable = steps_per_unit;
    constexpr int largest = 2 * steps_per_unit;
    const Solver solver{layout, contents, room, fonts};
    if (auto whole = solver.largest(comfortable, largest, 0, Words::Whole)) {
        return whole;
    }
    const auto optional = static_cast<int>(droppable(layout, contents).size());
    for (int left_out = 1; left_out <= optional; ++left_out) {
        if (solver.fits(comfortable, left_out, Words::Whole)) {
            return Solution{{{1.0}, left_out}, false};
        }
    }
    if (auto small = solver.largest(0, comfortable, optional, Words::Whole)) {
        return small;
    }
    return solver.largest(0, comfortable, optional, Words::MayBeCut);
}

void agree(const std::vector<Solution*>& solutions) {
    double smallest = 2.0;
    for (const auto* solution : solutions) {
        smallest = std::min(smallest, solution->choice.scale.value);
    }
    const double common = std::max(smallest, 1.0);
    for (auto* solution : solutions) {
        solution->choice.scale.value = std::min(solution->choice.scale.value, common);
    }
}

Refusal explain(const Layout& layout, const Contents& contents, Size room,
                const wording::Print& print, const typeset::FontSet& fonts) {
    const Choice least{{0.0}, static_cast<int>(droppable(layout, contents).size())};
    const auto arrangement = arrange(layout, contents, room, least, fonts);
    return {print.dish, print.bag_id, arrangement.tightest, arrangement.overflow, print.where};
}

} // namespace thawslip::layout
