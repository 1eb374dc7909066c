#pragma once

#include "kitchen/settings.h"

#include <string>

namespace thawslip::kitchen {

/// How measures are written out.
struct UnitStyle {
    Units units = Units::Both;
    Measures measures = Measures::Us;
    char decimal_mark = '.';
};

/// What the style wants to see of a measure written in one system and turned into the other:
/// one of the two, or `written (turned)`. Where `turned` is empty, what was written.
std::string in_style(const std::string& written, const std::string& turned, bool is_written_metric,
                     const UnitStyle& style);

} // namespace thawslip::kitchen
