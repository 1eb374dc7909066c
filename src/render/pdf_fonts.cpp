#include "render/pdf_fonts.h"

#include "render/ink.h"
#include "render/to_unicode.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <limits>

namespace thawslip::render {
namespace {

constexpr double thousandths = 1000.0;

int in_thousandths(double em) {
    return static_cast<int>(std::lround(em * thousandths));
}

/// Six letters that set subsets of the same face apart (ISO 32000-1, 9.6.4 "Font Subsets"); from
/// the subset itself, so that equal ones are named alike.
std::string subset_tag(std::string_view bytes) {
    auto rest = crc32(0, bytes);
    std::string tag;
    for (int i = 0; i < 6; ++i) {
        tag += static_cast<char>('A' + rest % 26);
        rest /= 26;
    }
    return tag;
}

} // namespace

/// The objects of one font, in the order in which they are written.
class PdfFonts::FontObjects {
public:
    FontObjects(const typeset::Face& face, const Used& used, PdfFile& file, Deflater& deflater);
    Reference write();

private:
    Reference write_font_file();
    Reference write_code_to_glyph();
    Reference write_descriptor(Reference font_file);
    Reference write_cid_font(Reference descriptor, Reference code_to_glyph);
    Reference write_to_unicode();
    Reference write_packed(OwnedDictionary dictionary, std::string_view bytes);

    const typeset::Face& face_;
    const Used& used_;
    PdfFile& file_;
    Deflater& deflater_;
    std::vector<std::uint32_t> glyphs_; ///< of code 1, 2, …
    typeset::Subset subset_;
    std::string name_;
};

PdfFonts::FontObjects::FontObjects(const typeset::Face& face, const Used& used, PdfFile& file,
                                   Deflater& deflater)
    : face_{face}, used_{used}, file_{file}, deflater_{deflater} {
    std::transform(used.codes.begin(), used.codes.end(), std::back_inserter(glyphs_),
                   [](const Code& code) { return code.glyph; });
    auto subset = face.subset(glyphs_);
    if (!subset) {
        throw PdfError("the PDF cannot be made: " + subset.fault());
    }
    subset_ = std::move(subset).value();
    name_ = subset_tag(subset_.bytes) + '+' + face.postscript_name();
}

Reference PdfFonts::FontObjects::write_packed(OwnedDictionary dictionary, std::string_view bytes) {
    const auto reference = file_.reserve();
    file_.write_stream(reference, dictionary, deflater_.pack(bytes), PdfFile::Packing::Deflated);
    return reference;
}

Reference PdfFonts::FontObjects::write_font_file() {
    auto dictionary = file_.dictionary();
    dictionary.number("Length1", static_cast<int>(subset_.bytes.size()));
    return write_packed(std::move(dictionary), subset_.bytes);
}

/// Two bytes a code, from code 0 on: the glyph's number in the font file.
Reference PdfFonts::FontObjects::write_code_to_glyph() {
    std::string map(2, '\0');
    for (const auto id : subset_.new_ids) {
        map += static_cast<char>(id >> 8);
        map += static_cast<char>(id & 0xff);
    }
    return write_packed(file_.dictionary(), map);
}

Reference PdfFonts::FontObjects::write_descriptor(Reference font_file) {
    // Flag 3, "symbolic", says that codes are the font's own (ISO 32000-1, Table 123).
    constexpr int symbolic = 4;
    const auto& metrics = face_.metrics();
    auto embedded = glyphs_;
    embedded.push_back(0); // .notdef is in every font
    const auto box = box_around(face_, embedded);
    auto descriptor = file_.dictionary();
    descriptor.name("Type", "FontDescriptor").name("FontName", name_.c_str());
    descriptor.number("Flags", symbolic).number("ItalicAngle", 0);
    descriptor.number("StemV", in_thousandths(stem_thickness(face_)));
    descriptor.number("Ascent", in_thousandths(metrics.ascent));
    descriptor.number("Descent", -in_thousandths(metrics.descent));
    descriptor.number("CapHeight", in_thousandths(metrics.cap_height));
    descriptor.number("XHeight", in_thousandths(metrics.x_height));
    descriptor.array("FontBBox")
        .number(static_cast<int>(std::floor(box.left * thousandths)))
        .number(static_cast<int>(std::floor(box.bottom * thousandths)))
        .number(static_cast<int>(std::ceil(box.right * thousandths)))
        .number(static_cast<int>(std::ceil(box.top * thousandths)));
    descriptor.reference("FontFile2", font_file);
    const auto reference = file_.reserve();
    file_.write(reference, descriptor);
    return reference;
}

Reference PdfFonts::FontObjects::write_cid_font(Reference descriptor, Reference code_to_glyph) {
    auto font = file_.dictionary();
    font.name("Type", "Font").name("Subtype", "CIDFontType2").name("BaseFont", name_.c_str());
    font.dictionary("CIDSystemInfo")
        .ascii("Registry", "Adobe")
        .ascii("Ordering", "Identity")
        .number("Supplement", 0);
    font.reference("FontDescriptor", descriptor).reference("CIDToGIDMap", code_to_glyph);
    std::vector<int> widths;
    std::transform(used_.codes.begin(), used_.codes.end(), std::back_inserter(widths),
                   [](const Code& code) { return code.width; });
    font.array("W").number(1).numbers(widths);
    const auto reference = file_.reserve();
    file_.write(reference, font);
    return reference;
}

Reference PdfFonts::FontObjects::write_to_unicode() {
    return write_packed(file_.dictionary(), to_unicode_cmap(used_.texts));
}

Reference PdfFonts::FontObjects::write() {
    const auto descriptor = write_descriptor(write_font_file());
    const auto cid_font = write_cid_font(descriptor, write_code_to_glyph());
    auto font = file_.dictionary();
    font.name("Type", "Font").name("Subtype", "Type0").name("BaseFont", name_.c_str());
    font.name("Encoding", "Identity-H").array("DescendantFonts").reference(cid_font);
    font.reference("ToUnicode", write_to_unicode());
    const auto reference = file_.reserve();
    file_.write(reference, font);
    return reference;
}

PdfFonts::PdfFonts(const typeset::FontSet& fonts) : fonts_{&fonts}, used_(fonts.faces.size()) {}

GlyphCode PdfFonts::code(typeset::FaceId face, std::uint32_t glyph, std::string_view text) {
    auto& used = used_.at(face);
    std::uint16_t code =
        glyph < used.first_by_glyph.size() ? used.first_by_glyph[glyph] : std::uint16_t{0};
    while (code != 0 && used.texts[code - 1U] != text) {
        code = used.codes[code - 1U].next;
    }
    if (code == 0) {
        code = add(face, glyph, text);
    }
    return {code, used.codes[code - 1U].width};
}

std::uint16_t PdfFonts::add(typeset::FaceId face, std::uint32_t glyph, std::string_view text) {
    auto& used = used_[face];
    if (used.codes.size() >= std::numeric_limits<std::uint16_t>::max()) {
        throw PdfError("the PDF cannot be made: more than 65535 different glyphs of one face");
    }
    if (used.first_by_glyph.size() <= glyph) {
        used.first_by_glyph.resize(glyph + 1);
    }
    const auto& source = fonts_->faces[face];
    const double width = static_cast<double>(source.advance(glyph)) / source.units_per_em();
    // Whole thousandths, since several readers cut off what is beyond; show_text() makes up for it.
    used.codes.push_back({glyph, in_thousandths(width), used.first_by_glyph[glyph]});
    used.texts.emplace_back(text);
    const auto code = static_cast<std::uint16_t>(used.codes.size());
    used.first_by_glyph[glyph] = code;
    return code;
}

std::string PdfFonts::resource_name(typeset::FaceId face) {
    return 'F' + std::to_string(face);
}

void PdfFonts::write(PdfFile& file, Deflater& deflater, Dictionary resources) const {
    auto fonts = resources.dictionary("Font");
    for (std::size_t face = 0; face < used_.size(); ++face) {
        if (used_[face].codes.empty()) {
            continue;
        }
        FontObjects objects{fonts_->faces[face], used_[face], file, deflater};
        const auto name = resource_name(static_cast<typeset::FaceId>(face));
        fonts.reference(name.c_str(), objects.write());
    }
}

} // namespace thawslip::render
