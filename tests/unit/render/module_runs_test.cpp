#include "render/module_runs.h"
#include "support/random.h"

#include <doctest/doctest.h>

using namespace thawslip;
using render::ModuleRun;

namespace {

layout::ModuleGrid grid(std::uint16_t side, const std::string& rows) {
    layout::ModuleGrid grid;
    grid.side = side;
    for (const char c : rows) {
        grid.dark.push_back(c == '#');
    }
    return grid;
}

} // namespace

TEST_CASE("dark modules side by side in a row are one run, and runs end with their row") {
    const auto runs = render::module_runs(grid(4, "#.##"
                                                  "...."
                                                  "####"
                                                  "#..#"));
    const std::vector<ModuleRun> expected = {{0, 0, 1}, {2, 0, 2}, {0, 2, 4}, {0, 3, 1}, {3, 3, 1}};
    CHECK(runs == expected);
}

TEST_CASE("an empty grid and a light one have no runs") {
    CHECK(render::module_runs(grid(0, "")).empty());
    CHECK(render::module_runs(grid(2, "....")).empty());
}

TEST_CASE("runs painted again are the grid, each module once, and no two touch in a row") {
    test_support::Random random{20};
    for (int round = 0; round < 200; ++round) {
        layout::ModuleGrid drawn;
        drawn.side = static_cast<std::uint16_t>(1 + random.below(60));
        const std::size_t side = drawn.side;
        drawn.dark.resize(side * side);
        for (std::size_t i = 0; i < drawn.dark.size(); ++i) {
            drawn.dark[i] = random.chance(2);
        }
        std::vector<bool> painted(drawn.dark.size());
        ModuleRun before{0, -1, 0};
        for (const auto& run : render::module_runs(drawn)) {
            CHECK((run.y > before.y || run.x > before.x + before.length));
            for (int x = run.x; x < run.x + run.length; ++x) {
                const auto module =
                    static_cast<std::size_t>(run.y) * side + static_cast<std::size_t>(x);
                REQUIRE(module < painted.size());
                CHECK_FALSE(painted[module]);
                painted[module] = true;
            }
            before = run;
        }
        CHECK(painted == drawn.dark);
    }
}
