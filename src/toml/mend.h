#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>

namespace thawslip::toml {

/// What of a `key = value` line a mistake has spoilt.
enum class Spoilt { Value, Line };

/// Puts a mistake out of the way, so that a parser that stops at the first one can look for the
/// next: where byte `culprit` stands in a `key = value` that begins and ends on one line, its
/// value becomes 0, or the whole line becomes blank. Other lines stay, so that their places still
/// hold. Returns the line's number; nothing where the mistake may reach beyond its line, and
/// `text` is then as it was.
std::optional<std::uint32_t> mend_line(std::string& text, std::size_t culprit, Spoilt spoilt);

} // namespace thawslip::toml
