// What every answer says to a browser. Read from: W3C, Content Security Policy Level 3; W3C,
// Trusted Types; WHATWG, Fetch and HTML; W3C, Permissions Policy; RFC 9111 (2022), HTTP Caching.

#include "http/guard.h"

#include <doctest/doctest.h>
#include <map>
#include <set>
#include <sstream>
#include <string>

using namespace thawslip;

namespace {

std::map<std::string, std::string> said(const http::Response& response) {
    std::map<std::string, std::string> headers;
    for (const auto& [name, value] : response.headers) {
        CAPTURE(name);
        CHECK(headers.emplace(name, value).second); // none is said twice
    }
    return headers;
}

/// A policy's directives (CSP, section 2.2.1): between semicolons a name and its values.
std::map<std::string, std::string> directives(const std::string& policy) {
    std::map<std::string, std::string> found;
    std::istringstream text{policy};
    for (std::string part; std::getline(text, part, ';');) {
        part.erase(0, part.find_first_not_of(' '));
        const auto blank = part.find(' ');
        found[part.substr(0, blank)] = part.substr(blank + 1);
    }
    return found;
}

} // namespace

TEST_CASE("nothing is run, framed or sent that is not from here") {
    const auto headers = said(http::guarded({}, "/"));
    const auto policy = directives(headers.at("Content-Security-Policy"));
    const std::map<std::string, std::string> expected = {
        {"default-src", "'none'"},   {"script-src", "'self'"},
        {"style-src", "'self'"},     {"connect-src", "'self'"},
        {"img-src", "'self' blob:"}, {"base-uri", "'none'"},
        {"form-action", "'none'"},   {"frame-ancestors", "'none'"},
        {"trusted-types", "'none'"}, {"require-trusted-types-for", "'script'"}};
    CHECK(policy == expected);
}

TEST_CASE("no other site gets anything of it") {
    const auto headers = said(http::guarded({}, "/"));
    CHECK(headers.at("X-Content-Type-Options") == "nosniff");           // Fetch, 3.6
    CHECK(headers.at("Referrer-Policy") == "no-referrer");              // Referrer Policy, 3.1
    CHECK(headers.at("Cross-Origin-Resource-Policy") == "same-origin"); // Fetch, 3.7
    CHECK(headers.at("Cross-Origin-Opener-Policy") == "same-origin");   // HTML, 7.1.3
    CHECK(headers.at("X-Frame-Options") == "DENY");                     // RFC 7034, 2.1
    CHECK(headers.at("Permissions-Policy").find("camera=(self)") != std::string::npos);
}

TEST_CASE("over a network all is said but what holds for secure contexts alone") {
    auto expected = said(http::guarded({}, "/"));
    expected.erase("Cross-Origin-Opener-Policy");
    CHECK(said(http::guarded({}, "/", http::Way::Network)) == expected);
}

TEST_CASE("what would share it with another site is taken out (Fetch, 3.2.3)") {
    http::Response response;
    response.headers = {{"Access-Control-Allow-Origin", "*"},
                        {"access-control-allow-headers", "thawslip-key"},
                        {"ETag", "\"1\""}};
    const auto headers = said(http::guarded(response, "/"));
    CHECK(headers.at("ETag") == "\"1\"");
    for (const auto& [name, value] : headers) {
        CHECK_FALSE(name.starts_with("Access-Control-"));
        CHECK_FALSE(name.starts_with("access-control-"));
    }
}

TEST_CASE("answers are kept nowhere, files are asked for anew (RFC 9111, 5.2.2)") {
    http::Response tagged;
    tagged.headers = {{"ETag", "\"1\""}};
    CHECK(said(http::guarded(tagged, "/style.css")).at("Cache-Control") == "no-cache");
    CHECK(said(http::guarded(tagged, "/api/day/3")).at("Cache-Control") == "no-store");
    CHECK(said(http::guarded({}, "/style.css")).at("Cache-Control") == "no-store");
    http::Response kept;
    kept.headers = {{"cache-control", "public, max-age=31536000"}};
    CHECK(said(http::guarded(kept, "/api/state")).at("Cache-Control") == "no-store");
}
