#pragma once

#include "render/deflate.h"
#include "render/pdf_file.h"
#include "typeset/face.h"

#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::render {

/// The faces of one document: which glyphs are used, by which codes, standing for which text.
/// A glyph's code is its turn of first use, so pages can leave before the faces are known whole.
class PdfFonts {
public:
    PdfFonts(const typeset::FontSet& fonts, PdfFile& file);

    /// The two-byte code of a glyph, which stands for `text` (the first one told wins).
    std::uint16_t code_of(typeset::FaceId face, std::uint32_t glyph, std::string_view text);
    /// The width that the file tells for a glyph, in thousandths of an em.
    int width_of(typeset::FaceId face, std::uint32_t glyph) const;

    Reference reference(typeset::FaceId face) const { return used_[face].font; }

    /// Writes every face that was used, holding its used glyphs only.
    /// \throws PdfError when a face cannot be cut down
    void write();

private:
    struct Used {
        Reference font;
        std::map<std::uint32_t, std::uint16_t> codes;
        std::vector<std::uint32_t> glyphs; ///< by code, from 1
        std::vector<std::string> texts;    ///< the same
    };

    void write_face(typeset::FaceId face);
    Reference write_packed(std::string_view bytes, const Dictionary& dictionary);
    Reference write_cid_font(typeset::FaceId face, const std::string& name,
                             const typeset::Subset& program);
    Reference write_descriptor(typeset::FaceId face, const std::string& name,
                               const std::string& program);
    std::string tagged_name(typeset::FaceId face, std::string_view program) const;

    const typeset::FontSet& fonts_;
    PdfFile& file_;
    Deflater deflater_;
    std::vector<Used> used_;
};

} // namespace thawslip::render
