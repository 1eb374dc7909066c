#pragma once

#include <string>
#include <vector>

namespace thawslip::app {

/// The words of a command line, with `--print office` become `--print=office`: the printer's name
/// may be left out, so the parser takes only what is joined to it. What follows `--print` is taken
/// for a printer unless it is an option or a day's description ("….toml").
std::vector<std::string> with_printers_joined(std::vector<std::string> words);

/// The words of a command line, with `--skip 3 4` become `--skip 3,4`, and the same for `--bag`
/// with ids among them: what follows is taken as long as it looks like a number, a range, or for
/// `--bag` an id.
std::vector<std::string> with_numbers_joined(std::vector<std::string> words);

} // namespace thawslip::app
