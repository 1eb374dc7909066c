// The guards of src/http/guard.h, at the real program, on every route that the desk has. What they
// must say: RFC 9110 (HTTP Semantics, 2022), 15.5.2, 15.5.4, 15.5.6, 15.5.20; W3C, Fetch Metadata
// Request Headers (2021 draft), 2.4; RFC 6454 (The Web Origin Concept, 2011), 7.

#include "desk/route.h"
#include "running_desk.h"

#include <doctest/doctest.h>
#include <functional>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

using Headers = std::map<std::string, std::string>;

struct Refused {
    const char* what;
    int status;
    std::function<void(Headers&, const RunningDesk&)> change;
    bool only_changing = false; ///< of requests that change something
};

Refused with(const char* name, const char* value, int status) {
    return {value, status, [=](Headers& headers, const RunningDesk&) { headers[name] = value; }};
}

/// What nobody else may ask, one fault each.
std::vector<Refused> faults() {
    auto foreign_origin = with("Origin", "http://elsewhere.test", 403);
    auto other_port = with("Origin", "http://127.0.0.1:1", 403);
    auto no_site = with("Sec-Fetch-Site", "none", 403);
    no_site.only_changing = true;
    return {with("Host", "elsewhere.test", 421),
            with("Host", "127.0.0.1", 421),
            {"the port alone", 421,
             [](Headers& headers, const RunningDesk& desk) {
                 headers["Host"] = "elsewhere.test:" + std::to_string(desk.port());
             }},
            foreign_origin,
            other_port,
            with("Origin", "null", 403),
            {"no Origin", 403,
             [](Headers& headers, const RunningDesk&) { headers.erase("Origin"); }, true},
            with("Sec-Fetch-Site", "cross-site", 403),
            with("Sec-Fetch-Site", "same-site", 403),
            no_site,
            {"a form's type", 415,
             [](Headers& headers, const RunningDesk&) { headers["Content-Type"] = "text/plain"; },
             true},
            {"no key", 401,
             [](Headers& headers, const RunningDesk&) { headers.erase("Thawslip-Key"); }},
            with("Thawslip-Key", "00000000000000000000000000000000", 401),
            with("Thawslip-Key", "", 401)};
}

const char* name_of(http::Method method) {
    switch (method) {
    case http::Method::Get: return "GET";
    case http::Method::Head: return "HEAD";
    case http::Method::Post: return "POST";
    case http::Method::Put: return "PUT";
    case http::Method::Other: break;
    }
    return "DELETE";
}

/// A route's path with something in the star's place.
std::string path_of(const desk::Route& route) {
    std::string path{route.path};
    if (const auto star = path.find('*'); star != std::string::npos) {
        path.replace(star, 1, "1");
    }
    return path;
}

bool changes(http::Method method) {
    return method == http::Method::Post || method == http::Method::Put;
}

} // namespace

TEST_CASE("every route refuses who is not our page, and says nothing of the days") {
    const User user;
    std::filesystem::copy_file(sample_day, user.day("orchard.toml"));
    const RunningDesk desk{user};
    REQUIRE(desk::all_routes().size() > 20);
    for (const auto& route : desk::all_routes()) {
        const auto path = path_of(route);
        CAPTURE(path);
        for (const auto& fault : faults()) {
            if (fault.only_changing && !changes(route.method)) {
                continue;
            }
            CAPTURE(fault.what);
            auto headers = desk.headers(changes(route.method));
            fault.change(headers, desk);
            const auto* body = changes(route.method) ? "{}" : "";
            const auto reply = desk.send(name_of(route.method), path, headers, body);
            CHECK(reply.status == fault.status);
            CHECK(reply.body.find("orchard") == std::string::npos);
            CHECK(reply.headers.count("access-control-allow-origin") == 0);
        }
    }
}

TEST_CASE("every path refuses the methods that no route of it has") {
    const User user;
    const RunningDesk desk{user};
    const auto all = desk::all_routes();
    for (const auto& route : all) {
        const auto path = path_of(route);
        CAPTURE(path);
        for (const auto method :
             {http::Method::Get, http::Method::Post, http::Method::Put, http::Method::Other}) {
            CAPTURE(name_of(method));
            const bool is_there = std::any_of(all.begin(), all.end(), [&](const auto& other) {
                return path_of(other) == path && other.method == method;
            });
            if (!is_there) {
                const auto* body = changes(method) ? "{}" : "";
                CHECK(
                    desk.send(name_of(method), path, desk.headers(changes(method)), body).status ==
                    405);
            }
        }
    }
}

TEST_CASE("no path of a browser leads to a file: what is no asset and no route is not there") {
    const User user;
    std::filesystem::copy_file(sample_day, user.day("orchard.toml"));
    const RunningDesk desk{user};
    for (const auto* path :
         {"/orchard.toml", "/../days/orchard.toml", "/%2e%2e/%2e%2e/etc/passwd", "/page/desk.js",
          "/api/day/orchard.toml", "/api/day/..%2f..%2fetc%2fpasswd", "/api/day/99", "/api/day/-1",
          "/api/day/1e3", "/api/out/..%2fx.pdf", "//etc/passwd"}) {
        CAPTURE(path);
        const auto reply = desk.send("GET", path, desk.headers(false));
        CHECK(reply.status >= 400);
        CHECK(reply.status < 500);
        CHECK(reply.body.find("root:") == std::string::npos);
        CHECK(reply.body.find("[day]") == std::string::npos);
    }
}
