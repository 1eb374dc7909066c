#include "code/segments.h"

#include "base/letters.h"

#include <algorithm>
#include <array>
#include <limits>

namespace thawslip::code {
namespace {

constexpr std::array modes = {Mode::Numeric, Mode::Alphanumeric, Mode::Byte};
constexpr std::size_t mode_count = modes.size();

// A character costs 10/3, 11/2 or 8 bits: counted in sixths all three are whole numbers. A
// segment's bits are rounded up where it ends (4 bits for one odd digit, 7 for two; 6 for one odd
// alphanumeric character), which is what the rounding gives.
constexpr std::size_t sixths = 6;
constexpr std::array<std::size_t, mode_count> sixths_per_character = {20, 33, 48};
constexpr std::size_t mode_bits = 4;
constexpr std::array<std::array<std::size_t, 3>, mode_count> count_bits = {
    {{10, 12, 14}, {9, 11, 13}, {8, 16, 16}}};

constexpr std::size_t out_of_reach = std::numeric_limits<std::size_t>::max() / 2;

std::size_t header_bits(std::size_t mode, VersionGroup group) {
    return mode_bits + count_bits.at(mode).at(static_cast<std::size_t>(group));
}

std::size_t rounded_up(std::size_t cost) {
    return (cost + sixths - 1) / sixths * sixths;
}

bool carries(Mode mode, char c) {
    switch (mode) {
    case Mode::Numeric: return is_digit(c);
    case Mode::Alphanumeric: return is_alphanumeric(c);
    case Mode::Byte: return true;
    }
    return false;
}

/// The cheapest way to have carried the text so far with the last character in each mode.
struct Step {
    std::array<std::size_t, mode_count> cost; ///< in sixths of a bit
    std::array<std::size_t, mode_count> from; ///< the mode of the character before
};

/// The mode after which a new segment starts cheapest.
std::size_t cheapest(const Step& step) {
    std::size_t best = 0;
    for (std::size_t mode = 1; mode < mode_count; ++mode) {
        if (rounded_up(step.cost.at(mode)) < rounded_up(step.cost.at(best))) {
            best = mode;
        }
    }
    return best;
}

Step next_step(const Step* previous, char c, VersionGroup group) {
    Step step{};
    const std::size_t before = previous != nullptr ? cheapest(*previous) : mode_count;
    const std::size_t base = previous != nullptr ? rounded_up(previous->cost.at(before)) : 0;
    for (std::size_t mode = 0; mode < mode_count; ++mode) {
        std::size_t& cost = step.cost.at(mode);
        cost = out_of_reach;
        if (!carries(modes.at(mode), c)) {
            continue;
        }
        cost = base + header_bits(mode, group) * sixths;
        step.from.at(mode) = before;
        if (previous != nullptr && previous->cost.at(mode) <= cost) {
            cost = previous->cost.at(mode);
            step.from.at(mode) = mode;
        }
        cost += sixths_per_character.at(mode);
    }
    return step;
}

/// Walks the steps back from the cheapest end and joins what was carried in one mode.
std::vector<Segment> cut(std::string_view text, const std::vector<Step>& steps) {
    std::vector<Segment> segments;
    std::size_t mode = cheapest(steps.back());
    std::size_t end = text.size();
    for (std::size_t i = text.size(); i-- > 0;) {
        const std::size_t before = steps[i].from.at(mode);
        if (before != mode || i == 0) {
            segments.push_back({modes.at(mode), text.substr(i, end - i)});
            end = i;
        }
        mode = before;
    }
    std::ranges::reverse(segments);
    return segments;
}

} // namespace

VersionGroup group_of(int version) {
    return version < 10   ? VersionGroup::Small
           : version < 27 ? VersionGroup::Medium
                          : VersionGroup::Large;
}

bool is_alphanumeric(char c) {
    constexpr std::string_view marks = " $%*+-./:";
    return is_digit(c) || is_upper(c) || marks.find(c) != std::string_view::npos;
}

std::size_t segment_bits(Mode mode, std::size_t characters, VersionGroup group) {
    const auto index = static_cast<std::size_t>(mode);
    const std::size_t cost = characters * sixths_per_character.at(index);
    return header_bits(index, group) + rounded_up(cost) / sixths;
}

Segments segment(std::string_view text, VersionGroup group) {
    if (text.empty()) {
        return {};
    }
    std::vector<Step> steps;
    steps.reserve(text.size());
    for (const char c : text) {
        steps.push_back(next_step(steps.empty() ? nullptr : &steps.back(), c, group));
    }
    const Step& last = steps.back();
    return {cut(text, steps), rounded_up(last.cost.at(cheapest(last))) / sixths};
}

} // namespace thawslip::code
