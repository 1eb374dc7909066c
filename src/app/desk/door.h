#pragma once

#include "desk/desk.h"
#include "http/guard.h"

#include <string>

namespace thawslip::app {

/// What stands before the desk: says who is let in, and gives the key of this run to who has a code
/// for it (app/desk/once_code.h).
class Door {
public:
    /// \param codes the folder of the codes
    Door(desk::Desk& desk, std::string key, std::string codes);

    http::Guard guard() const;
    /// Called from several threads at once, with what the guard lets in.
    http::Response answer(const http::Request& request) const;

private:
    http::Response key_for(const http::Request& request) const;

    desk::Desk& desk_;
    std::string key_;
    std::string codes_;
};

} // namespace thawslip::app
