#pragma once

#include "base/progress.h"

#include <chrono>
#include <string>

namespace thawslip::app {

/// "reading descriptions: 120 of 1000, 240 a second, 4 s left".
std::string progress_text(const std::string& doing, std::size_t done, std::size_t of,
                          std::chrono::duration<double> elapsed);

/// A line on the terminal for what takes longer than a second, gone when it is done, or with the
/// last copy of what is returned. Empty where standard error is no terminal that can clear a line.
Progress progress_line(std::string doing);

} // namespace thawslip::app
