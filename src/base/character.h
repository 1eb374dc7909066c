#pragma once

namespace thawslip {

/// C0 and C1 control characters and DEL, tab and line ends among them.
constexpr bool is_control(char32_t c) {
    return c < 0x20 || (c >= 0x7F && c < 0xA0);
}

constexpr bool is_line_break(char32_t c) {
    return c == '\n' || c == '\r' || c == 0x85 || c == 0x2028 || c == 0x2029;
}

/// Bidirectional embeddings, overrides and isolates (UAX #9, "Explicit Directional Embeddings",
/// "… Overrides", "… Isolates").
constexpr bool turns_direction(char32_t c) {
    return (c >= 0x202A && c <= 0x202E) || (c >= 0x2066 && c <= 0x2069);
}

/// White space and what has no ink at all: a text of nothing else would print as nothing.
constexpr bool leaves_no_mark(char32_t c) {
    const bool space = c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == 0xA0 ||
                       c == 0x1680 || (c >= 0x2000 && c <= 0x200A) || c == 0x202F || c == 0x205F ||
                       c == 0x3000;
    const bool invisible = c == 0xAD || (c >= 0x200B && c <= 0x200F) || c == 0x2060 ||
                           c == 0xFEFF || (c >= 0xFE00 && c <= 0xFE0F);
    return space || invisible;
}

} // namespace thawslip
