#include "code/mask.h"

#include "code/bits.h"
#include "code/patterns.h"

#include <algorithm>
#include <array>
#include <cstdlib>

namespace thawslip::code {
namespace {

constexpr int mask_count = 8;

// Penalty points.
constexpr int points_run = 3; ///< five alike in a row; one more for each further module
constexpr int points_block = 3;
constexpr int points_finder = 40;
constexpr int points_balance = 10;

// Every mask repeats after 12 modules either way: 12 is the least common multiple of its periods,
// 2, 3, 4 and 6.
constexpr int mask_period = 12;

/// A symbol as bits, by rows and by columns, so that both directions are weighed alike.
template <std::size_t Words>
struct Lines {
    std::vector<Bits<Words>> rows;
    std::vector<Bits<Words>> columns;

    explicit Lines(std::size_t side) : rows(side), columns(side) {}
    void set(Module at, bool dark) {
        const auto x = static_cast<std::size_t>(at.x);
        const auto y = static_cast<std::size_t>(at.y);
        rows[y].set(x, dark);
        columns[x].set(y, dark);
    }
};

template <std::size_t Words>
Lines<Words> lines_of(const std::vector<bool>& dark, int side) {
    Lines<Words> lines{static_cast<std::size_t>(side)};
    auto module = dark.begin();
    for (int y = 0; y < side; ++y) {
        for (int x = 0; x < side; ++x) {
            lines.set({x, y}, *module++);
        }
    }
    return lines;
}

/// The first `mask_period` rows and columns of a mask, each as wide as the widest symbol.
template <std::size_t Words>
struct MaskLines {
    std::array<Bits<Words>, mask_period> rows{};
    std::array<Bits<Words>, mask_period> columns{};
};

/// A mask's modules along a line, repeated: what is there is doubled until the line is full.
template <std::size_t Words>
constexpr Bits<Words> repeated(const Bits<Words>& period) {
    Bits<Words> bits = period;
    for (std::size_t have = mask_period; have < Bits<Words>::size; have *= 2) {
        bits = bits | (bits << have);
    }
    return bits;
}

template <std::size_t Words>
constexpr auto mask_lines = [] {
    std::array<MaskLines<Words>, mask_count> masks{};
    for (int mask = 0; mask < mask_count; ++mask) {
        auto& lines = masks[static_cast<std::size_t>(mask)];
        for (int across = 0; across < mask_period; ++across) {
            Bits<Words> row;
            Bits<Words> column;
            for (int along = 0; along < mask_period; ++along) {
                row.set(static_cast<std::size_t>(along), turns_over(mask, along, across));
                column.set(static_cast<std::size_t>(along), turns_over(mask, across, along));
            }
            lines.rows[static_cast<std::size_t>(across)] = repeated(row);
            lines.columns[static_cast<std::size_t>(across)] = repeated(column);
        }
    }
    return masks;
}();

// The three below take their modules by reference: GCC 12.2 takes stores into such a struct passed
// by value for dead (its analysis of what a function reads and writes), and masks are weighed
// wrongly.

/// Module i: are modules i to i + n - 1 all set?
template <std::size_t Words>
Bits<Words> all_of(const Bits<Words>& modules, std::size_t n) {
    Bits<Words> bits = modules;
    for (std::size_t have = 1; have < n;) {
        const std::size_t step = std::min(have, n - have);
        bits = bits & (bits >> step);
        have += step;
    }
    return bits;
}

/// Module i: is any of modules i to i + n - 1 set?
template <std::size_t Words>
Bits<Words> any_after(const Bits<Words>& modules, std::size_t n) {
    Bits<Words> bits = modules;
    for (std::size_t have = 1; have < n;) {
        const std::size_t step = std::min(have, n - have);
        bits = bits | (bits >> step);
        have += step;
    }
    return bits;
}

/// Module i: is any of modules i - n to i - 1 set?
template <std::size_t Words>
Bits<Words> any_before(const Bits<Words>& modules, std::size_t n) {
    Bits<Words> bits = modules << 1;
    for (std::size_t have = 1; have < n;) {
        const std::size_t step = std::min(have, n - have);
        bits = bits | (bits << step);
        have += step;
    }
    return bits;
}

/// Points for runs of five and more set modules: 3 for five, 1 for each further module.
template <std::size_t Words>
int run_points(const Bits<Words>& bits) {
    const Bits<Words> fives = all_of(bits, 5);
    const Bits<Words> starts = fives & ~(fives << 1);
    return fives.count() + (points_run - 1) * starts.count();
}

/// How many times a line shows dark, light, dark, light, dark in the widths n, n, 3n, n, n between
/// light of n at least, counted once for each side that has 4n of light.
template <std::size_t Words>
int finder_likes(const Bits<Words>& dark, std::size_t n) {
    const Bits<Words> narrow = all_of(dark, n);
    const Bits<Words> gap = ~any_after(dark, n);
    const Bits<Words> core = narrow & (gap >> n) & (all_of(dark, 3 * n) >> (2 * n)) &
                             (gap >> (5 * n)) & (narrow >> (6 * n)) & (gap >> (7 * n)) &
                             ~any_before(dark, n);
    if (!core.any()) {
        return 0;
    }
    return (core & ~any_before(dark, 4 * n)).count() +
           (core & ~(any_after(dark, 4 * n) >> (7 * n))).count();
}

template <std::size_t Words>
int line_points(const std::vector<Bits<Words>>& lines, const Bits<Words>& inside) {
    int points = 0;
    for (const Bits<Words>& dark : lines) {
        points += run_points(dark) + run_points(~dark & inside);
        int finders = finder_likes(dark, 1);
        for (std::size_t n = 2; all_of(dark, 3 * n).any(); ++n) {
            finders += finder_likes(dark, n);
        }
        points += points_finder * finders;
    }
    return points;
}

template <std::size_t Words>
int block_points(const std::vector<Bits<Words>>& rows, const Bits<Words>& inside) {
    int blocks = 0;
    for (std::size_t y = 0; y + 1 < rows.size(); ++y) {
        const Bits<Words> dark = rows[y] & rows[y + 1];
        const Bits<Words> light = ~(rows[y] | rows[y + 1]) & inside;
        blocks += (dark & (dark >> 1)).count() + (light & (light >> 1)).count();
    }
    return points_block * blocks;
}

/// 10 points for each full 5 % that the share of dark modules is away from a half.
template <std::size_t Words>
int balance_points(const std::vector<Bits<Words>>& rows) {
    int dark = 0;
    for (const Bits<Words>& row : rows) {
        dark += row.count();
    }
    const auto total = static_cast<int>(rows.size() * rows.size());
    const int away = std::abs(dark * 20 - total * 10);
    return points_balance * ((away + total - 1) / total - 1);
}

/// The symbol with everything but the mask settled; gives it back under each mask in turn.
template <std::size_t Words>
class Unmasked {
public:
    explicit Unmasked(const Symbol& symbol)
        : side_{symbol.side}, level_{symbol.level}, lines_{lines_of<Words>(symbol.dark,
                                                                           symbol.side)},
          // Equal to its own transpose, so one direction serves for both.
          fixed_{lines_of<Words>(function_modules(symbol.version), symbol.side).rows} {
        for (std::size_t i = 0; i < symbol.side; ++i) {
            inside_.set(i, true);
        }
        turn_over(lines_, symbol.mask);
    }

    Lines<Words> under(int mask) const {
        Lines<Words> masked = lines_;
        turn_over(masked, mask);
        const unsigned format = format_bits(level_, mask);
        for (int bit = 0; bit < 15; ++bit) {
            for (const Module module : format_modules(bit, side_)) {
                masked.set(module, (format >> static_cast<unsigned>(bit) & 1U) != 0);
            }
        }
        return masked;
    }

    int points(const Lines<Words>& lines) const {
        return line_points(lines.rows, inside_) + line_points(lines.columns, inside_) +
               block_points(lines.rows, inside_) + balance_points(lines.rows);
    }

private:
    void turn_over(Lines<Words>& lines, int mask) const {
        const auto& pattern = mask_lines<Words>[static_cast<std::size_t>(mask)];
        for (std::size_t i = 0; i < lines.rows.size(); ++i) {
            const Bits<Words> data = ~fixed_[i] & inside_;
            lines.rows[i] = lines.rows[i] ^ (pattern.rows[i % mask_period] & data);
            lines.columns[i] = lines.columns[i] ^ (pattern.columns[i % mask_period] & data);
        }
    }

    int side_;
    Level level_;
    Lines<Words> lines_;
    std::vector<Bits<Words>> fixed_;
    Bits<Words> inside_;
};

template <std::size_t Words>
Symbol best_of_all(const Symbol& symbol) {
    const Unmasked<Words> unmasked{symbol};
    int best_mask = 0;
    Lines<Words> best = unmasked.under(0);
    int fewest = unmasked.points(best);
    for (int mask = 1; mask < mask_count; ++mask) {
        Lines<Words> lines = unmasked.under(mask);
        if (const int points = unmasked.points(lines); points < fewest) {
            fewest = points;
            best_mask = mask;
            best = std::move(lines);
        }
    }
    Symbol masked{symbol.version, symbol.level, best_mask, symbol.side, {}};
    masked.dark.reserve(symbol.dark.size());
    for (const Bits<Words>& row : best.rows) {
        for (std::size_t x = 0; x < symbol.side; ++x) {
            masked.dark.push_back(row[x]);
        }
    }
    return masked;
}

} // namespace

Symbol with_best_mask(const Symbol& symbol) {
    if (symbol.side <= Bits<1>::size) {
        return best_of_all<1>(symbol);
    }
    return symbol.side <= Bits<2>::size ? best_of_all<2>(symbol) : best_of_all<3>(symbol);
}

} // namespace thawslip::code
