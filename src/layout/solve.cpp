#include "layout/solve.h"

#include "base/list.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>
#include <span>
#include <utility>

namespace thawslip::layout {
namespace {

/// Scales are tried in steps: finer than the eye, and the same on every machine.
constexpr int steps_per_unit = 64;

enum class Words { Whole, MayBeCut };
enum class Lines { AsManyAsBefore, MayBeMore };

constexpr long any_lines = std::numeric_limits<long>::max();

constexpr int comfortable = steps_per_unit;
constexpr int largest = 2 * steps_per_unit;

Scale scale(int step) {
    return {static_cast<double>(step) / steps_per_unit};
}

bool is_cramped(Scale scale) {
    return scale.value < 1.0;
}

/// Finds sizes for one print in one cell.
class Solver {
public:
    Solver(const Layout& layout, const Contents& contents, Size room, const typeset::FontSet& fonts)
        : layout_{layout}, contents_{contents}, room_{room}, fonts_{fonts} {}

    bool fits(const Sizing& sizing, Words words) const {
        return fits(arrange(layout_, contents_, room_, sizing, fonts_), words);
    }

    /// A first group that stands on fewer lines leaves the others their size: it goes down first,
    /// but no further than half the way to its smallest.
    std::optional<Sizing> eased(int conceded) const {
        auto sizing = sizing_at(scale(comfortable), conceded);
        sizing.scales.at(0) = scale(comfortable / 2);
        if (layout_.groups.size() < 2 || !fits(sizing, Words::Whole)) {
            return std::nullopt;
        }
        raise(sizing, 0, comfortable, Words::Whole);
        take_back(sizing);
        return sizing;
    }

    /// Below that the last group goes down first, and the one before it only when that is at
    /// the floor. Where that was all that lacked, as a date too wide for its column, those behind
    /// it come up again.
    std::optional<Sizing> shrunk(int conceded, Words words) const {
        auto sizing = sizing_at(scale(comfortable), conceded);
        for (auto group = layout_.groups.size(); group-- > 0;) {
            sizing.scales.at(group) = scale(0);
            if (fits(sizing, words)) {
                grow(sizing, group, words);
                take_back(sizing);
                return sizing;
            }
        }
        return std::nullopt;
    }

    /// Takes back what need not have been conceded, for a later concession or smaller type made
    /// room for it: the last of them, which are the dearest, first.
    void take_back(Sizing& sizing) const {
        for (auto i = static_cast<std::size_t>(sizing.conceded); i-- > 0;) {
            sizing.taken_back.push_back(i);
            if (!fits(sizing, Words::Whole)) {
                sizing.taken_back.pop_back();
            }
        }
    }

    /// Gives the groups from `first` on what room is left, one after the other.
    void grow(Sizing& sizing, std::size_t first, Words words = Words::Whole) const {
        for (auto group = first; group < layout_.groups.size(); ++group) {
            raise(sizing, group, may_grow(sizing, group) ? largest : comfortable, words);
        }
    }

    /// The same for all; what the others cannot use the first has in the end, on more lines too.
    void grow_all(Sizing& sizing) const {
        grow(sizing, 0);
        if (may_grow(sizing, 0)) {
            raise(sizing, 0, largest, Words::Whole, Lines::MayBeMore);
        }
    }

private:
    bool fits(const Arrangement& arrangement, Words words) const {
        return words == Words::MayBeCut
                   ? arrangement.fits()
                   : fits_whole(arrangement, layout_, contents_, room_, fonts_);
    }

    /// On how many lines the words of the first group stand: one more of the largest type would
    /// cost the groups behind it more than it gives.
    long first_lines(const Arrangement& arrangement) const {
        long lines = 0;
        for (std::size_t i = 0; i < layout_.areas.size(); ++i) {
            const auto* text = text_of(layout_.areas[i]);
            const auto& placed = arrangement.areas[i];
            if (text != nullptr && text->group == 0 && placed.shown) {
                lines += std::lround(placed.place.size.height / placed.type.leading);
            }
        }
        return lines;
    }

    /// Raises one group to the largest step up to `high` at which all fits, the others being as
    /// they are: what fits at one size fits at every smaller one. It stays where it is if none
    /// does.
    void raise(Sizing& sizing, std::size_t group, int high, Words words,
               Lines lines = Lines::AsManyAsBefore) const {
        auto& own = sizing.scales.at(group);
        const auto at = [&] { return arrange(layout_, contents_, room_, sizing, fonts_); };
        const bool keeps =
            group == 0 && layout_.groups.size() > 1 && lines == Lines::AsManyAsBefore;
        const auto most = keeps ? first_lines(at()) : any_lines;
        int low = static_cast<int>(own.value * steps_per_unit);
        while (low < high) {
            const int middle = (low + high + 1) / 2;
            const auto before = std::exchange(own, scale(middle));
            if (const auto arrangement = at();
                fits(arrangement, words) && first_lines(arrangement) <= most) {
                low = middle;
            } else {
                high = middle - 1;
                own = before;
            }
        }
    }

    /// Leaving something out buys comfort, never size.
    bool may_grow(const Sizing& sizing, std::size_t group) const {
        return std::ranges::none_of(sizing.scales, is_cramped) &&
               (sizing.conceded == 0 || (group > 0 && !has_bought(sizing, group)));
    }

    /// Whether something is left out that would stand there were a group smaller. What is left out
    /// for its width alone, in another group, is not.
    bool has_bought(const Sizing& sizing, std::size_t group) const {
        auto smallest = sizing;
        smallest.scales.at(group) = scale(0);
        for (std::size_t i = 0; i < static_cast<std::size_t>(sizing.conceded); ++i) {
            auto with = smallest;
            with.taken_back.push_back(i);
            const bool stands = std::ranges::count(with.taken_back, i) > 1;
            if (!stands && fits(with, Words::Whole)) {
                return true;
            }
        }
        return false;
    }

    const Layout& layout_;
    const Contents& contents_;
    Size room_;
    const typeset::FontSet& fonts_;
};

using Sizes = std::vector<double>;

/// Where ascending sizes are parted in two, each print taking the smallest of its part, so that
/// together they lose least; the first of them where the two would hardly differ.
double parting(std::span<const double> sizes) {
    constexpr double visible = 0.25; // of the way from comfortable to largest
    double best = sizes.front();
    double most = 0.0;
    for (std::size_t i = 1; i < sizes.size(); ++i) {
        const double above = sizes[i] - sizes.front();
        const auto gained = static_cast<double>(sizes.size() - i) * above;
        if (above >= visible && gained > most) {
            best = sizes[i];
            most = gained;
        }
    }
    return best;
}

Sizes sizes_of(const std::vector<SizedPrint>& all, std::size_t group) {
    return mapped(all,
                  [group](const SizedPrint& print) { return print.sizing.scales.at(group).value; });
}

/// The sizes of one group on which prints agree, ascending: one for those below comfortable and one
/// for the others, or two of the last group of several.
Sizes agreed_on(const std::vector<SizedPrint>& all, std::size_t group) {
    auto sizes = sizes_of(all, group);
    std::ranges::sort(sizes);
    const auto roomy = std::ranges::lower_bound(sizes, 1.0);
    Sizes agreed;
    if (roomy != sizes.begin()) {
        agreed.push_back(sizes.front());
    }
    if (roomy != sizes.end()) {
        agreed.push_back(*roomy);
        if (group > 0 && group + 1 == all.front().layout.groups.size()) {
            agreed.push_back(parting({roomy, sizes.end()}));
        }
    }
    return agreed;
}

/// Gives one group of each print the largest of the agreed sizes that is not above its own. \pre
/// the agreed sizes rise, and none of the prints is below all of them
void take(const Sizes& agreed, std::size_t group, const std::vector<SizedPrint>& all,
          const typeset::FontSet& fonts) {
    for (const auto& [layout, contents, room, sizing] : all) {
        auto& own = sizing.scales.at(group);
        const auto above = std::ranges::upper_bound(agreed, own.value);
        const auto before = std::exchange(own, Scale{*std::prev(above)});
        if (own.value < before.value) {
            Solver{layout, contents, room, fonts}.grow(sizing, group + 1);
        }
    }
}

} // namespace

std::optional<Sizing> solve(const Layout& layout, const Contents& contents, Size room,
                            const typeset::FontSet& fonts) {
    const Solver solver{layout, contents, room, fonts};
    const auto optional = static_cast<int>(concessions(layout, contents).size());
    for (int conceded = 0; conceded <= optional; ++conceded) {
        auto sizing = sizing_at(scale(comfortable), conceded);
        if (solver.fits(sizing, Words::Whole)) {
            solver.take_back(sizing);
            solver.grow_all(sizing);
            return sizing;
        }
    }
    if (auto eased = solver.eased(optional)) {
        return eased;
    }
    const auto whole = solver.shrunk(optional, Words::Whole);
    return whole ? whole : solver.shrunk(optional, Words::MayBeCut);
}

void agree(const std::vector<SizedPrint>& all, const typeset::FontSet& fonts) {
    const auto groups = all.empty() ? 0 : all.front().layout.groups.size();
    for (std::size_t group = 0; group < groups; ++group) {
        take(agreed_on(all, group), group, all, fonts);
    }
}

void agree_on_one(const std::vector<SizedPrint>& all, const typeset::FontSet& fonts) {
    const auto groups = all.empty() ? 0 : all.front().layout.groups.size();
    for (std::size_t group = 0; group < groups; ++group) {
        take({std::ranges::min(sizes_of(all, group))}, group, all, fonts);
    }
}

Refusal explain(const Layout& layout, const Contents& contents, Size room,
                const wording::Print& print, const typeset::FontSet& fonts) {
    const auto arrangement = arrange(layout, contents, room, least_sizing(layout, contents), fonts);
    return {print.dish, print.bag_id, arrangement.tightest, arrangement.overflow, print.where};
}

} // namespace thawslip::layout
