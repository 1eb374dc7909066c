#include "http/guard.h"

#include "base/letters.h"
#include "base/split.h"
#include "http/address.h"
#include "http/refusal.h"

#include <algorithm>
#include <array>

namespace thawslip::http {
namespace {

constexpr std::string_view loopback = "127.0.0.1";

bool is_below_api(const std::string& path) {
    return path == "/api" || path.starts_with("/api/");
}

bool changes(Method method) {
    return method == Method::Post || method == Method::Put;
}

/// RFC 9110, section 15.5.6: whoever is refused a method is answered which there are.
std::optional<Response> refuse_method(const Request& request, const Guard&) {
    if (request.method != Method::Other) {
        return std::nullopt;
    }
    auto response = refusal(405, "this is asked for in another way");
    response.headers.emplace_back("Allow", "GET, HEAD, POST, PUT");
    return response;
}

/// A router may lead others here: what listens in a house is for the house.
std::optional<Response> refuse_network(const Request& request, const Guard& guard) {
    const bool is_ours = !guard.from_private_network || is_private_address(request.peer);
    return is_ours ? std::nullopt
                   : std::optional{refusal(403, "only computers of the same house are answered")};
}

/// Against names that another site has lead to this computer (DNS rebinding): to a browser we are
/// that site, so only the name says what it is. RFC 9110, sections 7.2 and 15.5.20.
std::optional<Response> refuse_host(const Request& request, const Guard& guard) {
    const auto host = lower(header_of(request, "host")); // RFC 3986, 3.2.2: case means nothing
    const bool is_local = guard.host.starts_with(std::string{loopback} + ":");
    const bool is_ours = host == guard.host ||
                         (is_local && host == "localhost" + guard.host.substr(loopback.size()));
    return is_ours ? std::nullopt : std::optional{refusal(421, "this is another computer's name")};
}

/// W3C, Fetch Metadata Request Headers, section 2.4: a browser says whose page asks. Another port
/// of this computer is "same-site"; "none" is an address that somebody typed or a program opened.
/// Browsers that do not know the header yet leave it out.
std::optional<Response> refuse_site(const Request& request, const Guard&) {
    const auto site = request.headers.find("sec-fetch-site");
    const bool is_ours = site == request.headers.end() || site->second == "same-origin" ||
                         (site->second == "none" && !changes(request.method));
    return is_ours ? std::nullopt
                   : std::optional{refusal(403, "only the page itself may ask for this")};
}

/// RFC 6454, section 7; Fetch, section 3.1: what may change something has an Origin, and a script
/// cannot set it. Of other requests one that is there must be right.
std::optional<Response> refuse_origin(const Request& request, const Guard& guard) {
    const auto origin = request.headers.find("origin");
    const bool is_ours = origin == request.headers.end()
                             ? !changes(request.method)
                             : origin->second == (guard.is_encrypted ? "https://" : "http://") +
                                                     lower(header_of(request, "host"));
    return is_ours ? std::nullopt
                   : std::optional{refusal(403, "only the page itself may ask for this")};
}

/// Fetch, section 2.2.2 (CORS-safelisted request-header): a form of any page can send three types;
/// these are none of them, so a browser asks first, and is refused.
std::optional<Response> refuse_type(const Request& request, const Guard&) {
    const auto field = lower(header_of(request, "content-type"));
    const auto type = trimmed(std::string_view{field}.substr(0, field.find(';')));
    const bool is_ours = !changes(request.method) || type == "application/json" ||
                         type == "application/octet-stream";
    return is_ours ? std::nullopt
                   : std::optional{refusal(415, "expected application/json or "
                                                "application/octet-stream")};
}

/// RFC 9110, section 15.5.2: who is asked for a key is answered how it is given. Browsers know no
/// such scheme, so they ask the cook for nothing.
std::optional<Response> refuse_key(const Request& request, const Guard& guard) {
    const bool is_open = !guard.key || !is_below_api(request.path) ||
                         std::find(guard.without_key.begin(), guard.without_key.end(),
                                   request.path) != guard.without_key.end();
    if (is_open || guard.key(header_of(request, key_header))) {
        return std::nullopt;
    }
    auto response = refusal(401, "this needs the key of this run");
    response.headers.emplace_back("WWW-Authenticate", "Thawslip-Key realm=\"desk\"");
    return response;
}

constexpr std::array refusals = {refuse_network, refuse_method, refuse_host, refuse_site,
                                 refuse_origin,  refuse_type,   refuse_key};

constexpr std::pair<const char*, const char*> for_all[] = {
    {"Content-Security-Policy",
     "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self'; "
     "img-src 'self' blob:; base-uri 'none'; frame-ancestors 'none'; form-action 'none'; "
     "require-trusted-types-for 'script'; trusted-types 'none'"},
    {"X-Content-Type-Options", "nosniff"},
    {"X-Frame-Options", "DENY"}, // what browsers before frame-ancestors know (RFC 7034)
    {"Referrer-Policy", "no-referrer"},
    {"Cross-Origin-Resource-Policy", "same-origin"},
    {"Permissions-Policy", "camera=(self), microphone=(), geolocation=()"},
};

bool has_tag(const Response& response) {
    return std::any_of(response.headers.begin(), response.headers.end(),
                       [](const auto& header) { return same_but_for_case(header.first, "ETag"); });
}

bool must_go(const std::pair<std::string, std::string>& header) {
    const auto name = lower(header.first);
    return name.starts_with("access-control-") || name == "cache-control";
}

} // namespace

bool is_same_key(const std::string& given, const std::string& key) {
    unsigned difference = given.size() == key.size() ? 0 : 1;
    for (std::size_t at = 0; at < key.size(); ++at) {
        const char other = at < given.size() ? given[at] : '\0';
        difference |= static_cast<unsigned char>(key[at] ^ other);
    }
    return difference == 0;
}

KeyTest one_key(std::string key) {
    return [key = std::move(key)](const std::string& given) { return is_same_key(given, key); };
}

std::optional<Response> refuse(const Request& request, const Guard& guard) {
    for (const auto& refuse_by : refusals) {
        if (auto refused = refuse_by(request, guard)) {
            return refused;
        }
    }
    return std::nullopt;
}

Response guarded(Response response, const std::string& path, Way way) {
    std::erase_if(response.headers, must_go);
    response.headers.insert(response.headers.end(), std::begin(for_all), std::end(for_all));
    if (way == Way::ThisComputer) {
        response.headers.emplace_back("Cross-Origin-Opener-Policy", "same-origin");
    }
    // A file of the page is asked for anew each time, and sent where it has changed; answers are
    // kept nowhere, least of all on a disk.
    const bool is_file = !is_below_api(path) && has_tag(response);
    response.headers.emplace_back("Cache-Control", is_file ? "no-cache" : "no-store");
    return response;
}

} // namespace thawslip::http
