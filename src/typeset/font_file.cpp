#include "typeset/font_file.h"

#include "typeset/font_tables.h"
#include "typeset/hb_handle.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <filesystem>
#include <fmt/format.h>
#include <fstream>
#include <string_view>

namespace thawslip::typeset {
namespace {

/// Far above any face for text; below what a mistaken path could make the program swallow.
constexpr std::uintmax_t largest_file = 64U << 20U;

struct Signature {
    std::string_view begins_with;
    std::string_view fault; ///< empty: TrueType outlines
};
// OpenType 1.9, "Organization of an OpenType font"; WOFF 1.0 and 2.0 (W3C).
constexpr std::array signatures{
    Signature{std::string_view{"\0\1\0\0", 4}, ""},
    Signature{"true", ""},
    Signature{"OTTO", "has PostScript (CFF) outlines; a face with TrueType outlines is needed"},
    Signature{"ttcf", "is a collection of faces; a file with one face is needed"},
    Signature{"wOFF", "is packed for the web (WOFF); an unpacked .ttf is needed"},
    Signature{"wOF2", "is packed for the web (WOFF2); an unpacked .ttf is needed"},
};

std::string fault_of_signature(std::string_view bytes) {
    const auto* match = std::find_if(signatures.begin(), signatures.end(), [bytes](auto& known) {
        return bytes.substr(0, 4) == known.begins_with;
    });
    return match == signatures.end() ? "is not a TrueType font file" : std::string{match->fault};
}

using Blob = HbHandle<hb_blob_t, hb_blob_destroy>;

std::string_view bytes_of(const Blob& blob) {
    unsigned length = 0;
    const char* bytes = hb_blob_get_data(blob.get(), &length);
    return {bytes, length};
}

unsigned big_endian(std::string_view bytes, std::size_t at) {
    return static_cast<unsigned char>(bytes[at]) * 256U + static_cast<unsigned char>(bytes[at + 1]);
}

/// OpenType 1.9, OS/2, fsType: bit 1 alone is "Restricted License embedding", bit 8 "No
/// subsetting", bit 9 "Bitmap embedding only". A subset is what we embed.
std::string fault_of_licence(hb_face_t* face) {
    const Blob table{hb_face_reference_table(face, HB_TAG('O', 'S', '/', '2'))};
    const auto bytes = bytes_of(table);
    constexpr std::size_t type_offset = 8;
    if (bytes.size() < type_offset + 2) {
        return {};
    }
    const unsigned type = big_endian(bytes, type_offset);
    if ((type & 0xFU) == 0x2U || (type & 0x300U) != 0) {
        return fmt::format("forbids embedding in documents (OS/2 fsType is 0x{:04X})", type);
    }
    return {};
}

} // namespace

Result<std::string, std::string> read_font_file(const std::string& path) {
    std::error_code error;
    if (!std::filesystem::is_regular_file(path, error)) {
        return Failure{std::string{std::filesystem::exists(path, error) ? "is not a plain file"
                                                                        : "there is no such file"}};
    }
    const auto size = std::filesystem::file_size(path, error);
    if (error || size > largest_file) {
        return Failure{std::string{"is larger than any face for text (over 64 MB)"}};
    }
    std::ifstream file{path, std::ios::binary};
    std::string bytes(static_cast<std::size_t>(size), '\0');
    if (!file.read(bytes.data(), static_cast<std::streamsize>(size))) {
        return Failure{std::string{"cannot be read"}};
    }
    if (auto fault = fault_of_signature(bytes); !fault.empty()) {
        return Failure{std::move(fault)};
    }
    if (auto fault = fault_of_tables(bytes); !fault.empty()) {
        return Failure{std::move(fault)};
    }
    return bytes;
}

std::string fault_of_face(hb_face_t* face) {
    constexpr std::array<const char*, 7> needed{"head", "hhea", "hmtx", "maxp",
                                                "loca", "glyf", "cmap"};
    for (const char* name : needed) {
        const Blob table{hb_face_reference_table(face, hb_tag_from_string(name, 4))};
        if (bytes_of(table).empty()) {
            return fmt::format("is damaged: its table \"{}\" is missing or cut short", name);
        }
    }
    const auto mapped = HbHandle<hb_set_t, hb_set_destroy>{hb_set_create()};
    hb_face_collect_unicodes(face, mapped.get());
    if (hb_face_get_glyph_count(face) == 0 || hb_set_is_empty(mapped.get()) != 0) {
        return "is damaged: it maps no character to a glyph";
    }
    return fault_of_licence(face);
}

} // namespace thawslip::typeset
