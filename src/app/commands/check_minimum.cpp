#include "app/commands/check_text.h"
#include "kitchen/measures/hold_time.h"
#include "kitchen/measures/temperature_text.h"

#include <fmt/format.h>
#include <ostream>

namespace thawslip::app {
namespace {

/// "63 °C (145 °F), then 3 min of rest": the figure with the time that belongs to it.
std::string figure(const kitchen::SafeMinimum& minimum, const kitchen::UnitStyle& style) {
    auto text =
        kitchen::published_text(minimum.fahrenheit, kitchen::TemperatureUse::SafeMinimum, style);
    if (minimum.rest.count() > 0) {
        text += fmt::format(", then {} of rest", kitchen::hold_text(minimum.rest));
    }
    if (minimum.time_counts) {
        text += fmt::format(" for {}", kitchen::hold_text(*kitchen::needed_hold(minimum.celsius)));
    }
    return text;
}

std::string published(const kitchen::SafeMinimum& minimum, const kitchen::UnitStyle& style) {
    return fmt::format("{}, \"{}\" ({}; {})", figure(minimum, style), minimum.row, minimum.source,
                       minimum.status);
}

} // namespace

void show_minimum(const kitchen::PlannedPackage& planned, const kitchen::UnitStyle& style,
                  std::ostream& out) {
    if (!planned.minimum) {
        return;
    }
    out << fmt::format("    minimum: {}: this one counts\n",
                       published(planned.minimum->counts, style));
    for (const auto& other : planned.minimum->beside) {
        out << fmt::format("          beside it: {}\n", published(other, style));
    }
}

} // namespace thawslip::app
