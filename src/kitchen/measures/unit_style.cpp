#include "kitchen/measures/unit_style.h"

#include <fmt/format.h>

namespace thawslip::kitchen {

std::string in_style(const std::string& written, const std::string& turned, bool is_written_metric,
                     const UnitStyle& style) {
    if (turned.empty() || style.units == Units::Written ||
        (style.units == Units::Metric && is_written_metric) ||
        (style.units == Units::Us && !is_written_metric)) {
        return written;
    }
    return style.units == Units::Both ? fmt::format("{} ({})", written, turned) : turned;
}

} // namespace thawslip::kitchen
