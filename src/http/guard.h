#pragma once

#include "http/message.h"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace thawslip::http {

/// The header that a key travels in, by its name in small letters.
inline constexpr const char* key_header = "thawslip-key";

/// Whether a key is right.
using KeyTest = std::function<bool(const std::string& key)>;

/// Whether two keys are the same: as long for a wrong one as for a right one, so that the time
/// shows nothing of it.
bool is_same_key(const std::string& given, const std::string& key);

/// The test that one key passes.
KeyTest one_key(std::string key);

/// Whom a server answers: pages of its own, opened by who has a key, and nobody else.
struct Guard {
    /// "127.0.0.1:8123", which "localhost:8123" means too. Left empty, a server fills in where it
    /// listens.
    std::string host = {};
    KeyTest key = {}; ///< empty: none is asked for
    /// Paths below /api/ that are answered without the key: those that give it for a code.
    std::vector<std::string> without_key = {};
    bool from_private_network = false; ///< and from nowhere else
    bool is_encrypted = false;         ///< its pages are https
};

/// The answer to a request that must not be looked at: of a method that nothing here has (405),
/// another host's (421: a name that another site had lead here), another network's, site's or
/// port's (403), one that changes something and does not come from our own page (403), of a type
/// that a form of any page could send (415), without the key below /api/ (401). Looks at no body.
/// \returns nothing where it may be answered
std::optional<Response> refuse(const Request& request, const Guard& guard);

/// Where an answer goes.
enum class Way { ThisComputer, Network };

/// Adds what every answer says: that a browser must run, frame, keep and share nothing of it but
/// what comes from here (Content Security Policy Level 3; Trusted Types; Fetch,
/// Cross-Origin-Resource-Policy; HTML, Cross-Origin-Opener-Policy; Permissions Policy; RFC 9111,
/// section 5.2.2). What would share it with another site (Access-Control-…) is taken out.
/// Over a network without encryption no browser keeps other windows off, so that is not said there
/// (HTML, section 7.1.3: only of secure contexts).
Response guarded(Response response, const std::string& path, Way way = Way::ThisComputer);

} // namespace thawslip::http
