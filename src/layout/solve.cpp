#include "layout/solve.h"

#include <algorithm>

namespace thawslip::layout {
namespace {

/// Scales are tried in steps: finer than the eye, and the same on every machine.
constexpr int steps_per_unit = 64;

enum class Words { Whole, MayBeCut };

constexpr int comfortable = steps_per_unit;
constexpr int largest = 2 * steps_per_unit;

Scale scale(int step) {
    return {static_cast<double>(step) / steps_per_unit};
}

/// Finds sizes for one print in one cell.
class Solver {
public:
    Solver(const SizedPrint& print, const typeset::FontSet& fonts) : print_{print}, fonts_{fonts} {}

    bool fits(const Sizing& sizing, Words words) const {
        const auto arrangement =
            arrange(print_.layout, print_.contents, print_.room, sizing, fonts_);
        return arrangement.fits() && (words == Words::MayBeCut || !arrangement.cuts_words);
    }

    /// Sets one group to the largest step in [low, high] at which all fits, the other groups being
    /// as they are: what fits at one size fits at every smaller one.
    bool raise(Sizing& sizing, std::size_t group, int low, int high, Words words) const {
        const auto fits_at = [&](int step) {
            sizing.scales.at(group) = scale(step);
            return fits(sizing, words);
        };
        if (!fits_at(low)) {
            return false;
        }
        while (low < high) {
            const int middle = (low + high + 1) / 2;
            if (fits_at(middle)) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        sizing.scales.at(group) = scale(low);
        return true;
    }

    /// Below comfortable the last group goes down first, and the one before it only when that is at
    /// the floor.
    std::optional<Sizing> shrunk(int dropped, Words words) const {
        auto sizing = sizing_at(scale(comfortable), dropped);
        for (auto group = print_.layout.groups.size(); group-- > 0;) {
            if (raise(sizing, group, 0, comfortable, words)) {
                return sizing;
            }
            sizing.scales.at(group) = scale(0);
        }
        return std::nullopt;
    }

    /// Gives the groups from `first` on what room is left, one after the other.
    void grow(Sizing& sizing, std::size_t first) const {
        for (auto group = first; group < print_.layout.groups.size(); ++group) {
            const auto before = sizing.scales.at(group);
            const int low = static_cast<int>(before.value * steps_per_unit);
            const int high = is_roomy(sizing) ? largest : comfortable;
            if (low < high && !raise(sizing, group, low, high, Words::Whole)) {
                sizing.scales.at(group) = before; // its words are cut at any size
            }
        }
    }

private:
    /// Leaving something out buys comfort, never size.
    static bool is_roomy(const Sizing& sizing) {
        return sizing.dropped == 0 &&
               std::ranges::all_of(sizing.scales, [](Scale scale) { return scale.value >= 1.0; });
    }

    SizedPrint print_;
    const typeset::FontSet& fonts_;
};

/// The size on which prints agree that have this one: the smallest of those at least comfortable,
/// or of those below.
Scale common(const std::vector<SizedPrint>& all, std::size_t group, Scale own) {
    Scale smallest = own;
    for (const auto& print : all) {
        const auto other = print.sizing.scales.at(group);
        if ((other.value < 1.0) == (own.value < 1.0)) {
            smallest.value = std::min(smallest.value, other.value);
        }
    }
    return smallest;
}

} // namespace

std::optional<Sizing> solve(const Layout& layout, const Contents& contents, Size room,
                            const typeset::FontSet& fonts) {
    Sizing unknown;
    const Solver solver{{layout, contents, room, unknown}, fonts};
    const auto optional = static_cast<int>(droppable(layout, contents).size());
    for (int dropped = 0; dropped <= optional; ++dropped) {
        auto sizing = sizing_at(scale(comfortable), dropped);
        if (solver.fits(sizing, Words::Whole)) {
            solver.grow(sizing, dropped == 0 ? 0 : layout.groups.size());
            return sizing;
        }
    }
    const auto whole = solver.shrunk(optional, Words::Whole);
    return whole ? whole : solver.shrunk(optional, Words::MayBeCut);
}

void agree(const std::vector<SizedPrint>& all, const typeset::FontSet& fonts) {
    const auto groups = all.empty() ? 0 : all.front().layout.groups.size();
    for (std::size_t group = 0; group < groups; ++group) {
        std::vector<Scale> agreed;
        for (const auto& print : all) {
            agreed.push_back(common(all, group, print.sizing.scales.at(group)));
        }
        for (std::size_t i = 0; i < all.size(); ++i) {
            auto& own = all[i].sizing.scales.at(group);
            const bool lowered = agreed[i].value < own.value;
            own = agreed[i];
            if (lowered) {
                Solver{all[i], fonts}.grow(all[i].sizing, group + 1);
            }
        }
    }
}

Refusal explain(const Layout& layout, const Contents& contents, Size room,
                const wording::Print& print, const typeset::FontSet& fonts) {
    const auto least = sizing_at(scale(0), static_cast<int>(droppable(layout, contents).size()));
    const auto arrangement = arrange(layout, contents, room, least, fonts);
    return {print.dish, print.bag_id, arrangement.tightest, arrangement.overflow, print.where};
}

} // namespace thawslip::layout
