#include "kitchen/measures/container_text.h"

#include "base/length_text.h"
#include "base/letters.h"
#include "base/list.h"

#include <array>
#include <fmt/format.h>
#include <vector>

namespace thawslip::kitchen {
namespace {

constexpr std::array<std::string_view, 4> signs = {"×", "x", "X", " by "};

/// A side as it is written, and where it begins.
struct WrittenSide {
    std::string_view text;
    std::size_t offset = 0;
};

WrittenSide trimmed(std::string_view text, std::size_t offset) {
    const auto first = std::min(text.find_first_not_of(' '), text.size());
    const auto last = text.find_last_not_of(' ') + 1;
    return {text.substr(first, std::max(first, last) - first), offset + first};
}

/// The length of the sign between two sides that stands at `at`, else 0.
std::size_t sign_at(std::string_view text, std::size_t at) {
    for (const auto sign : signs) {
        if (text.substr(at).starts_with(sign)) {
            return sign.size();
        }
    }
    return 0;
}

std::vector<WrittenSide> sides_in(std::string_view text) {
    std::vector<WrittenSide> sides;
    std::size_t start = 0;
    for (std::size_t at = 0; at < text.size();) {
        const auto sign = sign_at(text, at);
        if (sign > 0) {
            sides.push_back(trimmed(text.substr(start, at - start), start));
            start = at + sign;
        }
        at += std::max<std::size_t>(sign, 1);
    }
    sides.push_back(trimmed(text.substr(start), start));
    return sides;
}

bool is_figure(char c) {
    return is_digit(c) || c == '.' || c == ',' || c == '/' || c == ' ';
}

/// "cm" of "28 cm"; empty where a number stands alone.
std::string_view unit_of(std::string_view side) {
    std::size_t at = 0;
    while (at < side.size() && is_figure(side[at])) {
        ++at;
    }
    return side.substr(at);
}

Result<Length, TextFault> length_of(const WrittenSide& side, std::string_view unit) {
    const bool has_unit = !unit_of(side.text).empty();
    const auto length =
        parse_length(has_unit ? std::string{side.text} : fmt::format("{} {}", side.text, unit));
    if (!length) {
        const auto& fault = length.fault();
        return fault_at(side.offset + std::min(fault.offset, side.text.size()), fault.message);
    }
    return length.value();
}

std::string said_sides(const std::vector<WrittenSide>& sides) {
    return joined(sides, " × ", &WrittenSide::text);
}

} // namespace

Result<Container, TextFault> parse_container(std::string_view text) {
    const auto sides = sides_in(text);
    if (sides.size() < 2 || sides.size() > 3) {
        return fault_at(0, "expected width × length, and the height of a tray or a box");
    }
    const auto unit = unit_of(sides.back().text);
    std::vector<Length> lengths;
    for (const auto& side : sides) {
        const auto length = length_of(side, unit);
        if (!length) {
            return Failure{length.fault()};
        }
        lengths.push_back(length.value());
    }
    Container container{lengths[0], lengths[1], std::nullopt, said_sides(sides)};
    if (lengths.size() == 3) {
        container.height = lengths[2];
    }
    return container;
}

} // namespace thawslip::kitchen
