#pragma once

#include "base/result.h"
#include "layout/areas/area.h"

#include <string>
#include <vector>

namespace thawslip::layout {

/// One named rectangle of the picture.
struct MappedArea {
    std::string name;
    GridArea grid;
};

/// What a layout file's picture shows.
struct AreaMap {
    int rows = 0;
    int columns = 0;
    std::vector<MappedArea> areas; ///< in reading order of their top left corners
};

/// What is wrong with a picture, and in which of its lines.
struct AreaMapFault {
    std::size_t line = 0;   ///< from 0
    std::size_t offset = 0; ///< byte of that line
    std::string message;
    std::string hint;
};

/// Reads rows of area names, as W3C CSS Grid Layout Module Level 1, 7.3 draws template areas: the
/// same name in neighbouring cells is one area, which must be a rectangle; "." is an empty cell.
/// \returns the picture, or everything that is wrong with it
Result<AreaMap, std::vector<AreaMapFault>> read_area_map(const std::vector<std::string>& lines);

} // namespace thawslip::layout
