#pragma once

#include "layout/frame.h"

#include <vector>

namespace thawslip::render {

/// Dark modules that stand side by side in one row. Whole modules, x to the right and y down from
/// the grid's top left.
struct ModuleRun {
    int x = 0;
    int y = 0;
    int length = 0;
    friend bool operator==(const ModuleRun&, const ModuleRun&) = default;
};

/// The dark modules of a grid, row by row, as few runs as there can be. No two touch within a row.
///
/// Runs along rows alone pack smaller than rectangles over several rows, of which there are 15 %
/// fewer: the repeated row number costs next to nothing, an irregular height does.
/// \pre grid.dark holds side × side modules
std::vector<ModuleRun> module_runs(const layout::ModuleGrid& grid);

} // namespace thawslip::render
