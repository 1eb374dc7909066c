#include "code/finders.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace thawslip::code {
namespace {

constexpr int threshold = 128;

/// How much narrower than high a pattern may be seen: at the edge of a bottle.
constexpr double most_askew = 3.5;

using Pattern = FinderPattern;

using Runs = std::array<int, 5>;

/// The size of a module where five runs are those of a finder pattern; else 0.
double module_of(const Runs& runs) {
    int sum = 0;
    for (const int run : runs) {
        sum += run;
    }
    const double module = sum / 7.0;
    constexpr std::array<double, 5> wanted = {1, 1, 3, 1, 1};
    for (std::size_t i = 0; i < runs.size(); ++i) {
        if (std::abs(runs[i] - wanted[i] * module) > module * (i == 2 ? 1.2 : 0.7)) {
            return 0.0;
        }
    }
    return module >= 1.0 ? module : 0.0;
}

bool is_dark(const GreyPicture& picture, int x, int y) {
    return picture.pixels[picture.index(x, y)] < threshold;
}

/// How far it goes on in one colour from a place, by steps of (0, `step`).
int run_down(const GreyPicture& picture, int x, int& y, int step, bool dark) {
    int count = 0;
    while (y >= 0 && y < picture.height && is_dark(picture, x, y) == dark) {
        ++count;
        y += step;
    }
    return count;
}

/// The pattern that a row has around `x`, where the column agrees.
std::optional<Pattern> checked_down(const GreyPicture& picture, double x, int y, double module) {
    const int column = static_cast<int>(x);
    int up = y;
    int down = y + 1;
    const int above = run_down(picture, column, up, -1, true);
    const int below = run_down(picture, column, down, 1, true);
    Runs runs{0, 0, above + below, 0, 0};
    const int end = down;
    runs[1] = run_down(picture, column, up, -1, false);
    runs[0] = run_down(picture, column, up, -1, true);
    runs[3] = run_down(picture, column, down, 1, false);
    runs[4] = run_down(picture, column, down, 1, true);
    const double across = module_of(runs);
    if (across == 0.0 || across > most_askew * module || module > most_askew * across) {
        return std::nullopt;
    }
    return Pattern{{x, end - runs[2] / 2.0}, std::sqrt(across * module), 1};
}

void add(std::vector<Pattern>& patterns, const Pattern& pattern) {
    for (auto& known : patterns) {
        const double away =
            std::hypot(known.middle.x - pattern.middle.x, known.middle.y - pattern.middle.y);
        if (away < 2.0 * known.module) {
            const double share = 1.0 / ++known.seen;
            known.middle.x += (pattern.middle.x - known.middle.x) * share;
            known.middle.y += (pattern.middle.y - known.middle.y) * share;
            known.module += (pattern.module - known.module) * share;
            return;
        }
    }
    constexpr std::size_t most = 400; // a picture made of patterns takes no longer than a code
    if (patterns.size() < most) {
        patterns.push_back(pattern);
    }
}

/// The five runs through a dark place, along the line by steps of (dx, dy).
Runs runs_through(const GreyPicture& picture, Place place, int dx, int dy) {
    Runs runs{};
    for (const int way : {-1, 1}) {
        int x = static_cast<int>(place.x) + (way > 0 ? dx : 0);
        int y = static_cast<int>(place.y) + (way > 0 ? dy : 0);
        for (int run = 0; run < 3; ++run) {
            const int place_of_run = 2 + way * run;
            while (x >= 0 && x < picture.width && y >= 0 && y < picture.height &&
                   is_dark(picture, x, y) == (run != 1)) {
                ++runs[static_cast<std::size_t>(place_of_run)];
                x += way * dx;
                y += way * dy;
            }
        }
    }
    return runs;
}

/// Whether the diagonals agree too, which noise hardly ever does: any line through the middle of
/// squares in squares is parted as they are.
bool is_pattern_askance(const GreyPicture& picture, const Pattern& pattern) {
    return module_of(runs_through(picture, pattern.middle, 1, 1)) > 0.0 &&
           module_of(runs_through(picture, pattern.middle, 1, -1)) > 0.0;
}

/// Looks along one row for patterns that are wanted.
template <class IsWanted>
void scan_row(const GreyPicture& picture, int y, std::vector<Pattern>& patterns,
              const IsWanted& is_wanted) {
    Runs runs{};
    bool dark = is_dark(picture, 0, y);
    int run = 0;
    for (int x = 0; x <= picture.width; ++x) {
        if (x < picture.width && is_dark(picture, x, y) == dark) {
            ++run;
            continue;
        }
        std::rotate(runs.begin(), runs.begin() + 1, runs.end());
        runs.back() = run;
        const double module = dark ? module_of(runs) : 0.0;
        if (module > 0.0) {
            const double middle = x - runs[4] - runs[3] - runs[2] / 2.0;
            const auto found = checked_down(picture, middle, y, module);
            if (found && is_wanted(*found)) {
                add(patterns, *found);
            }
        }
        dark = !dark;
        run = 1;
    }
}

/// A triple of patterns, and how far it is from being those of one code.
struct Triple {
    Finders finders;
    double strangeness = 0.0;
};

/// How strange it is that `corner` should be the pattern between the two others: little where they
/// stand square, as far from it as each other, as large, and, for what looks like a pattern within
/// a code is nearer, far away.
std::optional<double> strangeness(const Pattern& corner, const Pattern& a, const Pattern& b) {
    const Place to_a{a.middle.x - corner.middle.x, a.middle.y - corner.middle.y};
    const Place to_b{b.middle.x - corner.middle.x, b.middle.y - corner.middle.y};
    const double length_a = std::hypot(to_a.x, to_a.y);
    const double length_b = std::hypot(to_b.x, to_b.y);
    const double least = 6.0 * corner.module; // version 1 at the edge of a bottle
    const double cosine = (to_a.x * to_b.x + to_a.y * to_b.y) / (length_a * length_b);
    constexpr double least_square = 0.5;
    if (length_a < least || length_b < least || std::abs(cosine) > least_square) {
        return std::nullopt;
    }
    const auto differ = [](double x, double y) { return std::abs(std::log(x / y)); };
    const double module = std::cbrt(corner.module * a.module * b.module);
    return 2.0 * std::abs(cosine) + differ(length_a, length_b) + 0.5 * differ(a.module, b.module) +
           0.5 * differ(corner.module, module) - std::log(std::min(length_a, length_b) / module);
}

/// Adds the triples that have `corner` between the others.
void add_triples(const Pattern& corner, const std::vector<Pattern>& others,
                 std::vector<Triple>& triples) {
    for (std::size_t i = 0; i < others.size(); ++i) {
        for (std::size_t j = i + 1; j < others.size(); ++j) {
            if (const auto strange = strangeness(corner, others[i], others[j])) {
                triples.push_back({{corner.middle, others[i].middle, others[j].middle}, *strange});
            }
        }
    }
}

std::vector<Triple> triples_of(const std::vector<Pattern>& patterns) {
    std::vector<Triple> triples;
    for (std::size_t i = 0; i < patterns.size(); ++i) {
        auto others = patterns;
        others.erase(others.begin() + static_cast<std::ptrdiff_t>(i));
        add_triples(patterns[i], others, triples);
    }
    return triples;
}

} // namespace

std::size_t count_finder_patterns(const GreyPicture& picture, int step) {
    std::vector<Pattern> patterns;
    for (int y = 0; y < picture.height && picture.width > 0; y += step) {
        scan_row(picture, y, patterns, [&picture](const Pattern& pattern) {
            return is_pattern_askance(picture, pattern);
        });
    }
    return patterns.size();
}

std::vector<FinderPattern> find_finder_patterns(const GreyPicture& picture) {
    std::vector<Pattern> patterns;
    for (int y = 0; y < picture.height && picture.width > 0; ++y) {
        scan_row(picture, y, patterns, [](const Pattern&) { return true; });
    }
    std::erase_if(patterns, [](const Pattern& pattern) { return pattern.seen < 2; });
    std::ranges::stable_sort(patterns, std::ranges::greater{}, &Pattern::seen);
    return patterns;
}

std::vector<Finders> find_finders(const GreyPicture& picture) {
    auto patterns = find_finder_patterns(picture);
    constexpr std::size_t most_patterns = 14;
    patterns.resize(std::min(patterns.size(), most_patterns));
    auto triples = triples_of(patterns);
    std::ranges::stable_sort(triples, {}, &Triple::strangeness);
    constexpr std::size_t most_triples = 3;
    std::vector<Finders> found;
    for (std::size_t i = 0; i < std::min(triples.size(), most_triples); ++i) {
        found.push_back(triples[i].finders);
    }
    return found;
}

} // namespace thawslip::code
