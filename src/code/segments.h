#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::code {

enum class Mode { Numeric, Alphanumeric, Byte };

/// A stretch of a text that is encoded in one mode.
struct Segment {
    Mode mode = Mode::Byte;
    std::string_view text;
};

/// A text cut into segments, and what they cost together, headers included.
struct Segments {
    std::vector<Segment> segments; ///< their texts point into the text that was cut
    std::size_t bits = 0;
};

/// Versions whose character counts are equally wide: 1–9, 10–26, 27–40.
/// Source: ISO/IEC 18004:2015, 7.4.1, table of character count indicator bits (from memory).
enum class VersionGroup { Small, Medium, Large };
VersionGroup group_of(int version); ///< \pre 1 to 40

/// The fewest bits that carry `text`: the best cut for versions of this group, by dynamic
/// programming over every character and mode. Of equals, the one with fewer segments.
/// \pre printable ASCII or newline; bytes above 127 cost 8 bits each, as bytes do
Segments segment(std::string_view text, VersionGroup group);

/// Bits of one segment: mode indicator, count and characters.
std::size_t segment_bits(Mode mode, std::size_t characters, VersionGroup group);

bool is_alphanumeric(char c); ///< one of the 45 characters of alphanumeric mode

} // namespace thawslip::code
