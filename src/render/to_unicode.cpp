#include "render/to_unicode.h"

#include "base/utf8.h"

#include <algorithm>
#include <vector>

namespace thawslip::render {
namespace {

constexpr std::size_t largest_block = 100;

constexpr std::string_view prologue = "/CIDInit /ProcSet findresource begin\n"
                                      "12 dict begin\n"
                                      "begincmap\n"
                                      "/CIDSystemInfo\n"
                                      "<< /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n"
                                      "/CMapName /Adobe-Identity-UCS def\n"
                                      "/CMapType 2 def\n"
                                      "1 begincodespacerange\n"
                                      "<0000> <ffff>\n"
                                      "endcodespacerange\n";

constexpr std::string_view epilogue = "endcmap\n"
                                      "CMapName currentdict /CMap defineresource pop\n"
                                      "end\n"
                                      "end\n";

void append_hex(std::string& out, std::uint32_t unit) {
    constexpr std::string_view digits = "0123456789abcdef";
    for (int shift = 12; shift >= 0; shift -= 4) {
        out += digits[(unit >> shift) & 0xf];
    }
}

/// The codes that have a text.
std::vector<std::size_t> codes_with_text(std::span<const std::string> texts) {
    std::vector<std::size_t> codes;
    for (std::size_t i = 0; i < texts.size(); ++i) {
        if (!texts[i].empty()) {
            codes.push_back(i + 1);
        }
    }
    return codes;
}

} // namespace

void append_utf16_hex(std::string& out, std::string_view utf8) {
    for (std::size_t at = 0; at < utf8.size();) {
        const std::uint32_t code_point = next_code_point(utf8, at);
        if (code_point < 0x10000) {
            append_hex(out, code_point);
        } else {
            append_hex(out, 0xd800 + ((code_point - 0x10000) >> 10));
            append_hex(out, 0xdc00 + ((code_point - 0x10000) & 0x3ff));
        }
    }
}

std::string to_unicode_cmap(std::span<const std::string> texts) {
    const auto codes = codes_with_text(texts);
    std::string out{prologue};
    for (std::size_t begin = 0; begin < codes.size(); begin += largest_block) {
        const auto end = std::min(codes.size(), begin + largest_block);
        out += std::to_string(end - begin) + " beginbfchar\n";
        for (auto i = begin; i < end; ++i) {
            out += '<';
            append_hex(out, static_cast<std::uint32_t>(codes[i]));
            out += "> <";
            append_utf16_hex(out, texts[codes[i] - 1]);
            out += ">\n";
        }
        out += "endbfchar\n";
    }
    return out += epilogue;
}

} // namespace thawslip::render
