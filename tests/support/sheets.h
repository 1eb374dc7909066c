#pragma once

#include "code/capacity.h"
#include "code/draw.h"
#include "code/segments.h"
#include "layout/frame.h"
#include "layout/sheets/pen.h"
#include "support/shipped_fonts.h"

#include <array>
#include <stdexcept>
#include <string>
#include <utility>

namespace thawslip::test_support {

/// The smallest grid that carries `text`, at `level`, drawn at `top_left` in modules of `module`.
inline layout::ModuleGrid grid_of(const std::string& text, code::Level level, Point top_left,
                                  Length module) {
    for (int version = 1; version <= 40; ++version) {
        const auto cut = code::segment(text, code::group_of(version));
        if (std::cmp_less_equal(cut.bits, 8 * code::blocks_of(version, level).data_codewords())) {
            auto symbol = code::draw(cut.segments, version, level);
            return {top_left, module, symbol.side, std::move(symbol.dark)};
        }
    }
    throw std::runtime_error{"too long for one code: " + text};
}

struct Dish {
    const char* name;
    const char* body;  ///< some 50 words
    const char* plain; ///< what the code carries: some 180 characters
};

inline constexpr std::array dishes{
    Dish{"Squash and red lentil stew",
         "Made 17 Oct 2026. Best if used by 17 Dec 2026. Serves 6. Thaw in the refrigerator, 24 h "
         "before. At the start add 1 l vegetable stock; in the last 10 min 200 g baby spinach "
         "from the small bag. Slow cooker, low, 7–9 h, to 74 °C in the middle. Contains celery. "
         "Local food-safety rules come first.",
         "SQUASH AND RED LENTIL STEW\nUse by 2026-12-17. Thaw 24 h in the refrigerator. Start: 1 l "
         "vegetable stock. Last 10 min: 200 g baby spinach. Slow cooker, low, 7-9 h, to 74 C."},
    Dish{"Apple and sage pork shoulder",
         "Made 17 Oct 2026. Use by 28 Feb 2027. Serves 4. Thaw in the refrigerator, 36 h before. "
         "At the start add 300 ml dry cider; in the last 15 min 2 tbsp wholegrain mustard. Oven, "
         "150 °C, covered, 3–3½ h, to 82 °C in the middle. Rest for 10 min. Contains mustard. "
         "Local food-safety rules come first.",
         "APPLE AND SAGE PORK SHOULDER\nUse by 2027-02-28. Thaw 36 h in the refrigerator. Start: "
         "300 ml dry cider. Last 15 min: 2 tbsp mustard. Oven, 150 C, covered, 3-3 1/2 h, 82 C."},
    Dish{"Chestnut, kale and barley soup",
         "Made 18 Oct 2026. Best if used by 18 Jan 2027. Serves 5. Do not thaw: cook from frozen, "
         "about half as long again, never in a slow cooker. At the start add ½ l water; at "
         "serving 1½ tsp cider vinegar. Pot, 35–45 min, to 74 °C in the middle. Contains barley. "
         "Local food-safety rules come first.",
         "CHESTNUT, KALE AND BARLEY SOUP\nUse by 2027-01-18. Cook from frozen, half as long "
         "again. Start: 1/2 l water. Serving: 1 1/2 tsp cider vinegar. Pot, 35-45 min, to 74 C."},
    Dish{"Smoky bean and sausage bake",
         "Made 18 Oct 2026. Best if used by 18 Nov 2026. Serves 6. Thaw in cold water, changed "
         "every 30 min, and cook at once. Before baking add 150 g grated hard cheese and 80 g "
         "breadcrumbs. Oven, 190 °C, 40–50 min, to 74 °C in the middle. Contains milk, wheat. "
         "Local food-safety rules come first.",
         "SMOKY BEAN AND SAUSAGE BAKE\nUse by 2026-11-18. Thaw in cold water, cook at once. "
         "Before: 150 g hard cheese, 80 g breadcrumbs. Oven, 190 C, 40-50 min, to 74 C."},
};

/// A sheet of ten labels, 4 × 2 in on US Letter: five of each of two dishes, each label with its
/// own bag number and code.
inline layout::Frame label_sheet(const typeset::FontSet& fonts, int sheet) {
    layout::Frame frame;
    frame.sheet = {Length::inches(8.5), Length::inches(11.0)};
    layout::Pen pen{frame, fonts};
    for (int label = 0; label < 10; ++label) {
        const auto& dish = dishes[static_cast<std::size_t>(sheet * 2 + label / 5) % dishes.size()];
        const auto id = "Bag " + std::to_string(sheet * 10 + label + 1);
        const Point corner{Length::inches(0.15625 + 4.1875 * (label % 2)),
                           Length::inches(0.5 + 2.0 * (label / 2))};
        const auto at = [corner](double x, double y) {
            return corner + Point{Length::points(x), Length::points(y)};
        };
        pen.write(dish.name, at(10, 22), {Length::points(13.5), typeset::Weight::Bold});
        pen.write_paragraph(dish.body, at(10, 34), Length::points(165), {Length::points(7.25)});
        pen.write(id, at(10, 136), {Length::points(8), typeset::Weight::Medium});
        frame.items.push_back(layout::Rule{{at(10, 28), {Length::points(165), Length::points(1)}}});
        frame.items.push_back(grid_of(std::string{dish.plain} + ' ' + id, code::Level::Medium,
                                      at(190, 40), Length::points(1.68)));
    }
    return frame;
}

} // namespace thawslip::test_support
