#include "render/pdf_fonts.h"

#include "render/deflate.h"
#include "render/number.h"
#include "render/to_unicode.h"

#include <cmath>
#include <fmt/format.h>

namespace thawslip::render {
namespace {

int thousandths(double em) {
    return static_cast<int>(std::lround(em * 1000.0));
}

void append_two_bytes(std::string& out, std::uint32_t value) {
    out += static_cast<char>((value >> 8U) & 0xFFU);
    out += static_cast<char>(value & 0xFFU);
}

} // namespace

PdfFonts::PdfFonts(const typeset::FontSet& fonts, PdfFile& file) : fonts_{fonts}, file_{file} {
    used_.resize(fonts.faces.size());
}

std::uint16_t PdfFonts::code_of(typeset::FaceId face, std::uint32_t glyph, std::string_view text) {
    auto& used = used_[face];
    const auto [known, is_new] =
        used.codes.emplace(glyph, static_cast<std::uint16_t>(used.glyphs.size() + 1));
    if (is_new) {
        if (used.glyphs.empty()) {
            used.font = file_.reserve();
        }
        used.glyphs.push_back(glyph);
        used.texts.emplace_back(text);
    } else if (used.texts[known->second - 1U].empty()) {
        used.texts[known->second - 1U] = text;
    }
    return known->second;
}

int PdfFonts::width_of(typeset::FaceId face, std::uint32_t glyph) const {
    const auto& f = fonts_.faces[face];
    return thousandths(static_cast<double>(f.advance(glyph)) / f.units_per_em());
}

void PdfFonts::write() {
    for (std::size_t face = 0; face < used_.size(); ++face) {
        if (!used_[face].glyphs.empty()) {
            write_face(static_cast<typeset::FaceId>(face));
        }
    }
}

/// Six capitals and a plus sign before the name tell a subset (ISO 32000-1, 9.6.4). They come
/// from the subset's bytes, so that two documents with other glyphs never share a name.
std::string PdfFonts::tagged_name(typeset::FaceId face, std::string_view program) const {
    std::uint32_t sum = crc32(0, program);
    std::string tag;
    for (int i = 0; i < 6; ++i) {
        tag += static_cast<char>('A' + sum % 26);
        sum /= 26;
    }
    return tag + "+" + fonts_.faces[face].postscript_name();
}

void PdfFonts::write_face(typeset::FaceId face) {
    const auto& used = used_[face];
    auto subset = fonts_.faces[face].subset(used.glyphs);
    if (!subset) {
        throw PdfError{subset.fault()};
    }
    const auto name = tagged_name(face, subset.value().bytes);
    const auto cid_font = write_cid_font(face, name, subset.value());
    const auto to_unicode = write_packed(to_unicode_cmap(used.texts), file_.dictionary());
    auto font = file_.dictionary();
    font.name("Type", "Font").name("Subtype", "Type0").name("BaseFont", name.c_str());
    font.name("Encoding", "Identity-H").reference("ToUnicode", to_unicode);
    font.array("DescendantFonts").reference(cid_font);
    file_.write(used.font, font);
}

Reference PdfFonts::write_packed(std::string_view bytes, const Dictionary& dictionary) {
    const auto reference = file_.reserve();
    file_.write_stream(reference, dictionary, deflater_.pack(bytes), PdfFile::Packing::Deflated);
    return reference;
}

Reference PdfFonts::write_cid_font(typeset::FaceId face, const std::string& name,
                                   const typeset::Subset& program) {
    std::string glyph_map(2, '\0'); // code 0 is .notdef
    for (const auto glyph : program.new_ids) {
        append_two_bytes(glyph_map, glyph);
    }
    std::vector<int> widths;
    for (const auto glyph : used_[face].glyphs) {
        widths.push_back(width_of(face, glyph));
    }
    auto cid = file_.dictionary();
    cid.name("Type", "Font").name("Subtype", "CIDFontType2").name("BaseFont", name.c_str());
    auto system = cid.dictionary("CIDSystemInfo");
    system.ascii("Registry", "Adobe").ascii("Ordering", "Identity").number("Supplement", 0);
    cid.reference("FontDescriptor", write_descriptor(face, name, program.bytes));
    cid.reference("CIDToGIDMap", write_packed(glyph_map, file_.dictionary()));
    cid.array("W").number(1).numbers(widths);
    const auto reference = file_.reserve();
    file_.write(reference, cid);
    return reference;
}

Reference PdfFonts::write_descriptor(typeset::FaceId face, const std::string& name,
                                     const std::string& program) {
    const auto& metrics = fonts_.faces[face].metrics();
    auto stream = file_.dictionary();
    stream.number("Length1", static_cast<int>(program.size()));
    const auto font_file = write_packed(program, stream);

    constexpr int symbolic = 4; // ISO 32000-1, Table 123: outside the standard Latin set
    const auto descriptor = file_.reserve();
    auto object = file_.dictionary();
    object.name("Type", "FontDescriptor").name("FontName", name.c_str());
    object.number("Flags", symbolic).number("ItalicAngle", 0);
    object.number("Ascent", thousandths(metrics.ascent));
    object.number("Descent", -thousandths(metrics.descent));
    object.number("CapHeight", thousandths(metrics.cap_height));
    object.number("XHeight", thousandths(metrics.x_height));
    object.number("StemV", 90); // of a regular weight: only asked for when a face is missing
    object.array("FontBBox")
        .number(-500)
        .number(-thousandths(metrics.descent))
        .number(1500)
        .number(thousandths(metrics.ascent));
    object.reference("FontFile2", font_file);
    file_.write(descriptor, object);
    return descriptor;
}

} // namespace thawslip::render
