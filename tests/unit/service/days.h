#pragma once

#include "service/days.h"

#include <doctest/doctest.h>

namespace thawslip::test_support {

/// The packages of a day that is described by `text`, below its first lines.
inline std::vector<kitchen::PlannedPackage> packages_of(const std::string& text) {
    const auto days = service::plan_days({{"day.toml", "[day]\nmade = 2026-10-17\n" + text}},
                                         service::Settings{});
    for (const auto& diagnostic : days.diagnostics) {
        INFO(to_text(diagnostic));
        CHECK(diagnostic.severity != Severity::Error);
    }
    REQUIRE(days.plans.size() == 1);
    return days.plans.front().packages;
}

/// A stew that thaws for a day and more, and a gratin that is cooked from frozen.
inline const std::string stew = "[[package]]\ndish = \"Barley stew\"\nservings = 4\n"
                                "food = \"soup or stew\"\nuse_by = 2026-12-10\n"
                                "weight = \"1.5 kg\"\nthickness = \"35 mm\"\n"
                                "thaw.method = \"refrigerator\"\n"
                                "cook = {in = \"pot\", time = \"30 min\", until = \"74 °C\"}\n";
inline const std::string gratin = "[[package]]\ndish = \"Celeriac gratin\"\nservings = 2\n"
                                  "food = \"cooked vegetables\"\nuse_by = 2026-12-20\n"
                                  "thaw.method = \"from frozen\"\n"
                                  "cook = {in = \"oven\", time = \"50 min\", until = \"74 °C\"}\n";

} // namespace thawslip::test_support
