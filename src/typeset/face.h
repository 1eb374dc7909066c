#pragma once

#include "base/result.h"

#include <cstdint>
#include <memory>
#include <span>
#include <string>
#include <vector>

namespace thawslip::typeset {

/// Measures of a face, in em (1 em = the type size). Ascent and descent are both positive.
struct FaceMetrics {
    double ascent = 0.0;
    double descent = 0.0;
    double x_height = 0.0;   ///< of the drawn "x": laws measure ink, not what the file claims
    double cap_height = 0.0; ///< of the drawn "H"
};

/// One straight or curved piece of a glyph's outline, in em, y **up** from the baseline. TrueType
/// knows no curve of a higher degree (OpenType 1.9, "glyf").
struct OutlinePiece {
    enum class Kind { MoveTo, LineTo, QuadraticTo, Close };
    Kind kind = Kind::MoveTo;
    double x[2] = {}; ///< the control point, then the end point; as many as the kind needs
    double y[2] = {};
};

/// A font file made of some glyphs of another.
struct Subset {
    std::string bytes;                  ///< the file: head, hhea, hmtx, maxp, loca and glyf
    std::vector<std::uint32_t> new_ids; ///< what each glyph is called there, in the order asked
};

/// One font file, opened. Cheap to copy: copies share the file's bytes, which never change.
/// Safe to read from several threads.
class Face {
public:
    /// Reads a TrueType file.
    /// \returns the face, or words that say what is wrong with the file
    static Result<Face, std::string> load(const std::string& path);

    const std::string& path() const;
    std::string_view bytes() const; ///< all of the file
    /// "ClearSans-Bold": printable ASCII without spaces or delimiters, so that it may stand in a
    /// PDF as it is. Never empty.
    const std::string& postscript_name() const;
    int units_per_em() const;
    const FaceMetrics& metrics() const;

    /// The glyph for a character, 0 when the face has none.
    std::uint32_t glyph_of(char32_t character) const;
    /// Advance width in font units, unhinted. 0 for a glyph that the face does not have.
    int advance(std::uint32_t glyph) const;
    /// Closed contours in drawing order, each led back to its start by a piece before it is closed;
    /// empty for a glyph without ink.
    std::vector<OutlinePiece> outline(std::uint32_t glyph) const;

    /// A TrueType file that holds only `glyphs` (in any order, repeated or not) with .notdef as
    /// 0, numbered again: what a CIDFontType2 with an Identity map needs (ISO 32000-1, 9.7.4.2)
    /// and nothing else. Parts of composites come along at any depth, so new numbers are not
    /// simply counted up: Subset::new_ids says them. The same glyphs give the same bytes.
    /// \returns the file, or words that say why it could not be made
    Result<Subset, std::string> subset(std::span<const std::uint32_t> glyphs) const;

    struct Data;
    const Data& data() const { return *data_; } ///< for this folder only

private:
    explicit Face(std::shared_ptr<const Data> data) : data_{std::move(data)} {}
    std::shared_ptr<const Data> data_;
};

enum class Weight { Regular, Medium, Bold };

/// Which face: its place in FontSet::faces.
using FaceId = std::uint16_t;

/// The faces of a run of prints: for each weight a chain in which the first face that has a
/// character gives its glyph.
struct FontSet {
    std::vector<Face> faces;
    std::vector<FaceId> regular;
    std::vector<FaceId> medium;
    std::vector<FaceId> bold;

    const std::vector<FaceId>& chain(Weight weight) const;
    /// Metrics of the first face of the chain: what legal x-heights are measured by.
    const FaceMetrics& metrics(Weight weight) const;
};

} // namespace thawslip::typeset
