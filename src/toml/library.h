#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace thawslip::toml {

/// What the library has against a text, in its own words, and where it noticed: line and column
/// from 1, the column in characters.
struct Objection {
    std::uint32_t line;
    std::uint32_t column;
    std::string message;
};

/// A second judge of what our own reading let pass: nothing where the library agrees. \pre UTF-8
std::optional<Objection> library_objection(std::string_view text);

} // namespace thawslip::toml
