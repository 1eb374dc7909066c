#pragma once

#include "kitchen/measures/quantity.h"
#include "kitchen/settings.h"

#include <map>
#include <string>

namespace thawslip::kitchen {

/// What one of a unit and several of it are called: "cup", "cups".
struct UnitName {
    std::string one;
    std::string several;
};

/// How measures are written out.
struct UnitStyle {
    Units units = Units::Both;
    Measures measures = Measures::Us;
    char decimal_mark = '.';
    std::map<Unit, UnitName> names = {}; ///< where a language has its own; else English symbols
};

/// What the style wants to see of a measure written in one system and converted to the other:
/// one of the two, or `written (turned)`. Where `turned` is empty, what was written.
std::string in_style(const std::string& written, const std::string& turned, bool is_written_metric,
                     const UnitStyle& style);

} // namespace thawslip::kitchen
