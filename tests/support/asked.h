#pragma once

#include "desk/desk.h"
#include "json/value.h"

#include <string>

namespace thawslip::test_support {

/// A request of the page, as it comes in from the server.
inline http::Request request(http::Method method, const std::string& path,
                             const std::string& body = {}) {
    http::Request asked;
    asked.method = method;
    asked.path = path;
    asked.body = body;
    return asked;
}

inline http::Response get(desk::Desk& desk, const std::string& path) {
    return desk.answer(request(http::Method::Get, path));
}

inline http::Response post(desk::Desk& desk, const std::string& path, const json::Json& body) {
    return desk.answer(request(http::Method::Post, path, body.dump()));
}

inline http::Response put(desk::Desk& desk, const std::string& path, const json::Json& body,
                          const std::string& if_match = {}) {
    auto asked = request(http::Method::Put, path, body.dump());
    if (!if_match.empty()) {
        asked.headers["if-match"] = if_match;
    }
    return desk.answer(asked);
}

/// What an answer says, as JSON.
inline json::Json said(const http::Response& response) {
    return json::parsed(response.body);
}

} // namespace thawslip::test_support
