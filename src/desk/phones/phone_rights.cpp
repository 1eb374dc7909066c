#include "desk/phones/phone_rights.h"

#include "json/value.h"

#include <algorithm>
#include <array>
#include <string_view>

namespace thawslip::desk {
namespace {

using json::Json;

bool any(const Json&) {
    return true;
}

bool has(const Json& body, const char* key) {
    const auto found = body.find(key);
    return found != body.end() && !found->is_null();
}

/// A day's file is nothing for a phone; the bags of it are.
bool names_no_day(const Json& body) {
    return body.is_object() && !has(body, "number");
}

bool is_out_or_eaten(const Json& body) {
    if (!body.is_object() || has(body, "place")) {
        return false;
    }
    const auto state = body.find("state");
    return state != body.end() && (*state == "out" || *state == "eaten");
}

struct Right {
    http::Method method;
    std::string_view path;
    bool (*allows)(const Json& body);
};

// What is not here is refused.
constexpr std::array rights = {
    Right{http::Method::Get, "/api/state", any},
    Right{http::Method::Get, "/api/changes", any},
    Right{http::Method::Post, "/api/read", any},
    Right{http::Method::Post, "/api/plan", names_no_day},
    Right{http::Method::Post, "/api/freezer", any},
    Right{http::Method::Post, "/api/freezer/next", any},
    Right{http::Method::Post, "/api/freezer/history", any},
    Right{http::Method::Post, "/api/freezer/note", is_out_or_eaten},
};

/// Read only where it is asked for: a photograph is no JSON.
bool allows(const Right& right, const std::string& body) {
    return right.allows == any || right.allows(json::parsed(body));
}

} // namespace

bool may_phone_ask(const http::Request& request) {
    return std::any_of(rights.begin(), rights.end(), [&](const Right& right) {
        return right.method == request.method && right.path == request.path &&
               allows(right, request.body);
    });
}

} // namespace thawslip::desk
