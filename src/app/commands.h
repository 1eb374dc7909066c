#pragma once

#include "app/exit_status.h"

#include <iosfwd>
#include <optional>
#include <string>
#include <vector>

namespace thawslip::app {

/// Where a command speaks: results in plain words to `out`, what went wrong to `err`.
struct Console {
    std::ostream& out;
    std::ostream& err;
};

/// What all printing commands take.
struct PrintOptions {
    std::vector<std::string> days;
    std::string output;
    std::string stock;  ///< name or file; empty: the one that fits the paper setting
    std::string layout; ///< name or file; empty: chosen by the cell's shape
    int first_cell = 1;
    std::vector<int> spoiled;
    double dots_per_inch = 300.0;
    bool small_modules = false; ///< allow code modules down to 0.33 mm
};

enum class CardKinds { Both, Finishing, CookDay };

ExitStatus new_day(const std::string& file, Console console);
ExitStatus labels(const PrintOptions& options, Console console);
ExitStatus cards(const PrintOptions& options, CardKinds kinds, Console console);
/// All that would be refused or cautioned. `options.output` is not used.
ExitStatus check(const PrintOptions& options, Console console);
/// What each label's code carries on the stock chosen. `options.output` is not used.
ExitStatus text(const PrintOptions& options, Console console);
ExitStatus stock_list(Console console);

} // namespace thawslip::app
