// When to thaw, start and add, for a table at a time of the kitchen clock.
//     dinner DAY.toml 2026-10-20T18:30
#include "day_text.h"

#include <iostream>
#include <thawslip/dinner.h>

int main(int argc, char** argv) {
    if (argc != 3) {
        return 2;
    }
    const auto kitchen = thawslip::open_kitchen(DATA_FOLDER);
    const auto dinner = thawslip::plan_dinner(*kitchen.value, {day_of(argv[1])},
                                              {"", argv[2], "2026-10-18T09:00", 120});
    show(dinner.messages);
    if (!dinner) {
        return 1;
    }
    for (const auto& step : dinner.value->steps) {
        std::cout << step.at << " " << step.words << "\n";
    }
}
