#include "code/capacity.h"
#include "code/draw.h"
#include "code/segments.h"
#include "code/symbol.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace thawslip::code {
namespace {

constexpr std::array levels = {Level::Low, Level::Medium, Level::Quartile, Level::High};
constexpr int last_version = 40;

// A length that is a whole number of dots must count as that many although it went through
// points and back.
constexpr double dot_slack = 1e-6;

/// Room and printer, in dots.
struct Room {
    double per_inch = 300.0;
    int dots = 0;    ///< whole dots along the square
    int least = 1;   ///< fewest dots a module may have
    int durable = 1; ///< of a module that lasts

    int dots_per_module(int version) const {
        return dots / (side_of(version) + 2 * quiet_zone_modules);
    }
    /// The largest version whose modules are as large as they must be; 0 where none is.
    int largest_version() const {
        int version = last_version;
        while (version > 0 && dots_per_module(version) < least) {
            --version;
        }
        return version;
    }
    /// The fewest whole dots that are at least `length`.
    int dots_for(Length length) const {
        return static_cast<int>(std::ceil(length.in_inches() * per_inch - dot_slack));
    }
};

/// One way to print a text.
struct Candidate {
    int version = 0;
    Level level = Level::Low;
    int dots_per_module = 0;
};

Room room_for(Length available, PrinterDots printer, Length least_module, Length durable) {
    const double dots = std::floor(available.in_inches() * printer.per_inch + dot_slack);
    Room room{printer.per_inch, static_cast<int>(std::max(dots, 0.0)), 1, 1};
    room.least = std::max(room.dots_for(least_module), 1);
    room.durable = room.dots_for(durable);
    return room;
}

/// The smallest version that carries a text at each level. A text is cut into segments for those
/// groups of versions alone that are asked for: that takes as long as all else about a choice.
class Capacity {
public:
    explicit Capacity(std::string_view text) : text_{text} {}

    /// Of the versions up to `largest`; nothing when the text is longer than they carry.
    std::optional<int> smallest_version(Level level, int largest) {
        for (int version = 1; version <= largest; ++version) {
            const auto room = static_cast<std::size_t>(blocks_of(version, level).data_codewords());
            if (bits_in(group_of(version)) <= room * 8) {
                return version;
            }
        }
        return std::nullopt;
    }

private:
    std::size_t bits_in(VersionGroup group) {
        auto& bits = bits_.at(static_cast<std::size_t>(group));
        if (!bits) {
            bits = segment(text_, group).bits;
        }
        return *bits;
    }

    std::string_view text_;
    std::array<std::optional<std::size_t>, 3> bits_;
};

/// Is `a` the better choice? See choose_symbol for the rule and where it comes from.
bool better(const Candidate& a, const Candidate& b, int durable_dots) {
    if ((a.level == Level::Low) != (b.level == Level::Low)) {
        return b.level == Level::Low;
    }
    const int a_dots = std::min(a.dots_per_module, durable_dots);
    const int b_dots = std::min(b.dots_per_module, durable_dots);
    return a_dots != b_dots ? a_dots > b_dots : a.level > b.level;
}

/// The best of the symbols that carry `text`: for each level the smallest version, its modules as
/// large as the room allows. Nothing when even the largest are too small.
std::optional<Candidate> best_candidate(std::string_view text, const Room& room) {
    Capacity capacity{text};
    std::optional<Candidate> best;
    for (const Level level : levels) {
        const auto version = capacity.smallest_version(level, room.largest_version());
        if (!version) {
            continue;
        }
        const Candidate candidate{*version, level, room.dots_per_module(*version)};
        if (!best || better(candidate, *best, room.durable)) {
            best = candidate;
        }
    }
    return best;
}

/// A text's place among those offered, and its best symbol.
struct Offer {
    std::size_t text = 0;
    Candidate best;
};

/// The first that lasts; failing that the first above level L, the last among them, which says only
/// what bag it is; failing that the first that fits.
std::optional<Offer> first_of(const std::vector<std::string>& texts, const Room& room,
                              Level durable) {
    std::optional<Offer> above_low;
    std::optional<Offer> any;
    for (std::size_t i = 0; i < texts.size(); ++i) {
        const auto best = best_candidate(texts[i], room);
        const bool is_last = i + 1 == texts.size();
        if (!best) {
            continue;
        }
        if (!is_last && best->level >= durable && best->dots_per_module >= room.durable) {
            return Offer{i, *best};
        }
        if (!above_low && best->level != Level::Low) {
            above_low = Offer{i, *best};
        }
        if (!any) {
            any = Offer{i, *best};
        }
    }
    return above_low ? above_low : any;
}

Length side_at(int version, int dots, const Room& room) {
    const int modules = side_of(version) + 2 * quiet_zone_modules;
    return Length::inches(modules * dots / room.per_inch);
}

} // namespace

Result<SizedSymbol, TooSmall> choose_symbol(const std::vector<std::string>& texts, Length available,
                                            PrinterDots printer, Length least_module,
                                            Durable durable) {
    const Room room = room_for(available, printer, least_module, durable.module);
    if (const auto chosen = first_of(texts, room, durable.level)) {
        const auto& [version, level, dots] = chosen->best;
        const auto& text = texts[chosen->text];
        const Segments cut = segment(text, group_of(version));
        return SizedSymbol{draw(cut.segments, version, level), text, chosen->text, dots,
                           Length::inches(dots / room.per_inch)};
    }
    Capacity shortest{texts.empty() ? std::string_view{} : texts.back()};
    const int version = shortest.smallest_version(Level::Low, last_version).value_or(last_version);
    return Failure{TooSmall{available, side_at(version, room.least, room)}};
}

std::optional<Length> durable_side(std::string_view text, PrinterDots printer, Length least_module,
                                   Durable durable) {
    const Room room = room_for({}, printer, least_module, durable.module);
    const auto version = Capacity{text}.smallest_version(durable.level, last_version);
    return version ? std::optional{side_at(*version, std::max(room.least, room.durable), room)}
                   : std::nullopt;
}

} // namespace thawslip::code
