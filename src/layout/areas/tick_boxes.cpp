#include "layout/areas/tick_boxes.h"

#include <algorithm>
#include <cmath>

namespace thawslip::layout {

double widest_tick_box(const PreparedEntry& entry) {
    double widest = 0.0;
    for (const auto& words : entry.boxes) {
        widest = std::max(widest, tick_box_text + words.natural_width());
    }
    return widest;
}

TickBoxes tick_boxes(const PreparedEntry& entry, double width) {
    constexpr double hair = 1e-9;
    const auto count = static_cast<int>(entry.boxes.size());
    if (count == 0) {
        return {};
    }
    const double pitch = widest_tick_box(entry) + tick_box_gap;
    const double room = std::floor((width + tick_box_gap) / pitch + hair);
    const int in_line = static_cast<int>(std::clamp(room, 1.0, static_cast<double>(count)));
    return {pitch, in_line, (count + in_line - 1) / in_line};
}

double tick_boxes_width(const PreparedEntry& entry) {
    if (entry.boxes.empty()) {
        return 0.0;
    }
    const double pitch = widest_tick_box(entry) + tick_box_gap;
    return pitch * static_cast<double>(entry.boxes.size()) - tick_box_gap;
}

} // namespace thawslip::layout
