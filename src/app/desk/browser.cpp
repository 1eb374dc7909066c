#include "app/desk/browser.h"

#include "app/desk/child_process.h"

#include <cstdlib>

namespace thawslip::app {
namespace {

bool is_set(const char* variable) {
    const char* value = std::getenv(variable);
    return value != nullptr && value[0] != '\0';
}

} // namespace

bool has_screen() {
    return is_set("DISPLAY") || is_set("WAYLAND_DISPLAY");
}

pid_t open_in_browser(const std::string& link) {
    return start_program({"xdg-open", link});
}

} // namespace thawslip::app
