#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace thawslip {

/// `phrase` with `{0}`, `{1}`… replaced by `values`; a number beyond the values stays as it is
/// written.
std::string fill(std::string_view phrase, const std::vector<std::string>& values);

} // namespace thawslip
