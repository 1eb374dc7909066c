#include "layout/files/area_map.h"

#include "base/list.h"

#include <algorithm>
#include <fmt/format.h>
#include <map>

namespace thawslip::layout {
namespace {

struct Cell {
    std::string name;
    std::size_t offset = 0;
};

std::vector<Cell> cells_of(const std::string& line) {
    std::vector<Cell> cells;
    std::size_t at = 0;
    while ((at = line.find_first_not_of(" \t", at)) != std::string::npos) {
        const auto end = std::min(line.find_first_of(" \t", at), line.size());
        cells.push_back({line.substr(at, end - at), at});
        at = end;
    }
    return cells;
}

using Rows = std::vector<std::vector<Cell>>;

std::vector<AreaMapFault> uneven_rows(const Rows& rows) {
    std::vector<AreaMapFault> faults;
    for (std::size_t r = 0; r < rows.size(); ++r) {
        if (rows[r].size() != rows.front().size() || rows[r].empty()) {
            faults.push_back({r, 0,
                              fmt::format("this row has {} names, the first row has {}",
                                          rows[r].size(), rows.front().size()),
                              "give every row as many names; \".\" is an empty place"});
        }
    }
    return faults;
}

/// The smallest rectangle around all cells of one name.
MappedArea bounds_of(const std::string& name, const Rows& rows) {
    int top = -1;
    int bottom = -1;
    int left = -1;
    int right = -1;
    for (std::size_t r = 0; r < rows.size(); ++r) {
        for (std::size_t c = 0; c < rows[r].size(); ++c) {
            if (rows[r][c].name != name) {
                continue;
            }
            const int row = static_cast<int>(r);
            const int column = static_cast<int>(c);
            top = top < 0 ? row : top;
            bottom = row;
            left = left < 0 ? column : std::min(left, column);
            right = std::max(right, column);
        }
    }
    return {name, {top, left, bottom - top + 1, right - left + 1}};
}

/// The first cell inside the bounds that holds another name; then the area is no rectangle.
void refuse_ragged(const MappedArea& area, const Rows& rows, std::vector<AreaMapFault>& faults) {
    const auto& [top, left, height, width] = area.grid;
    for (int r = top; r < top + height; ++r) {
        for (int c = left; c < left + width; ++c) {
            const auto& cell = rows[static_cast<std::size_t>(r)][static_cast<std::size_t>(c)];
            if (cell.name != area.name) {
                faults.push_back(
                    {static_cast<std::size_t>(r), cell.offset,
                     fmt::format("area \"{}\" is no rectangle: \"{}\" stands inside it", area.name,
                                 cell.name),
                     "an area's places must fill a rectangle without holes"});
                return;
            }
        }
    }
}

} // namespace

Result<AreaMap, std::vector<AreaMapFault>> read_area_map(const std::vector<std::string>& lines) {
    const Rows rows = mapped(lines, cells_of);
    if (rows.empty()) {
        return Failure{std::vector<AreaMapFault>{{0, 0, "the picture has no rows", ""}}};
    }
    auto faults = uneven_rows(rows);
    if (!faults.empty()) {
        return Failure{std::move(faults)};
    }
    AreaMap picture{static_cast<int>(rows.size()), static_cast<int>(rows.front().size()), {}};
    for (const auto& row : rows) {
        for (const auto& cell : row) {
            const bool known = std::ranges::find(picture.areas, cell.name, &MappedArea::name) !=
                               picture.areas.end();
            if (cell.name == "." || known) {
                continue;
            }
            picture.areas.push_back(bounds_of(cell.name, rows));
            refuse_ragged(picture.areas.back(), rows, faults);
        }
    }
    if (!faults.empty()) {
        return Failure{std::move(faults)};
    }
    return picture;
}

} // namespace thawslip::layout
