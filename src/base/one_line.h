#pragma once

#include "base/result.h"

#include <cstddef>
#include <string>
#include <string_view>

namespace thawslip {

struct TextFault {
    std::size_t offset = 0; ///< byte of the text where it is wrong
    std::string message;    ///< reads on after the key: `steps[2] ` + `is empty`
};

/// `text` without the white space around it, if it can be printed as one line: something to see
/// in it, at most `most` code points, no control characters or line breaks, nothing that turns
/// the direction of writing round. Offsets of faults count from the beginning of `text`.
Result<std::string, TextFault> one_line(std::string_view text, std::size_t most);

} // namespace thawslip
