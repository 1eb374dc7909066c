#include "code/recover/recover.h"

#include "code/capacity.h"
#include "code/finders.h"
#include "code/recover/lattice.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <vector>

namespace thawslip::code {
namespace {

/// Which two of a symbol's finder patterns a pair may be, the first's direction to the second being
/// `turn` radians from the symbol's rows.
struct Role {
    enum Pattern { Corner, Right, Below };
    Pattern first;
    Pattern second;
    double turn;
};
constexpr std::array roles = {
    Role{Role::Corner, Role::Right, 0.0},
    Role{Role::Below, Role::Corner, -std::numbers::pi / 2.0},
    Role{Role::Right, Role::Below, 3.0 * std::numbers::pi / 4.0},
};

Module middle_of(Role::Pattern pattern, int side) {
    return {pattern == Role::Right ? side - 4 : 3, pattern == Role::Below ? side - 4 : 3};
}

/// Two finder patterns as those of one symbol of some version.
struct Guess {
    std::vector<Anchor> anchors;
    int version = 1;
    double likelihood = 0.0;
};

Place between(Place a, Place b, double share) {
    return {a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share};
}

Place module_at(const Anchor& anchor, double x, double y) {
    return moved(anchor.local, x - anchor.at.x, y - anchor.at.y);
}

/// How well modules alternate on the way from `from` to `to`, `count` steps from dark to dark. Seen
/// askew or bent, they are denser at one end, and their line is no straight one.
double alternation(const GreyPicture& picture, Place from, Place to, int count, double skew,
                   double sag) {
    constexpr double middle = 128.0;
    double agrees = 0.0;
    double all = 1e-9;
    for (int i = 0; i <= count; ++i) {
        const double share = static_cast<double>(i) / count;
        const double bow = share * (1.0 - share);
        const Place on_line = between(from, to, share + skew * bow);
        const Place at{on_line.x - sag * bow * (to.y - from.y) / count,
                       on_line.y + sag * bow * (to.x - from.x) / count};
        const double dark = middle - grey_at(picture, at);
        agrees += i % 2 == 0 ? dark : -dark;
        all += std::abs(dark);
    }
    return agrees / all;
}

/// How well the timing pattern is seen that begins at a finder pattern which has but one, near it.
double timing_beside(const GreyPicture& picture, const Anchor& anchor) {
    constexpr int count = 8;
    const bool is_right = anchor.at.x > anchor.at.y;
    const double x = is_right ? anchor.at.x - 3 : 6;
    const double y = is_right ? 6 : anchor.at.y - 3;
    double best = 0.0;
    for (const double length : {7.2, 7.6, 8.0, 8.4, 8.8}) {
        const Place to =
            is_right ? module_at(anchor, x - length, y) : module_at(anchor, x, y - length);
        best = std::max(best, alternation(picture, module_at(anchor, x, y), to, count, 0.0, 0.0));
    }
    return best;
}

/// How well a timing pattern is seen between two finder patterns beside one another.
double timing_between(const GreyPicture& picture, const Guess& guess) {
    const Anchor& first = guess.anchors[0];
    const Anchor& second = guess.anchors[1];
    const int side = side_of(guess.version);
    const bool along_row = first.at.y == second.at.y;
    const Place from = module_at(first, 6, along_row ? 6 : side - 7);
    const Place to = module_at(second, along_row ? side - 7 : 6, 6);
    double best = 0.0;
    for (int skew = -5; skew <= 5; ++skew) {
        for (const double sag : {0.0, -3.0, 3.0, -6.0, 6.0}) {
            best = std::max(best, alternation(picture, from, to, side - 13, 0.04 * skew, sag));
        }
    }
    return best;
}

Local local_at(const GreyPicture& picture, const FinderPattern& pattern, double angle) {
    // A row that crosses modules askew finds them wider than they are.
    const double askew = std::max(std::abs(std::cos(angle)), std::abs(std::sin(angle)));
    const double module = pattern.module * askew;
    const Place across{module * std::cos(angle), module * std::sin(angle)};
    return settled(picture, {pattern.middle, across, {-across.y, across.x}});
}

double size_of(const Local& local) {
    return std::sqrt(std::abs(local.across.x * local.down.y - local.across.y * local.down.x));
}

void add_guesses(const GreyPicture& picture, const FinderPattern& first,
                 const FinderPattern& second, const Role& role, std::vector<Guess>& guesses) {
    const double x = second.middle.x - first.middle.x;
    const double y = second.middle.y - first.middle.y;
    const double angle = std::atan2(y, x) - role.turn;
    constexpr double least_alike = 0.25;
    const auto a = local_at(picture, first, angle);
    if (likeness(picture, a) < least_alike) {
        return;
    }
    const auto b = local_at(picture, second, angle);
    const double alike = std::min(likeness(picture, a), likeness(picture, b));
    if (alike < least_alike) {
        return;
    }
    const bool is_diagonal = role.first == Role::Right;
    const double modules = std::hypot(x, y) / std::sqrt(size_of(a) * size_of(b)) /
                           (is_diagonal ? std::numbers::sqrt2 : 1.0);
    constexpr double most_modules = 177.0; // of version 40
    if (!(modules < most_modules)) {
        return;
    }
    const int likely = static_cast<int>(std::lround((modules - 10.0) / 4.0));
    const int off = is_diagonal ? 1 : 2;
    for (int version = std::max(likely - off, 1); version <= std::min(likely + off, 40);
         ++version) {
        const int side = side_of(version);
        Guess guess{
            {{a, middle_of(role.first, side)}, {b, middle_of(role.second, side)}}, version, alike};
        const double timing = is_diagonal ? (timing_beside(picture, guess.anchors[0]) +
                                             timing_beside(picture, guess.anchors[1])) /
                                                2.0
                                          : timing_between(picture, guess);
        constexpr double least_timing = 0.3;
        if (timing > least_timing) {
            guess.likelihood += timing - 0.01 * std::abs(version - likely);
            guesses.push_back(std::move(guess));
        }
    }
}

void add_guesses_in_every_role(const GreyPicture& picture, const FinderPattern& first,
                               const FinderPattern& second, std::vector<Guess>& guesses) {
    for (const Role& role : roles) {
        add_guesses(picture, first, second, role, guesses);
    }
}

/// The likeliest first.
std::vector<Guess> likely_guesses(const GreyPicture& picture) {
    auto patterns = find_finder_patterns(picture);
    constexpr std::size_t most_patterns = 8;
    patterns.resize(std::min(patterns.size(), most_patterns));
    std::vector<Guess> guesses;
    for (std::size_t i = 0; i < patterns.size(); ++i) {
        for (std::size_t j = 0; j < patterns.size(); ++j) {
            if (i != j) {
                add_guesses_in_every_role(picture, patterns[i], patterns[j], guesses);
            }
        }
    }
    std::ranges::stable_sort(guesses, std::ranges::greater{}, &Guess::likelihood);
    return guesses;
}

} // namespace

std::optional<std::string> recovered(const GreyPicture& picture, int modules) {
    for (const Guess& guess : likely_guesses(picture)) {
        modules -= side_of(guess.version) * side_of(guess.version);
        if (modules < 0) {
            break;
        }
        if (const auto seen = seen_from(picture, guess.anchors, guess.version)) {
            auto text = text_of(*seen);
            text = text ? text : text_of(crisper(*seen));
            if (text) {
                return text;
            }
        }
    }
    return std::nullopt;
}

} // namespace thawslip::code
