#pragma once

#include "layout/frame.h"

#include <utility>
#include <vector>

namespace thawslip::test_support {

inline layout::Frame sheet_with(std::vector<layout::Item> items) {
    using namespace literals;
    layout::Frame frame;
    frame.sheet = {4_in, 2_in};
    frame.items = std::move(items);
    return frame;
}

} // namespace thawslip::test_support
