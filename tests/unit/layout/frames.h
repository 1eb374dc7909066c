#pragma once

#include "layout/frame.h"

#include <algorithm>
#include <string>
#include <variant>
#include <vector>

namespace thawslip::layout {

/// All items of one kind, in drawing order.
template <class T>
std::vector<T> items_of(const Frame& frame) {
    std::vector<T> found;
    for (const auto& item : frame.items) {
        if (const T* one = std::get_if<T>(&item)) {
            found.push_back(*one);
        }
    }
    return found;
}

/// The words of a frame, a line of the page each.
inline std::vector<std::string> lines_of(const Frame& frame) {
    std::vector<std::string> lines;
    Length baseline = Length::points(-1);
    for (const auto& text : items_of<Text>(frame)) {
        if (lines.empty() || text.baseline.y != baseline) {
            lines.emplace_back();
        }
        lines.back() += text.run.text;
        baseline = text.baseline.y;
    }
    return lines;
}

inline bool has_line(const Frame& frame, const std::string& line) {
    return std::ranges::count(lines_of(frame), line) > 0;
}

/// The box that an item's ink surely stays within: for text from ascent to descent.
inline Rect extent(const Item& item) {
    struct Visitor {
        Rect operator()(const Text& text) const {
            return {{text.baseline.x, text.baseline.y - text.size},
                    {text.size * text.run.width(), text.size * 1.3}};
        }
        Rect operator()(const Rule& rule) const { return rule.area; }
        Rect operator()(const Outline& outline) const {
            return outline.area.inset(outline.thickness / -2);
        }
        Rect operator()(const ModuleGrid& grid) const {
            return {grid.top_left, {grid.module * grid.side, grid.module * grid.side}};
        }
    };
    return std::visit(Visitor{}, item);
}

inline bool all_on_page(const Frame& frame) {
    return std::ranges::all_of(frame.items, [&](const Item& item) {
        return Rect{{}, frame.sheet}.contains(extent(item));
    });
}

} // namespace thawslip::layout
