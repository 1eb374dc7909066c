#include "layout/large_print.h"

#include <algorithm>

namespace thawslip::layout {
Layout in_large_print(Layout layout) {
    layout.large_print = true;
    for (auto& area : layout.areas) {
        if (auto* months = std::get_if<MonthsArea>(&area.kind)) {
            months->size = large_print_size;
        }
        if (auto* words = text_of(area)) {
            auto& x = words->x_height;
            x.smallest = x.smallest * large_print_size;
            x.comfortable = x.comfortable * large_print_size;
            x.largest = std::max(x.largest, x.comfortable);
            words->strips = words->strips * (words->table.empty() ? 1.0 : large_print_size);
        }
    }
    return layout;
}

} // namespace thawslip::layout
