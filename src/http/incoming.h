#pragma once

#include "http/guard.h"
#include "http/limits.h"
#include "http/message.h"

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace thawslip::http {

/// How many bytes the body of a request may have, by its path.
using BodyLimit = std::function<std::size_t(const std::string& path)>;

/// The first part of a request, as it came.
struct Head {
    std::string method = {};
    std::string target = {};
    std::string version = {};
    std::vector<std::pair<std::string, std::string>> headers = {};
    std::string peer = {}; ///< who sent it
};

/// What is asked of requests before they are answered.
struct Terms {
    Guard guard = {};
    Limits limits = {};
    BodyLimit body_limit = {};
};

/// A request while it comes in.
struct Incoming {
    Request request = {};
    std::optional<Response> refused = {}; ///< what is answered in its stead
    std::size_t body_limit = 0;
    std::size_t length = 0; ///< of the body that has come so far
    bool is_over = false;   ///< refused, and no more of its body is to be read
};

/// Takes a head. What the protocol, a limit or the guard forbids is refused here, before any of the
/// body is kept.
Incoming take_head(const Head& head, const Terms& terms);

/// Takes a piece of the body: into the request, or, of a refused one, to nowhere.
void take_body(Incoming& incoming, std::string_view piece, const Limits& limits);

} // namespace thawslip::http
