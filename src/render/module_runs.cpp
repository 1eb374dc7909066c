#include "render/module_runs.h"

#include <algorithm>
#include <cassert>

namespace thawslip::render {

std::vector<ModuleRun> module_runs(const layout::ModuleGrid& grid) {
    assert(grid.dark.size() == std::size_t{grid.side} * grid.side && "a grid is a square");
    std::vector<ModuleRun> runs;
    runs.reserve(grid.dark.size() / 3);
    auto row = grid.dark.begin();
    for (int y = 0; y < grid.side; ++y, row += grid.side) {
        const auto end = row + grid.side;
        for (auto dark = std::find(row, end, true); dark != end;) {
            const auto light = std::find(dark, end, false);
            runs.push_back({static_cast<int>(dark - row), y, static_cast<int>(light - dark)});
            dark = std::find(light, end, true);
        }
    }
    return runs;
}

} // namespace thawslip::render
