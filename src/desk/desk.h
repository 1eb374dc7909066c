#pragma once

#include "desk/machine.h"
#include "http/message.h"

#include <memory>

namespace thawslip::desk {

/// The page for the cook: its files, and below /api/ what ROUTES.md says. Knows no socket, so a
/// test asks it as the server does. Answers come from one thread at a time, but for photographs,
/// which take their time.
class Desk {
public:
    explicit Desk(Machine machine);
    Desk(const Desk&) = delete;
    Desk& operator=(const Desk&) = delete;
    ~Desk();

    /// Every request has an answer; a guard has let it in.
    http::Response answer(const http::Request& request);

private:
    struct Inside;
    std::unique_ptr<Inside> inside_;
};

/// How many bytes the body of a request to this path may have.
std::size_t body_limit(const std::string& path);

} // namespace thawslip::desk
