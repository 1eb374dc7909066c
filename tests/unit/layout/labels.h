#pragma once

#include "layout/arrange.h"
#include "layout/files/layout_file.h"
#include "layout/solve.h"
#include "support/shipped_fonts.h"
#include "wording/print.h"

#include <doctest/doctest.h>
#include <string>
#include <vector>

namespace thawslip::testing {

/// The shipped faces, opened once for all tests.
inline const typeset::FontSet& fonts() {
    static const auto set = test_support::shipped_fonts();
    return set;
}

/// A layout read from TOML, which must be right.
inline layout::Layout layout_from(const std::string& toml) {
    Diagnostics faults;
    const auto document = toml::parse(toml, "test.toml", faults);
    auto layout = layout::read_layout(document, "test", faults);
    for (const auto& fault : faults) {
        INFO(to_text(fault, toml));
    }
    REQUIRE(layout.has_value());
    return std::move(*layout);
}

inline wording::Field field(std::string name, std::vector<std::string> paragraphs) {
    wording::Field made{std::move(name), {}, {}};
    for (auto& text : paragraphs) {
        made.paragraphs.push_back({wording::Marker::None, 0, "", {{text, {}}}});
    }
    return made;
}

/// The words of a small label.
inline wording::Print small_label() {
    wording::Print print;
    print.dish = "Squash and red lentil stew";
    print.fields = {
        field("dish", {print.dish}),
        field("made", {"Made 17 Oct 2026"}),
        field("use-by", {"Best if used by 17 Dec 2026"}),
        field("thaw", {"Thaw in the refrigerator, a full day; 24 h for every 2 kg"}),
        field("finish", {"Add at the start: 1 l vegetable stock",
                         "Add last 10 min: 200 g baby spinach (small bag taped to this one)"}),
        field("cook", {"Cook slow cooker, low, 7–9 h, to 74 °C in the middle"}),
        field("note", {"Good with brown bread"}),
    };
    return print;
}

/// A plain layout for it: rows one below the other, dates side by side, the cooking optional.
inline const std::string small_layout = R"(
print = "bag label"
picture = ["dish dish", "made use-by", "thaw thaw", "finish finish", "cook cook", "note note"]
columns = ["content", "share"]
column_gap = "3 mm"
row_gap = "1 mm"
[area]
dish   = { words = "dish", weight = "bold", x_height = ["1.8 mm", "2.4 mm", "3.4 mm"] }
made   = { words = "made", x_height = ["1.2 mm", "1.5 mm", "1.9 mm"] }
use-by = { words = "use-by", x_height = ["1.2 mm", "1.5 mm", "1.9 mm"] }
thaw   = { words = "thaw", x_height = ["1.2 mm", "1.4 mm", "1.7 mm"] }
finish = { words = "finish", x_height = ["1.2 mm", "1.4 mm", "1.7 mm"] }
cook   = { words = "cook", x_height = ["1.2 mm", "1.4 mm", "1.7 mm"], drop = 1 }
note   = { words = "note", x_height = ["1.2 mm", "1.4 mm", "1.7 mm"] }
[rule]
dish = "0.8 pt"
)";

/// The print's areas, shaped.
inline layout::Contents shaped(const wording::Print& print, const layout::Layout& layout) {
    layout::Shaper shaper{fonts()};
    auto contents = layout::prepare(layout, print, shaper);
    REQUIRE(contents.ok());
    return std::move(contents).value();
}

} // namespace thawslip::testing
