#pragma once

#include <string>
#include <sys/types.h>

namespace thawslip::app {

/// Whether somebody may sit before a screen (X11's DISPLAY, or WAYLAND_DISPLAY).
bool has_screen();

/// Has the desktop open a link with what the user browses by (freedesktop.org, xdg-utils,
/// xdg-open). \returns the process that does it; -1 where the desktop cannot
pid_t open_in_browser(const std::string& link);

} // namespace thawslip::app
