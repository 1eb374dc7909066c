#pragma once

#include "app/commands.h"

#include <chrono>
#include <functional>
#include <string>

namespace thawslip::app {

/// How long the desk waits for the next request before it ends: a page is shut and forgotten, a
/// packing day with all its pauses is not.
inline constexpr std::chrono::minutes usual_idle_time{12 * 60};

/// What `desk` is asked.
struct DeskOptions {
    std::string place;         ///< folder, or file in one; empty: "Thawslip" in the documents
    int port = 0;              ///< 0: any that is free
    bool opens_browser = true; ///< where there is a screen
    std::chrono::milliseconds idle = usual_idle_time;
    std::string house;     ///< where phones of the house may ask, "192.168.1.20"; empty: nowhere
    bool encrypts = false; ///< what goes to phones, by a certificate of our own
    /// The settings as they are when it is called: their file may change while the desk runs.
    std::function<service::Outcome<Settings>()> settings = {};
    std::string settings_file; ///< which the page sets; empty: the usual one
};

/// Serves the page for the cook until a signal, the end of its terminal or an idle time ends it.
/// Where a desk of the same folder runs already, its page is shown instead.
/// \throws SystemFailure where the place, the port or the system does not allow it
ExitStatus desk(const DeskOptions& options, Console console);

} // namespace thawslip::app
