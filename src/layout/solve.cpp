#include "layout/solve.h"

#include <algorithm>

namespace thawslip::layout {
namespace {

/// Scales are tried in steps: finer than the eye, and the same on every machine.
constexpr int steps_per_unit = 64;

enum class Words { Whole, MayBeCut };

Sizing sizing(int step, int dropped) {
    return {{static_cast<double>(step) / steps_per_unit}, dropped};
}

class Solver {
public:
    Solver(const Layout& layout, const Contents& contents, Size room, const typeset::FontSet& fonts)
        : layout_{layout}, contents_{contents}, room_{room}, fonts_{fonts} {}

    bool fits(int step, int dropped, Words words) const {
        const auto arrangement = arrange(layout_, contents_, room_, sizing(step, dropped), fonts_);
        return arrangement.fits() && (words == Words::MayBeCut || !arrangement.cuts_words);
    }

    /// The largest step in [low, high] that fits: what fits at one size fits at every smaller one.
    std::optional<Sizing> largest(int low, int high, int dropped, Words words) const {
        if (!fits(low, dropped, words)) {
            return std::nullopt;
        }
        while (low < high) {
            const int middle = (low + high + 1) / 2;
            if (fits(middle, dropped, words)) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        return sizing(low, dropped);
    }

private:
    const Layout& layout_;
    const Contents& contents_;
    Size room_;
    const typeset::FontSet& fonts_;
};

} // namespace

std::optional<Sizing> solve(const Layout& layout, const Contents& contents, Size room,
                            const typeset::FontSet& fonts) {
    constexpr int comfortable = steps_per_unit;
    constexpr int largest = 2 * steps_per_unit;
    const Solver solver{layout, contents, room, fonts};
    if (auto whole = solver.largest(comfortable, largest, 0, Words::Whole)) {
        return whole;
    }
    const auto optional = static_cast<int>(droppable(layout, contents).size());
    for (int dropped = 1; dropped <= optional; ++dropped) {
        if (solver.fits(comfortable, dropped, Words::Whole)) {
            return sizing(comfortable, dropped);
        }
    }
    if (auto small = solver.largest(0, comfortable, optional, Words::Whole)) {
        return small;
    }
    return solver.largest(0, comfortable, optional, Words::MayBeCut);
}

void agree(const std::vector<Sizing*>& all) {
    double smallest = 2.0;
    for (const auto* sizes : all) {
        smallest = std::min(smallest, sizes->scale.value);
    }
    const double common = std::max(smallest, 1.0);
    for (auto* sizes : all) {
        sizes->scale.value = std::min(sizes->scale.value, common);
    }
}

Refusal explain(const Layout& layout, const Contents& contents, Size room,
                const wording::Print& print, const typeset::FontSet& fonts) {
    const Sizing least{{0.0}, static_cast<int>(droppable(layout, contents).size())};
    const auto arrangement = arrange(layout, contents, room, least, fonts);
    return {print.dish, print.bag_id, arrangement.tightest, arrangement.overflow, print.where};
}

} // namespace thawslip::layout
