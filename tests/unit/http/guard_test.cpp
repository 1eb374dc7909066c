// Whom the page is kept from, as a table: what a request has, and what it is answered. Read from
// the specifications: RFC 9110 (2022), HTTP Semantics; RFC 6454 (2011), The Web Origin Concept;
// W3C, Fetch Metadata Request Headers (2021); WHATWG, Fetch.

#include "http/guard.h"

#include <doctest/doctest.h>
#include <map>
#include <string>
#include <vector>

using namespace thawslip;
using http::Method;

namespace {

const std::string right_key = "the-key-of-this-run";
const http::Guard guard{"127.0.0.1:8123", http::one_key(right_key), {"/api/key"}};

constexpr int let_in = 0;

/// Changes to a request's headers; a value of nullptr takes one out.
using Changes = std::map<std::string, const char*>;

http::Request changed(http::Request request, const Changes& changes) {
    for (const auto& [name, value] : changes) {
        request.headers.erase(name);
        if (value != nullptr) {
            request.headers[name] = value;
        }
    }
    return request;
}

/// As our page asks, in a browser that says who it is.
http::Request as_page(Method method, const std::string& path) {
    http::Request request;
    request.method = method;
    request.path = path;
    request.headers = {{"host", "127.0.0.1:8123"},
                       {"sec-fetch-site", "same-origin"},
                       {"thawslip-key", "the-key-of-this-run"}};
    if (method == Method::Post || method == Method::Put) {
        request.headers["origin"] = "http://127.0.0.1:8123";
        request.headers["content-type"] = "application/json";
    }
    return request;
}

int status_of(const http::Request& request) {
    const auto refused = http::refuse(request, guard);
    return refused ? refused->status : let_in;
}

struct Row {
    std::string cause;
    Changes changes;
    int get; ///< what GET /api/state is answered
    int post;
};

} // namespace

TEST_CASE("each cause is refused, by what it is, whether something is read or changed") {
    const std::vector<Row> rows = {
        {"our own page", {}, let_in, let_in},
        // RFC 9110, 7.2 and 15.5.20: a server must refuse what is for another authority.
        {"no host", {{"host", nullptr}}, 421, 421},
        {"a name that leads here", {{"host", "orchard.test:8123"}}, 421, 421},
        {"a name that begins like ours", {{"host", "127.0.0.1:8123.orchard.test"}}, 421, 421},
        {"a name that ends like ours", {{"host", "orchard.127.0.0.1:8123"}}, 421, 421},
        {"a user's name before ours", {{"host", "x@127.0.0.1:8123"}}, 421, 421},
        {"another port", {{"host", "127.0.0.1:8124"}}, 421, 421},
        {"no port", {{"host", "127.0.0.1"}}, 421, 421},
        {"another address of this computer", {{"host", "127.0.0.2:8123"}}, 421, 421},
        {"this computer in six", {{"host", "[::1]:8123"}}, 421, 421},
        {"every address", {{"host", "0.0.0.0:8123"}}, 421, 421},
        {"the address as a number", {{"host", "2130706433:8123"}}, 421, 421},
        {"a full stop behind", {{"host", "localhost.:8123"}}, 421, 421},
        {"two hosts as a list", {{"host", "127.0.0.1:8123, 127.0.0.1:8123"}}, 421, 421},
        // Fetch Metadata, 2.4 (Sec-Fetch-Site): its four values.
        {"another port's page", {{"sec-fetch-site", "same-site"}}, 403, 403},
        {"another site's page", {{"sec-fetch-site", "cross-site"}}, 403, 403},
        {"typed into the browser", {{"sec-fetch-site", "none"}}, let_in, 403},
        {"no value of the specification", {{"sec-fetch-site", "SAME-ORIGIN"}}, 403, 403},
        {"an empty value", {{"sec-fetch-site", ""}}, 403, 403},
        {"a browser that does not know it yet", {{"sec-fetch-site", nullptr}}, let_in, let_in},
        // RFC 6454, 6.2 and 7; Fetch, 3.1: scheme, host and port, or null.
        {"no origin", {{"origin", nullptr}}, let_in, 403},
        {"another site's origin", {{"origin", "http://orchard.test"}}, 403, 403},
        {"another port's origin", {{"origin", "http://127.0.0.1:8124"}}, 403, 403},
        {"the other scheme", {{"origin", "https://127.0.0.1:8123"}}, 403, 403},
        {"our other name", {{"origin", "http://localhost:8123"}}, 403, 403},
        {"an origin that is hidden", {{"origin", "null"}}, 403, 403},
        {"an origin with a path", {{"origin", "http://127.0.0.1:8123/"}}, 403, 403},
        {"two origins", {{"origin", "http://127.0.0.1:8123, http://orchard.test"}}, 403, 403},
        // Fetch, 2.2.2: the types that a form of any page can send, and what is no type at all.
        {"a form", {{"content-type", "application/x-www-form-urlencoded"}}, let_in, 415},
        {"a form with files", {{"content-type", "multipart/form-data; boundary=x"}}, let_in, 415},
        {"a form as text", {{"content-type", "text/plain"}}, let_in, 415},
        {"text that names ours", {{"content-type", "text/plain; application/json"}}, let_in, 415},
        {"more than our type", {{"content-type", "application/json-patch+json"}}, let_in, 415},
        {"no type", {{"content-type", nullptr}}, let_in, 415},
        {"bytes", {{"content-type", "application/octet-stream"}}, let_in, let_in},
        // RFC 9110, 8.3.1: a type's case means nothing, and parameters may follow.
        {"our type in capitals",
         {{"content-type", "Application/JSON ; charset=utf-8"}},
         let_in,
         let_in},
        // RFC 9110, 15.5.2.
        {"no key", {{"thawslip-key", nullptr}}, 401, 401},
        {"an empty key", {{"thawslip-key", ""}}, 401, 401},
        {"the beginning of the key", {{"thawslip-key", "the-key-of-this-ru"}}, 401, 401},
        {"more than the key", {{"thawslip-key", "the-key-of-this-run "}}, 401, 401},
        {"another key", {{"thawslip-key", "the-key-of-this-rum"}}, 401, 401},
        {"the key in capitals", {{"thawslip-key", "THE-KEY-OF-THIS-RUN"}}, 401, 401},
        {"the key twice", {{"thawslip-key", "the-key-of-this-run, the-key-of-this-run"}}, 401, 401},
        {"a cookie in its stead",
         {{"thawslip-key", nullptr}, {"cookie", "thawslip-key=the-key-of-this-run"}},
         401,
         401},
        // The first cause that holds is the one that is said: who is not let in learns nothing
        // more.
        {"everything wrong",
         {{"host", "orchard.test"}, {"sec-fetch-site", "cross-site"}, {"thawslip-key", nullptr}},
         421,
         421},
    };
    for (const auto& row : rows) {
        CAPTURE(row.cause);
        CHECK(status_of(changed(as_page(Method::Get, "/api/state"), row.changes)) == row.get);
        CHECK(status_of(changed(as_page(Method::Head, "/api/state"), row.changes)) == row.get);
        CHECK(status_of(changed(as_page(Method::Post, "/api/check"), row.changes)) == row.post);
        CHECK(status_of(changed(as_page(Method::Put, "/api/day/3"), row.changes)) == row.post);
    }
}

TEST_CASE("localhost is this computer's name too, and only with its own origin") {
    auto request = changed(as_page(Method::Post, "/api/check"), {{"host", "localhost:8123"}});
    CHECK(status_of(request) == 403); // from the page at the other name
    CHECK(status_of(changed(request, {{"origin", "http://localhost:8123"}})) == let_in);
    // RFC 3986 (2005), 3.2.2: the case of a host means nothing.
    CHECK(status_of(changed(as_page(Method::Get, "/"), {{"host", "LocalHost:8123"}})) == let_in);
}

TEST_CASE("localhost is not meant where another address is served") {
    const http::Guard kitchen{"192.168.1.20:8123", {}, {}};
    auto request = changed(as_page(Method::Get, "/"), {{"host", "localhost:8123"}});
    CHECK(http::refuse(request, kitchen)->status == 421);
    request.headers["host"] = "192.168.1.20:8123";
    CHECK_FALSE(http::refuse(request, kitchen));
}

TEST_CASE("the key is asked for below /api/ and nowhere else, but where it is given out") {
    const auto without_key = [](Method method, const std::string& path) {
        return status_of(changed(as_page(method, path), {{"thawslip-key", nullptr}}));
    };
    for (const std::string path : {"/", "/style.css", "/desk.js", "/apis", "/Api/state"}) {
        CAPTURE(path);
        CHECK(without_key(Method::Get, path) == let_in);
    }
    for (const std::string path :
         {"/api", "/api/", "/api/state", "/api/nothing", "/api/keys", "/api/key/", "/api//key"}) {
        CAPTURE(path);
        CHECK(without_key(Method::Get, path) == 401);
    }
    CHECK(without_key(Method::Post, "/api/key") == let_in);
    // Without a key it is still our own page that must ask.
    CHECK(status_of(changed(as_page(Method::Post, "/api/key"),
                            {{"origin", "http://orchard.test"}})) == 403);
}

TEST_CASE("an encrypted page has an origin of its own scheme (RFC 6454, 4)") {
    http::Guard encrypted = guard;
    encrypted.is_encrypted = true;
    auto request = as_page(Method::Post, "/api/check");
    CHECK(http::refuse(request, encrypted)->status == 403);
    request.headers["origin"] = "https://127.0.0.1:8123";
    CHECK_FALSE(http::refuse(request, encrypted));
    CHECK(http::refuse(request, guard)->status == 403);
}

TEST_CASE("a server for a house answers nobody outside of it") {
    http::Guard house{"192.168.1.20:8123", {}, {}, true};
    auto request = changed(as_page(Method::Get, "/"), {{"host", "192.168.1.20:8123"}});
    for (const auto& [peer, status] : std::vector<std::pair<std::string, int>>{
             {"192.168.1.31", let_in}, {"10.9.8.7", let_in}, {"203.0.113.9", 403}, {"", 403}}) {
        CAPTURE(peer);
        request.peer = peer;
        const auto refused = http::refuse(request, house);
        CHECK((refused ? refused->status : let_in) == status);
    }
}

TEST_CASE("other methods are refused, and it is said which there are (RFC 9110, 15.5.6)") {
    const auto refused = http::refuse(as_page(Method::Other, "/api/state"), guard);
    REQUIRE(refused);
    CHECK(refused->status == 405);
    const std::pair<std::string, std::string> allow{"Allow", "GET, HEAD, POST, PUT"};
    CHECK(refused->headers == std::vector{allow});
}

TEST_CASE("who has no key is answered how it is given (RFC 9110, 15.5.2)") {
    const auto refused = http::refuse(
        changed(as_page(Method::Get, "/api/state"), {{"thawslip-key", nullptr}}), guard);
    REQUIRE(refused);
    REQUIRE(refused->headers.size() == 1);
    CHECK(refused->headers.front().first == "WWW-Authenticate");
    CHECK(refused->headers.front().second.starts_with("Thawslip-Key "));
}

TEST_CASE("a refusal does not say again what was sent, nor the key") {
    for (const auto& changes : std::vector<Changes>{{{"host", "<b>orchard</b>"}},
                                                    {{"sec-fetch-site", "<b>orchard</b>"}},
                                                    {{"thawslip-key", "<b>orchard</b>"}}}) {
        const auto refused = http::refuse(changed(as_page(Method::Post, "/api/x"), changes), guard);
        REQUIRE(refused);
        CHECK(refused->body.find("orchard") == std::string::npos);
        CHECK(refused->body.find(right_key) == std::string::npos);
    }
}
