#pragma once

#include "app/files/settings_file.h"
#include "desk/changes.h"
#include "service/messages.h"

#include <functional>
#include <memory>
#include <thread>

namespace thawslip::app {

/// Watches the archive for all pages of a desk, in one thread of its own: says that it became
/// another, whoever did it, and where it is on a server, brings this station's file and the server
/// together as soon as either has something new, so that it is here before a page asks. Looks only
/// while somebody listens, or once where the desk itself wrote. What goes wrong is said to whoever
/// asks for bags, and tried again.
class Watching {
public:
    using SettingsNow = std::function<service::Outcome<Settings>()>;

    /// \param changes must outlive it
    Watching(SettingsNow settings, desk::Changes& changes);
    Watching(const Watching&) = delete;
    Watching& operator=(const Watching&) = delete;
    ~Watching();

private:
    struct Watched;
    void run();
    bool find_archive();
    void look(desk::Changes::Cause cause);
    void look_at_server(desk::Changes::Cause cause, bool is_new);
    void exchange();

    SettingsNow settings_;
    desk::Changes& changes_;
    std::unique_ptr<Watched> watched_;
    std::thread thread_;
};

} // namespace thawslip::app
