#include "code/recover/text_of_codewords.h"

#include "code/segments.h"

#include <algorithm>
#include <array>
#include <string_view>

namespace thawslip::code {
namespace {

constexpr std::string_view alphanumerics = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:";

/// Bits from the first codeword's highest on.
class BitStream {
public:
    explicit BitStream(const std::vector<std::uint8_t>& data) : data_{data} {}

    std::size_t left() const { return data_.size() * 8 - at_; }
    /// As many as there are, where fewer are left.
    unsigned take(std::size_t count) {
        unsigned value = 0;
        for (count = std::min(count, left()); count > 0; --count, ++at_) {
            value = value << 1U | (data_[at_ / 8] >> (7 - at_ % 8) & 1U);
        }
        return value;
    }

private:
    const std::vector<std::uint8_t>& data_;
    std::size_t at_ = 0;
};

/// How characters of a mode come in groups: a group's bits, and those of a shorter one at the end.
struct Grouping {
    unsigned indicator;
    Mode mode;
    unsigned base;
    std::array<std::size_t, 4> bits; ///< of a group of so many characters
    std::size_t largest;
};
constexpr std::array groupings = {
    Grouping{1, Mode::Numeric, 10, {0, 4, 7, 10}, 3},
    Grouping{2, Mode::Alphanumeric, 45, {0, 6, 11, 0}, 2},
    Grouping{4, Mode::Byte, 256, {0, 8, 0, 0}, 1},
};

std::optional<char> character(unsigned value, const Grouping& grouping) {
    if (grouping.mode != Mode::Byte) {
        return alphanumerics[value];
    }
    const auto c = static_cast<char>(value);
    return c == '\n' || (c >= ' ' && c <= '~') ? std::optional{c} : std::nullopt;
}

/// The next `count` characters, behind `text`. \returns false where they are none of this mode's
bool read_group(BitStream& bits, const Grouping& grouping, std::size_t count, std::string& text) {
    unsigned value = bits.take(grouping.bits.at(count));
    std::string group(count, ' ');
    for (std::size_t i = count; i-- > 0; value /= grouping.base) {
        const auto c = character(value % grouping.base, grouping);
        if (!c) {
            return false;
        }
        group[i] = *c;
    }
    text += group;
    return value == 0;
}

bool read_segment(BitStream& bits, const Grouping& grouping, VersionGroup group,
                  std::string& text) {
    const std::size_t count_bits = segment_bits(grouping.mode, 0, group) - 4;
    const std::size_t count = bits.take(count_bits);
    if (segment_bits(grouping.mode, count, group) - 4 - count_bits > bits.left()) {
        return false;
    }
    for (std::size_t done = 0; done < count; done += grouping.largest) {
        if (!read_group(bits, grouping, std::min(grouping.largest, count - done), text)) {
            return false;
        }
    }
    return true;
}

/// Padding is 236 and 17 in turns, from the next whole codeword on.
bool is_padding(BitStream& bits) {
    if (bits.take(bits.left() % 8) != 0) {
        return false;
    }
    for (unsigned expected = 236; bits.left() > 0; expected = 253 - expected) {
        if (bits.take(8) != expected) {
            return false;
        }
    }
    return true;
}

} // namespace

std::optional<std::string> text_of_codewords(const std::vector<std::uint8_t>& data, int version) {
    BitStream bits{data};
    std::string text;
    while (bits.left() > 0) {
        const unsigned indicator = bits.take(4);
        if (indicator == 0) {
            break;
        }
        const auto grouping = std::ranges::find(groupings, indicator, &Grouping::indicator);
        if (grouping == groupings.end() ||
            !read_segment(bits, *grouping, group_of(version), text)) {
            return std::nullopt;
        }
    }
    return is_padding(bits) ? std::optional{std::move(text)} : std::nullopt;
}

} // namespace thawslip::code
