#pragma once

#include "base/text_file.h"

#include <string>

namespace thawslip::test_support {

/// A day of three dishes as a cook would write it.
inline const std::string orchard_day = R"(# put together by the orchard crew
[day]
made = 2026-10-17   # a Saturday
kitchen = "Orchard house"

[[package]]
dish = "Barley stew"
servings = 4
bags = 3
food = "soup or stew"
weight = "1.5 kg"
thickness = "35 mm"
contains = ["celery", "barley"]

[package.thaw]
method = "refrigerator"

[[package.finish]]
add = "1 l vegetable stock"
when = "at the start"

[package.cook]
in = "pot"
time = "30 min"
until = "74 °C"

[[package]]
dish = "Celeriac gratin"
servings = 2
food = "cooked vegetables"
thaw.method = "from frozen"
cook = {in = "oven", time = "50 min", until = "74 °C"}
)";

inline std::string sample(const std::string& name) {
    return read_text_file(THAWSLIP_SOURCE_DIR "/samples/" + name, 1U << 20U).value();
}

} // namespace thawslip::test_support
