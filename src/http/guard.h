#pragma once

#include "http/message.h"

#include <optional>
#include <string>

namespace thawslip::http {

/// Whom a server answers: pages of its own, opened by who has the key, and nobody else.
struct Guard {
    std::string host; ///< "127.0.0.1:8123"; "localhost:8123" is meant too
    std::string key;  ///< of this run; empty: none is asked for
};

/// The answer to a request that must not be looked at: another host's (421: a name that another
/// site had lead here), another site's or another port's (403), one that changes something and does
/// not come from our own page (403), of a type that a form of any page could send (415), without
/// the key below /api/ (401). \returns nothing where it may be answered
std::optional<Response> refuse(const Request& request, const Guard& guard);

/// Adds what every answer says: that a browser must run, frame, keep and share nothing of it but
/// what comes from here (Content Security Policy Level 3; Fetch, Cross-Origin-Resource-Policy).
Response guarded(Response response);

} // namespace thawslip::http
