#pragma once

#include "code/read_picture.h"
#include "code/symbol.h"

#include <optional>
#include <string_view>

// Print quality by ISO/IEC 15415:2011 "Bar code symbol print quality test specification —
// Two-dimensional symbols", as far as it can be worked out from a picture of what will be printed.
//
// Thresholds: Cognex, "DataMan 475 Verifier Reference Manual", ISO/IEC 15415 grading parameters,
// 2020 (symbol contrast, modulation, unused error correction); Cognex, VisionPro help,
// CogIDProcessControlMetricsISO15415 (fixed pattern damage); Omron, "V440-F User Manual", ISO 15415
// grading (the overall grade is the lowest). How damage to each pattern is graded: ISO/IEC
// 18004:2015, annex G (from memory).
//
// A picture knows nothing of dot gain, gloss, frost or a curled bag: the grade is an upper bound of
// what a verifier would say about the label in the hand.
namespace thawslip::code {

enum class Grade { F, D, C, B, A };
char letter(Grade grade);

/// How much light the stock and the ink give back, 0 to 1, in the light that readers use (660 nm,
/// or white). Black toner on white paper when nothing is declared.
struct Reflectance {
    double paper = 0.85;
    double ink = 0.05;
};

struct Quality {
    double symbol_contrast = 0.0;         ///< lightest less darkest module, 0 to 1
    double modulation = 0.0;              ///< of the module that stands out least, 0 to 1
    double fixed_pattern_grade = 0.0;     ///< mean over the patterns, 0 to 4
    double unused_error_correction = 0.0; ///< of the block that is worst off, 0 to 1
    Grade contrast_grade = Grade::F;
    Grade modulation_grade = Grade::F;
    Grade fixed_pattern_damage_grade = Grade::F;
    Grade unused_error_correction_grade = Grade::F;
    Grade overall() const; ///< the lowest of the four
};

/// Grades a picture against the symbol that it should show. The picture holds the symbol and its
/// quiet zone and nothing else, in whole pixels a module, at least 6 (Omron: fewer are too few);
/// its white is the paper, its black the ink.
/// \returns nothing when the picture has another shape
std::optional<Quality> grade(const GreyPicture& picture, const Symbol& symbol,
                             const Reflectance& reflectance);

} // namespace thawslip::code
