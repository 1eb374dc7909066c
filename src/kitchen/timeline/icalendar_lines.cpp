#include "kitchen/timeline/icalendar_lines.h"

#include "base/utf8.h"
#include "kitchen/bag_id.h"

#include <cstdint>
#include <fmt/format.h>

namespace thawslip::kitchen {

namespace {

constexpr std::size_t longest_line = 75; // octets without the line break: RFC 5545, 3.1

bool continues_a_character(char byte) {
    return (static_cast<unsigned char>(byte) & 0xC0U) == 0x80U;
}

/// How much of `line` fits into `room` octets without cutting a character.
std::size_t piece_of(std::string_view line, std::size_t room) {
    if (line.size() <= room)
        return line.size();
    std::size_t end = room;
    while (end > 0 && continues_a_character(line[end]))
        --end;
    return end > 0 ? end : room;
}

std::string well_formed(std::string_view text) {
    std::string kept;
    while (const auto bad = first_invalid_utf8(text)) {
        kept += text.substr(0, *bad);
        text.remove_prefix(*bad + 1);
    }
    kept += text;
    return kept;
}

bool is_control(char c) {
    const auto byte = static_cast<unsigned char>(c);
    return (byte < 0x20U && c != '\t') || byte == 0x7FU;
}

std::string escaped(std::string_view text) {
    std::string out;
    for (const char c : well_formed(text)) {
        if (c == '\n')
            out += "\\n";
        else if (c == '\\' || c == ';' || c == ',')
            (out += '\\') += c;
        else if (!is_control(c))
            out += c;
    }
    return out;
}

} // namespace

void ICalendarLines::add(std::string_view name, std::string_view value) {
    std::string line{name};
    (line += ':') += value;
    std::string_view rest = line;
    std::size_t room = longest_line;
    while (rest.size() > room) {
        const std::size_t end = piece_of(rest, room);
        text_ += rest.substr(0, end);
        text_ += "\r\n ";
        rest.remove_prefix(end);
        room = longest_line - 1; // the blank that marks the fold counts too
    }
    text_ += rest;
    text_ += "\r\n";
}

void ICalendarLines::add_text(std::string_view name, std::string_view text) {
    add(name, escaped(text));
}

std::string icalendar_utc(std::chrono::sys_seconds time) {
    const auto day = std::chrono::floor<std::chrono::days>(time);
    const std::chrono::year_month_day date{day};
    const std::chrono::hh_mm_ss clock{time - day};
    return fmt::format("{:04}{:02}{:02}T{:02}{:02}{:02}Z", static_cast<int>(date.year()),
                       static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()),
                       clock.hours().count(), clock.minutes().count(), clock.seconds().count());
}

std::string uuid_of(std::string_view name) {
    const std::uint64_t high = fnv_1a(name);
    const std::uint64_t low = fnv_1a(name, high ^ 0x9E3779B97F4A7C15U);
    const std::uint64_t versioned = (high & ~std::uint64_t{0xF000U}) | 0x8000U;
    const std::uint64_t variant = (low & ~(std::uint64_t{3} << 62U)) | (std::uint64_t{2} << 62U);
    return fmt::format("{:08x}-{:04x}-{:04x}-{:04x}-{:012x}", versioned >> 32U,
                       (versioned >> 16U) & 0xFFFFU, versioned & 0xFFFFU, variant >> 48U,
                       variant & 0xFFFFFFFFFFFFU);
}

} // namespace thawslip::kitchen
