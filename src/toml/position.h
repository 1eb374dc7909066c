#pragma once

#include <cstddef>
#include <cstdint>
#include <string_view>

namespace thawslip::toml {

/// Line and column from 1; columns count code points.
struct Position {
    std::uint32_t line = 1;
    std::uint32_t column = 1;
};

/// The byte offset of a position; the end of the line or of the text where that is too short.
std::size_t offset_of(std::string_view text, Position position);

/// \pre what stands before `offset` is well-formed UTF-8
Position position_of(std::string_view text, std::size_t offset);

} // namespace thawslip::toml
