#pragma once

#include "base/length.h"
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
    double x_height = 0.0;
    double cap_height = 0.0;
};

/// One straight or curved piece of a glyph's outline, in em, y **up** from the baseline.
struct OutlinePiece {
    enum class Kind { MoveTo, LineTo, QuadraticTo, CubicTo, Close };
    Kind kind = Kind::MoveTo;
    double x[3] = {}; ///< control points, then the end point; as many as the kind needs
    double y[3] = {};
};

/// One font file, opened. Cheap to copy: copies share the file's bytes, which never change.
/// Safe to read from several threads.
class Face {
public:
    /// \returns the face, or words that say what is wrong with the file
    static Result<Face, std::string> load(const std::string& path);

    const std::string& path() const;
    const std::string& postscript_name() const; ///< "ClearSans-Bold"
    int units_per_em() const;
    const FaceMetrics& metrics() const;

    /// The glyph for a character, 0 when the face has none.
    std::uint32_t glyph_of(char32_t character) const;
    /// Advance width in font units, unhinted.
    int advance(std::uint32_t glyph) const;
    std::vector<OutlinePiece> outline(std::uint32_t glyph) const;

    /// A TrueType file that holds only `glyphs` (and .notdef as 0), numbered anew: glyph
    /// `glyphs[i]` becomes i + 1. Composites are kept whole at any depth. Layout tables, names
    /// and hinting are dropped. The same glyphs give the same bytes.
    /// \returns the file's bytes, or words that say why it could not be made
    Result<std::string, std::string> subset(std::span<const std::uint32_t> glyphs) const;

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
