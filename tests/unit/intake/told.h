#pragma once

#include "base/diagnostic.h"
#include "intake/day_file.h"
#include "intake/storage_file.h"
#include "kitchen/plan.h"

#include <optional>
#include <string>
#include <utility>

namespace thawslip::intake_test {

/// What becomes of a description, as a command would have it.
struct Outcome {
    toml::Document document;
    std::optional<kitchen::Day> day; ///< nothing where it must not be printed
    Diagnostics faults;              ///< in the order of the file
};

inline Outcome outcome_of(std::string text, const std::string& file = "day.toml") {
    static const auto table = intake::built_in_storage();
    Diagnostics faults;
    auto document = toml::parse(std::move(text), file, faults);
    auto reading = intake::read_day(document, faults);
    Diagnostics refusals;
    kitchen::plan(reading.day, table, refusals);
    intake::add_refusals(document, std::move(refusals), faults);
    sort_by_place(faults);
    auto day = reading.whole ? std::optional{std::move(reading.day)} : std::nullopt;
    return {std::move(document), std::move(day), std::move(faults)};
}

/// All that is told about a description, as the cook sees it.
inline std::string told(std::string text, const std::string& file = "day.toml") {
    const auto outcome = outcome_of(std::move(text), file);
    std::string all;
    for (const auto& fault : outcome.faults) {
        all += to_text(fault, outcome.document.text());
    }
    return all;
}

} // namespace thawslip::intake_test
