#include "layout/large_print.h"

#include <algorithm>

namespace thawslip::layout {
namespace {

TextArea* words_of(Area& area) {
    if (auto* chart = std::get_if<ChartArea>(&area.kind)) {
        return &chart->text;
    }
    if (auto* write = std::get_if<WriteArea>(&area.kind)) {
        return &write->heading;
    }
    return std::get_if<TextArea>(&area.kind);
}

} // namespace

Layout in_large_print(Layout layout) {
    for (auto& area : layout.areas) {
        if (auto* months = std::get_if<MonthsArea>(&area.kind)) {
            months->size = large_print_size;
        }
        if (auto* words = words_of(area)) {
            auto& x = words->x_height;
            x.smallest = x.smallest * large_print_size;
            x.comfortable = x.comfortable * large_print_size;
            x.largest = std::max(x.largest, x.comfortable);
        }
    }
    return layout;
}

} // namespace thawslip::layout
