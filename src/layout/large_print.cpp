#include "layout/large_print.h"

#include <algorithm>

namespace thawslip::layout {
Layout in_large_print(Layout layout) {
    for (auto& area : layout.areas) {
        if (auto* months = std::get_if<MonthsArea>(&area.kind)) {
            months->size = large_print_size;
        }
        if (auto* words = text_of(area)) {
            auto& x = words->x_height;
            x.smallest = x.smallest * large_print_size;
            x.comfortable = x.comfortable * large_print_size;
            x.largest = std::max(x.largest, x.comfortable);
        }
    }
    return layout;
}

} // namespace thawslip::layout
