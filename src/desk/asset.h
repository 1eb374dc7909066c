#pragma once

#include <span>
#include <string_view>

namespace thawslip::desk {

/// A file of the page.
struct Asset {
    std::string_view path; ///< "/style.css"
    std::string_view type; ///< its media type
    std::string_view bytes;
};

/// All of them: nothing else is ever sent as a file.
std::span<const Asset> assets();

} // namespace thawslip::desk
