#pragma once

#include "desk/session.h"
#include "http/message.h"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::desk {

/// A request, and what of its path stands for a route's "*".
struct Asked {
    const http::Request& request;
    std::string part = {};
};

/// How one kind of request is answered. Throws BadRequest (desk/body.h) for a request that the page
/// never sends.
struct Route {
    http::Method method = http::Method::Get;
    std::string_view path; ///< "/api/day/*"; the star is one part of the path
    http::Response (*answer)(Session& session, const Asked& asked) = nullptr;
    bool alone = true; ///< no other request is answered meanwhile
};

// The routes of ROUTES.md, section by section.
std::span<const Route> page_routes();
std::span<const Route> day_routes();
std::span<const Route> check_routes();
std::span<const Route> print_routes();
std::span<const Route> bag_routes();
std::span<const Route> freezer_routes();
std::span<const Route> plan_routes();
std::span<const Route> archive_routes();
std::span<const Route> change_routes();
std::span<const Route> phone_routes();
std::span<const Route> setup_routes();
/// All of them.
std::vector<Route> all_routes();

} // namespace thawslip::desk
