#include "base/utf8.h"

#include <fmt/format.h>

namespace thawslip {
namespace {

struct LeadByte {
    int length = 0; ///< bytes of the whole sequence; 0 when the byte cannot start one
    char32_t bits = 0;
    char32_t least = 0; ///< smallest code point that needs this many bytes
};

LeadByte read_lead(unsigned char byte) {
    if (byte < 0x80) {
        return {1, byte, 0};
    }
    if (byte >= 0xC2 && byte <= 0xDF) {
        return {2, byte & 0x1FU, 0x80};
    }
    if (byte >= 0xE0 && byte <= 0xEF) {
        return {3, byte & 0x0FU, 0x800};
    }
    if (byte >= 0xF0 && byte <= 0xF4) {
        return {4, byte & 0x07U, 0x10000};
    }
    return {};
}

/// The length of the well-formed sequence at `offset`, 0 when there is none.
int sequence_length(std::string_view text, std::size_t offset) {
    const auto lead = read_lead(static_cast<unsigned char>(text[offset]));
    if (lead.length == 0 || offset + static_cast<std::size_t>(lead.length) > text.size()) {
        return 0;
    }
    char32_t value = lead.bits;
    for (int i = 1; i < lead.length; ++i) {
        const auto byte = static_cast<unsigned char>(text[offset + static_cast<std::size_t>(i)]);
        if ((byte & 0xC0U) != 0x80U) {
            return 0;
        }
        value = (value << 6U) | (byte & 0x3FU);
    }
    const bool surrogate = value >= 0xD800 && value <= 0xDFFF;
    return value < lead.least || surrogate || value > 0x10FFFF ? 0 : lead.length;
}

} // namespace

std::optional<std::size_t> first_invalid_utf8(std::string_view text) {
    std::size_t offset = 0;
    while (offset < text.size()) {
        const int length = sequence_length(text, offset);
        if (length == 0) {
            return offset;
        }
        offset += static_cast<std::size_t>(length);
    }
    return std::nullopt;
}

char32_t next_code_point(std::string_view text, std::size_t& offset) {
    const auto lead = read_lead(static_cast<unsigned char>(text[offset]));
    char32_t value = lead.bits;
    for (int i = 1; i < lead.length; ++i) {
        value = (value << 6U) |
                (static_cast<unsigned char>(text[offset + static_cast<std::size_t>(i)]) & 0x3FU);
    }
    offset += static_cast<std::size_t>(lead.length > 0 ? lead.length : 1);
    return value;
}

std::u32string to_utf32(std::string_view text) {
    std::u32string points;
    points.reserve(text.size());
    for (std::size_t offset = 0; offset < text.size();) {
        points.push_back(next_code_point(text, offset));
    }
    return points;
}

void append_utf8(std::string& text, char32_t c) {
    const auto put = [&text](char32_t byte) { text.push_back(static_cast<char>(byte)); };
    const auto tail = [&put](char32_t bits) { put(0x80U | (bits & 0x3FU)); };
    if (c < 0x80) {
        put(c);
    } else if (c < 0x800) {
        put(0xC0U | (c >> 6U));
        tail(c);
    } else if (c < 0x10000) {
        put(0xE0U | (c >> 12U));
        tail(c >> 6U);
        tail(c);
    } else {
        put(0xF0U | (c >> 18U));
        tail(c >> 12U);
        tail(c >> 6U);
        tail(c);
    }
}

std::string to_utf8(std::u32string_view points) {
    std::string text;
    text.reserve(points.size());
    for (const char32_t c : points) {
        append_utf8(text, c);
    }
    return text;
}

std::size_t count_code_points(std::string_view text) {
    std::size_t count = 0;
    for (const char c : text) {
        count += (static_cast<unsigned char>(c) & 0xC0U) != 0x80U ? 1 : 0;
    }
    return count;
}

std::string name_of(char32_t c) {
    auto name = fmt::format("U+{:04X}", static_cast<std::uint32_t>(c));
    const bool control = c < 0x20 || (c >= 0x7F && c < 0xA0);
    if (!control) {
        name += " \"";
        append_utf8(name, c);
        name += "\"";
    }
    return name;
}

} // namespace thawslip
