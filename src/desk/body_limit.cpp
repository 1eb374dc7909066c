#include "desk/desk.h"

namespace thawslip::desk {

std::size_t body_limit(const std::string& path) {
    constexpr std::size_t kilobyte = 1U << 10U;
    constexpr std::size_t megabyte = kilobyte << 10U;
    if (path == "/api/read") {
        return 8 * megabyte; // a photograph
    }
    // A day's text as JSON may double in size, and an edit comes with it.
    const bool has_text = path == "/api/check" || path == "/api/edit" || path == "/api/sheet" ||
                          path.starts_with("/api/day/") || path.starts_with("/api/draft/");
    return has_text ? 2 * megabyte + 64 * kilobyte : 64 * kilobyte;
}

} // namespace thawslip::desk
