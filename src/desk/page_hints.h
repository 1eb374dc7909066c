#pragma once

#include <string>
#include <vector>

namespace thawslip::desk {

/// Hints as a page can use them. What names a command, which a cook at the page does not type, is
/// left out: of a hint's parts, between "; ", those that hold one, but for what stands before it as
/// a sentence of its own; and in an example the name of its option.
std::vector<std::string> page_hints(const std::vector<std::string>& hints);

} // namespace thawslip::desk
