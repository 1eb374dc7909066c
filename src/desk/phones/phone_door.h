#pragma once

#include "desk/desk.h"
#include "desk/phones/phones.h"
#include "http/guard.h"

namespace thawslip::desk {

/// What stands between the phones of a house and the desk: lets them in by a code, knows them by
/// their keys, and hands on what a phone may ask.
class PhoneDoor {
public:
    /// Both must outlive it.
    PhoneDoor(Desk& desk, Phones& phones) : desk_{desk}, phones_{phones} {}

    /// The guard of the server that phones ask.
    http::Guard guard() const;
    /// Called from several threads at once, with what the guard lets in.
    http::Response answer(const http::Request& request) const;

private:
    http::Response pair(const http::Request& request) const;
    http::Response state(const http::Request& request) const;

    Desk& desk_;
    Phones& phones_;
};

} // namespace thawslip::desk
