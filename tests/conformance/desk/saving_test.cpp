// What is typed and saved: nothing is lost, whatever else writes, ends or is in the way.

#include "running_desk.h"

#include <csignal>
#include <doctest/doctest.h>
#include <filesystem>

namespace saving_test {

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

namespace fs = std::filesystem;

const std::string text = "[day]\nmade = 2026-10-17\n\n[[package]]\ndish = \"Plum broth\"\n";

struct Kitchen {
    User user;

    Kitchen() { write_file(user.day("plums.toml"), text); }
};

std::string day_path(const RunningDesk& desk, const std::string& name) {
    const int number = desk.number_of(name);
    REQUIRE(number > 0);
    return "/api/day/" + std::to_string(number);
}

std::string etag_at(const RunningDesk& desk, const std::string& path) {
    return json_of(desk.get(path)).at("etag").get<std::string>();
}

} // namespace

TEST_CASE_FIXTURE(Kitchen,
                  "a day is saved as it was typed, and the draft goes when it is told to") {
    const RunningDesk desk{user};
    const auto path = day_path(desk, "plums.toml");
    const auto more = text + "# Grüße, ñandú, 冷凍\n";
    CHECK(desk.put(path, {{"text", more}}, etag_at(desk, path)).status == 200);
    CHECK(read_file(user.day("plums.toml")) == more);
}

TEST_CASE_FIXTURE(Kitchen,
                  "what was typed when the program is killed is there when it starts again") {
    const auto typed = text + "servings = 4\n";
    {
        RunningDesk desk{user};
        const auto number = std::to_string(desk.number_of("plums.toml"));
        CHECK(desk.put("/api/draft/" + number, {{"text", typed}}).status == 200);
        desk.signal(SIGKILL);
        CHECK(desk.end() == 128 + SIGKILL);
    }
    CHECK(read_file(user.day("plums.toml")) == text);
    const RunningDesk again{user};
    const auto path = day_path(again, "plums.toml");
    CHECK(json_of(again.get(path)).at("draft") == typed);
    CHECK(json_of(again.get(path)).at("text") == text);
    const fs::path drafts = user.home / ".local/state/thawslip/drafts";
    for (const auto& file : files_in(drafts)) {
        CHECK(mode_of(file) == 0600U);
    }
    const auto number = std::to_string(again.number_of("plums.toml"));
    CHECK(again.put("/api/draft/" + number, {{"text", nullptr}}).status == 200);
    CHECK(json_of(again.get(path)).at("draft").is_null());
    CHECK(fs::is_empty(drafts));
}

TEST_CASE_FIXTURE(Kitchen, "a draft is of its folder's day, and of no other's of that name") {
    fs::create_directory(user.home / "other");
    write_file(user.home / "other/plums.toml", text);
    const RunningDesk one{user};
    const RunningDesk other{user, {user.home / "other"}};
    const auto number = std::to_string(one.number_of("plums.toml"));
    CHECK(one.put("/api/draft/" + number, {{"text", "[day]\n"}}).status == 200);
    CHECK(json_of(other.get(day_path(other, "plums.toml"))).at("draft").is_null());
}

TEST_CASE_FIXTURE(Kitchen, "what another program saved meanwhile is shown and not written over") {
    const RunningDesk desk{user};
    const auto path = day_path(desk, "plums.toml");
    const auto before = etag_at(desk, path);
    write_file(user.day("plums.toml"), text + "# by an editor\n");
    const auto refused = desk.put(path, {{"text", text + "# by the page\n"}}, before);
    CHECK(refused.status == 409);
    CHECK(json_of(refused).at("text") == text + "# by an editor\n");
    CHECK(read_file(user.day("plums.toml")) == text + "# by an editor\n");
    const auto now = json_of(refused).at("etag").get<std::string>();
    CHECK(desk.put(path, {{"text", text + "# of both\n"}}, now).status == 200);
    CHECK(read_file(user.day("plums.toml")) == text + "# of both\n");
}

TEST_CASE_FIXTURE(
    Kitchen, "a link that leads out of the folder is no day, and nothing is written through it") {
    write_file(user.home / "secret.toml", text);
    fs::create_symlink(user.home / "secret.toml", user.day("link.toml"));
    const RunningDesk desk{user};
    CHECK(desk.number_of("link.toml") == 0);
    // One that is put there when the page has the day open.
    const auto path = day_path(desk, "plums.toml");
    const auto etag = etag_at(desk, path);
    fs::remove(user.day("plums.toml"));
    fs::create_symlink(user.home / "secret.toml", user.day("plums.toml"));
    CHECK(desk.put(path, {{"text", text + "# over it\n"}}, etag).status >= 400);
    CHECK(read_file(user.home / "secret.toml") == text);
}

TEST_CASE_FIXTURE(Kitchen, "settings and archive in the folder are no days, and stay as they are") {
    fs::create_directories(user.home / ".config/thawslip");
    write_file(user.day("archive.toml"), text);
    write_file(user.home / ".config/thawslip/settings.toml",
               "archive = " + json::Json(user.day("archive.toml")).dump() + "\n");
    const RunningDesk desk{user};
    const auto path = day_path(desk, "archive.toml");
    const auto refused = desk.put(path, {{"text", text + "#\n"}}, etag_at(desk, path));
    CHECK(refused.status == 500);
    CHECK(refused.body.find("the archive's file") != std::string::npos);
    CHECK(read_file(user.day("archive.toml")) == text);
}

TEST_CASE_FIXTURE(Kitchen, "layouts, settings and other files beside the days are not among them") {
    fs::copy_file(THAWSLIP_SOURCE_DIR "/layouts/stock/a4-2x4-99x68mm.toml",
                  user.day("my-stock.toml"));
    write_file(user.day("settings.toml"), "paper = \"a4\"\n");
    write_file(user.day("notes.txt"), text);
    write_file(user.day("broken.toml"), "[day]\nmade = \n\n[[package\n");
    write_file(user.day(".hidden.toml"), text);
    const RunningDesk desk{user};
    std::set<std::string> names;
    const auto state = json_of(desk.get("/api/state"));
    for (const auto& day : state.at("days")) {
        names.insert(day.at("name").get<std::string>());
    }
    CHECK(names == std::set<std::string>{"broken.toml", "plums.toml"});
}

} // namespace saving_test
