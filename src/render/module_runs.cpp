#include "render/module_runs.h"

#include <cassert>

namespace thawslip::render {

std::vector<ModuleRun> module_runs(const layout::ModuleGrid& grid) {
    assert(grid.dark.size() == std::size_t{grid.side} * grid.side && "a grid is a square");
    std::vector<ModuleRun> runs;
    runs.reserve(grid.dark.size() / 3);
    auto dark = grid.dark.begin();
    for (int y = 0; y < grid.side; ++y) {
        int length = 0; // of the run that ends before x
        for (int x = 0; x < grid.side; ++x, ++dark) {
            if (*dark) {
                ++length;
            } else if (length > 0) {
                runs.push_back({x - length, y, length});
                length = 0;
            }
        }
        if (length > 0) {
            runs.push_back({grid.side - length, y, length});
        }
    }
    return runs;
}

} // namespace thawslip::render
