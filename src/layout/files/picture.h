#pragma once

#include "base/key_path.h"
#include "base/result.h"

#include <string>
#include <vector>

namespace thawslip::layout {

/// One named rectangle of a picture, in cells counted from 0.
struct PictureArea {
    std::string name;
    int row = 0;
    int column = 0;
    int rows = 1;
    int columns = 1;
};

struct Picture {
    int rows = 0;
    int columns = 0;
    std::vector<PictureArea> areas; ///< in reading order of their top left corners
};

/// What is wrong with a picture, and in which of its lines.
struct PictureFault {
    std::size_t line = 0;   ///< from 0
    std::size_t offset = 0; ///< byte of that line
    std::string message;
    std::string hint;
};

/// Reads rows of area names, as W3C CSS Grid Layout Module Level 1, 7.3 draws template areas: the
/// same name in neighbouring cells is one area, which must be a rectangle; "." is an empty cell.
/// \returns the picture, or everything that is wrong with it
Result<Picture, std::vector<PictureFault>> read_picture(const std::vector<std::string>& lines);

} // namespace thawslip::layout
