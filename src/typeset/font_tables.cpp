#include "typeset/font_tables.h"

#include <algorithm>
#include <cstdint>
#include <fmt/format.h>

namespace thawslip::typeset {
namespace {

constexpr std::size_t header_size = 12;
constexpr std::size_t record_size = 16; ///< tag, checksum, offset, length

std::uint32_t byte_at(std::string_view bytes, std::size_t at) {
    return static_cast<unsigned char>(bytes[at]);
}

std::uint32_t word_at(std::string_view bytes, std::size_t at) {
    // Written so that the compiler sees one load and a swap of bytes: every run adds up two
    // megabytes of faces.
    const auto* word = reinterpret_cast<const unsigned char*>(bytes.data()) + at;
    return std::uint32_t{word[0]} << 24U | std::uint32_t{word[1]} << 16U |
           std::uint32_t{word[2]} << 8U | std::uint32_t{word[3]};
}

/// The sum of the table's words; the last one is filled up with zeros.
std::uint32_t sum_of(std::string_view table) {
    std::uint32_t sum = 0;
    const std::size_t whole = table.size() / 4 * 4;
    for (std::size_t at = 0; at < whole; at += 4) {
        sum += word_at(table, at);
    }
    for (std::size_t at = whole; at < table.size(); ++at) {
        sum += byte_at(table, at) << (24U - 8U * static_cast<std::uint32_t>(at - whole));
    }
    return sum;
}

/// `head` holds a sum over the whole file, which counts as zero in its own.
std::uint32_t checksum_of(std::string_view tag, std::string_view table) {
    constexpr std::size_t adjustment = 8;
    const bool adjusted = tag == "head" && table.size() >= adjustment + 4;
    return sum_of(table) - (adjusted ? word_at(table, adjustment) : 0U);
}

std::string damaged(std::string_view tag, std::string_view how) {
    const bool printable =
        std::ranges::all_of(tag, [](char letter) { return letter >= ' ' && letter <= '~'; });
    return fmt::format("is damaged: its table \"{}\" {}", printable ? tag : "?", how);
}

} // namespace

std::string fault_of_tables(std::string_view bytes) {
    constexpr std::size_t count_offset = 4;
    if (bytes.size() < header_size) {
        return "is damaged: it is cut short";
    }
    const std::size_t tables = word_at(bytes, count_offset) >> 16U;
    if (bytes.size() < header_size + tables * record_size) {
        return "is damaged: it is cut short";
    }
    for (std::size_t i = 0; i < tables; ++i) {
        const auto record = bytes.substr(header_size + i * record_size, record_size);
        const auto tag = record.substr(0, 4);
        const std::size_t offset = word_at(record, 8);
        const std::size_t length = word_at(record, 12);
        if (offset > bytes.size() || length > bytes.size() - offset) {
            return damaged(tag, "is cut short");
        }
        if (checksum_of(tag, bytes.substr(offset, length)) != word_at(record, 4)) {
            return damaged(tag, "does not add up to its checksum");
        }
    }
    return {};
}

} // namespace thawslip::typeset
