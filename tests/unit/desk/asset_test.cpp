// The page's own files, and what becomes of a question that goes wrong inside.

#include "desk/asset.h"
#include "support/asked.h"
#include "support/fake_machine.h"

#include <doctest/doctest.h>
#include <map>
#include <set>

namespace asset_test {

using namespace thawslip;
using namespace thawslip::test_support;

TEST_CASE("each file of the page comes as what it is, and again only where it is another") {
    FakeMachine fake;
    desk::Desk desk{machine_of(fake)};
    const std::map<std::string, std::string> types = {{".html", "text/html; charset=utf-8"},
                                                      {".css", "text/css; charset=utf-8"},
                                                      {".js", "text/javascript; charset=utf-8"},
                                                      {".svg", "image/svg+xml"}};
    std::set<std::string> tags;
    std::set<std::string> seen;
    for (const auto& asset : desk::assets()) {
        const std::string path{asset.path};
        CAPTURE(path);
        const auto whole = get(desk, path);
        CHECK(whole.status == 200);
        CHECK(whole.body == asset.bytes);
        const auto kind = path == "/" ? ".html" : path.substr(path.rfind('.'));
        REQUIRE(types.contains(kind));
        CHECK(whole.type == types.at(kind));
        seen.insert(kind);
        REQUIRE(whole.headers.size() == 1);
        CHECK(whole.headers[0].first == "ETag");
        const auto tag = whole.headers[0].second;
        CHECK(tags.insert(tag).second);
        auto again = request(http::Method::Get, path);
        again.headers["if-none-match"] = tag;
        const auto known = desk.answer(again);
        CHECK(known.status == 304); // RFC 9110, 15.4.5: without the bytes, with the tag
        CHECK(known.body.empty());
        CHECK(known.headers == whole.headers);
        again.headers["if-none-match"] = "\"another\"";
        CHECK(desk.answer(again).status == 200);
        again.method = http::Method::Head;
        CHECK(desk.answer(again).status == 200);
        CHECK(post(desk, path, json::Json::object()).status == 405);
    }
    CHECK(seen.size() == types.size());
}

TEST_CASE("what fails in the system is said, and the page goes on") {
    FakeMachine fake;
    auto machine = machine_of(fake);
    machine.days.read = [](const std::string&) -> std::optional<std::string> {
        throw std::runtime_error{"the disk is gone"};
    };
    fake.days["a.toml"] = "[day]\n";
    desk::Desk desk{machine};
    const auto failed = get(desk, "/api/days");
    CHECK(failed.status == 500);
    CHECK(said(failed)["messages"][0]["text"] == "the disk is gone");
    CHECK(said(failed)["messages"][0]["severity"] == "error");
    CHECK(get(desk, "/").status == 200);
}

TEST_CASE("a page whose settings cannot be read is told which line, and gets no state") {
    FakeMachine fake;
    auto machine = machine_of(fake);
    machine.settings = [] {
        return service::settings_from("paper = \"birch bark\"\n", "/home/settings.toml");
    };
    desk::Desk desk{machine};
    const auto refused = get(desk, "/api/state");
    CHECK(refused.status == 422);
    const auto text = said(refused)["messages"][0]["text"].get<std::string>();
    CHECK(text.find("/home/settings.toml") != std::string::npos);
    CHECK(text.find("birch bark") != std::string::npos);
}

TEST_CASE("a question is as long as what it may hold") {
    constexpr std::size_t kilobyte = 1024;
    CHECK(desk::body_limit("/api/read") == 8 * kilobyte * kilobyte); // a photograph
    for (const char* path : {"/api/check", "/api/edit", "/api/sheet", "/api/day/1",
                             "/api/draft/1"}) { // a day of 1 MiB, escaped, and an edit
        CAPTURE(path);
        CHECK(desk::body_limit(path) == 2 * kilobyte * kilobyte + 64 * kilobyte);
    }
    for (const char* path :
         {"/api/days", "/api/freezer/note", "/api/reading", "/api/checks", "/"}) {
        CAPTURE(path);
        CHECK(desk::body_limit(path) == 64 * kilobyte);
    }
}

} // namespace asset_test
