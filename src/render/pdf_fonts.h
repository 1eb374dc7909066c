#pragma once

#include "render/deflate.h"
#include "render/pdf_file.h"
#include "typeset/glyph_run.h"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::render {

/// A glyph as the page's text names it.
struct GlyphCode {
    std::uint16_t code = 0; ///< two bytes, big end first (Identity-H)
    int width = 0;          ///< how far a reader moves on after it: thousandths of an em
};

/// The glyphs that a document has used so far, and the fonts made of them in the end.
///
/// A code (PDF's CID) stands for a glyph *and* the text it spells, counted up from 1 in the order
/// of first use. So pages can be written before the fonts are known; and a glyph that spells two
/// texts (Ω as a letter and as ohm) copies and searches as the right one each time.
class PdfFonts {
public:
    /// \pre `fonts` outlives this
    explicit PdfFonts(const typeset::FontSet& fonts);

    /// \throws PdfError past 65,535 codes in one face
    GlyphCode code(typeset::FaceId face, std::uint32_t glyph, std::string_view text);

    /// Writes the fonts used: Type0 over CIDFontType2, cut down to the glyphs used, embedded, with
    /// their texts (ISO 32000-1, 9.7 "Composite Fonts"). Adds them to `resources` under the names
    /// that resource_name() gives.
    void write(PdfFile& file, Deflater& deflater, Dictionary resources) const;

    static std::string resource_name(typeset::FaceId face);

private:
    struct Code {
        std::uint32_t glyph = 0;
        int width = 0;
        std::uint16_t next = 0; ///< code of the same glyph for another text; 0: none
    };
    struct Used {
        std::vector<Code> codes;                   ///< of code 1, 2, …
        std::vector<std::string> texts;            ///< of code 1, 2, …
        std::vector<std::uint16_t> first_by_glyph; ///< 0: the glyph has no code yet
    };
    class FontObjects;

    std::uint16_t add(typeset::FaceId face, std::uint32_t glyph, std::string_view text);

    const typeset::FontSet* fonts_;
    std::vector<Used> used_; ///< by face
};

} // namespace thawslip::render
