// How the desk begins and ends: one for a folder, found again by a second start, gone without a
// trace.

#include "running_desk.h"
#include "support/skip.h"

#include <csignal>
#include <doctest/doctest.h>
#include <filesystem>
#include <pty.h>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

namespace fs = std::filesystem;

/// The files in which desks say that they run.
std::vector<fs::path> run_files(const User& user) {
    return files_in(user.home / "run/thawslip");
}

bool has(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

} // namespace

TEST_CASE("the page and its state come over the link, and nothing else comes without its key") {
    const User user;
    fs::copy_file(sample_day, user.day("orchard.toml"));
    const RunningDesk desk{user};
    const auto page = desk.send("GET", "/", {{"Host", desk.host()}});
    CHECK(page.status == 200);
    CHECK(has(page.body, "<!doctype html>"));
    const auto state = desk.get("/api/state");
    CHECK(state.status == 200);
    CHECK(json_of(state).at("language") == "en");
    CHECK(json_of(state).at("folder") == fs::canonical(user.days()).string());
}

TEST_CASE("a second start finds the first, also by a file in the folder or a link to it") {
    const User user;
    fs::copy_file(sample_day, user.day("orchard day.toml"));
    fs::create_directory_symlink(user.days(), user.home / "link");
    const RunningDesk desk{user};
    const auto link = "http://" + desk.host() + "/#key=" + desk.key();
    for (const auto& place : {user.days(), user.home / "link"}) {
        const auto second = user.thawslip("desk --no-open " + shell_word(place));
        CHECK(second.status == 0);
        CHECK(has(second.out, "is open already:\n  " + link + "\n"));
    }
    const auto named = user.thawslip("desk --no-open " + shell_word(user.day("orchard day.toml")));
    CHECK(has(named.out, link + "&open=orchard%20day.toml\n"));
    CHECK(desk.get("/api/state").status == 200);
}

TEST_CASE("another folder has another desk") {
    const User user;
    fs::create_directory(user.home / "other");
    const RunningDesk one{user};
    const RunningDesk two{user, {user.home / "other"}};
    CHECK(one.port() != two.port());
    CHECK(one.key() != two.key());
    CHECK(
        two.send("GET", "/api/state", {{"Host", two.host()}, {"Thawslip-Key", one.key()}}).status ==
        401);
}

TEST_CASE(
    "what says that it runs is its owner's alone, and stands in nobody's way when it is killed") {
    const User user;
    RunningDesk desk{user};
    const auto files = run_files(user);
    REQUIRE(files.size() == 1);
    CHECK(mode_of(files.front()) == 0600U);
    CHECK(mode_of(files.front().parent_path()) == 0700U);
    CHECK(has(read_file(files.front()), desk.key()));
    const auto before = desk.key();
    desk.signal(SIGKILL);
    CHECK(desk.end() == 128 + SIGKILL);
    CHECK(run_files(user).size() == 1);
    const RunningDesk again{user};
    CHECK(again.key() != before);
    CHECK(again.get("/api/state").status == 200);
}

TEST_CASE("signals that ask a program to end do, and nothing of the run is left") {
    for (const int number : {SIGINT, SIGTERM, SIGHUP}) {
        CAPTURE(number);
        const User user;
        RunningDesk desk{user};
        desk.signal(number);
        CHECK(desk.end() == 0);
        CHECK(run_files(user).empty());
        CHECK(fs::is_empty(user.days())); // nothing is made before something is saved
    }
}

TEST_CASE("a desk that was told to outlive its terminal does") {
    const User user;
    RunningDesk desk{user, {user.days()}, SIGHUP};
    desk.signal(SIGHUP);
    CHECK(desk.get("/api/state").status == 200);
    desk.signal(SIGTERM);
    CHECK(desk.end() == 0);
    CHECK(run_files(user).empty());
}

TEST_CASE("a desk that nobody uses ends, and says so") {
    const User user;
    RunningDesk desk{user, {user.days(), "--idle", "0.01"}};
    CHECK(desk.end() == 0);
    CHECK(has(desk.said(), "The desk has ended: nobody has used it for 0.01 minutes.\n"));
}

TEST_CASE("a desk ends with its terminal") {
    const User user;
    int terminal = -1;
    const pid_t process = ::forkpty(&terminal, nullptr, nullptr, nullptr);
    if (process < 0) {
        skip("this system gives no terminals (/dev/pts)");
        return;
    }
    if (process == 0) {
        std::signal(SIGHUP, SIG_DFL); // which nohup(1) has ignored
        ::setenv("HOME", user.home.path().c_str(), 1);
        ::setenv("XDG_RUNTIME_DIR", (user.home / "run").c_str(), 1);
        ::execl(THAWSLIP_PROGRAM, "thawslip", "desk", "--no-open", user.days().c_str(), nullptr);
        ::_exit(127);
    }
    std::string said;
    char bytes[256];
    while (!has(said, "It ends with")) {
        const auto count = ::read(terminal, bytes, sizeof bytes);
        REQUIRE(count > 0);
        said.append(bytes, static_cast<std::size_t>(count));
    }
    ::close(terminal); // the window is shut
    int state = 0;
    REQUIRE(::waitpid(process, &state, 0) == process);
    CHECK(WIFEXITED(state));
    CHECK(run_files(user).empty());
}

TEST_CASE("the browser is started with a code that is worth the key once") {
    User user;
    fs::create_directory(user.home / "bin");
    // What stands where the desktop's opener would: it keeps what it is started with.
    write_file(user.home / "bin/xdg-open", "#!/bin/sh\nprintf %s \"$1\" >" +
                                               shell_word(user.home / "opened.part") + "\nmv " +
                                               shell_word(user.home / "opened.part") + " " +
                                               shell_word(user.home / "opened") + "\n");
    fs::permissions(user.home / "bin/xdg-open", fs::perms::owner_all);
    user.environment = {{"DISPLAY", ":7"}, {"PATH", (user.home / "bin") + ":/usr/bin:/bin"}};
    const RunningDesk desk{user};
    const auto second = user.thawslip("desk " + shell_word(user.days()));
    CHECK(second.status == 0);
    for (int i = 0; i < 6000 && !fs::exists(user.home / "opened"); ++i) {
        std::this_thread::sleep_for(std::chrono::milliseconds{10});
    }
    const auto opened = read_file(user.home / "opened");
    const auto head = "http://" + desk.host() + "/#once=";
    REQUIRE(opened.starts_with(head));
    CHECK_FALSE(has(opened, desk.key()));
    auto asked = desk.headers(true);
    asked.erase("Thawslip-Key");
    const auto body = json::Json{{"once", opened.substr(head.size())}}.dump();
    const auto first = desk.send("POST", "/api/key", asked, body);
    CHECK(first.status == 200);
    CHECK(json_of(first).at("key") == desk.key());
    CHECK(desk.send("POST", "/api/key", asked, body).status == 401);
    for (const auto* code : {"", "..", "../desk", "00000000000000000000000000000000"}) {
        CAPTURE(code);
        CHECK(desk.send("POST", "/api/key", asked, json::Json{{"once", code}}.dump()).status ==
              401);
    }
    asked["Origin"] = "http://elsewhere.test";
    CHECK(desk.send("POST", "/api/key", asked, body).status == 403);
}

TEST_CASE("what is no folder and no day is refused, with nothing begun") {
    const User user;
    const auto nowhere = user.thawslip("desk --no-open " + shell_word(user.home / "nowhere"));
    CHECK(nowhere.status == 1);
    CHECK(has(nowhere.err, "nowhere is not there; expected a folder, or a day in one"));
    CHECK(user.thawslip("desk --no-open /dev/null").status == 1);
    CHECK_FALSE(fs::exists(user.home / "run/thawslip"));
}

TEST_CASE("a port that is taken is said, and no page is promised") {
    const User user;
    const RunningDesk desk{user};
    fs::create_directory(user.home / "other");
    const auto other = user.thawslip("desk --no-open --port " + std::to_string(desk.port()) + " " +
                                     shell_word(user.home / "other"));
    CHECK(other.status == 3);
    CHECK(other.out.empty());
    CHECK(has(other.err, std::to_string(desk.port())));
}

TEST_CASE("a computer that has no library to serve a page with is told so, and nothing is begun") {
    User user;
    write_file(user.home / "libmicrohttpd.so.12", ""); // found first, and no library
    user.environment["LD_LIBRARY_PATH"] = user.home.path().string();
    const auto desk = user.thawslip("desk --no-open");
    CHECK(desk.status == 3);
    CHECK(has(desk.err, "the desk needs libmicrohttpd, which is not installed here"));
    CHECK(desk.out.empty());
}

TEST_CASE("without a folder the days are in the documents, made when the first is saved") {
    User user;
    SUBCASE("as the desktop has them") {
        fs::create_directories(user.home / "Papeles míos");
        fs::create_directories(user.home / ".config");
        write_file(user.home / ".config/user-dirs.dirs",
                   "# a remark\nXDG_DOCUMENTS_DIR=\"$HOME/Papeles míos\"\n");
        const RunningDesk desk{user, {"--port", "0"}};
        CHECK(json_of(desk.get("/api/state")).at("folder") ==
              fs::canonical(user.home / "Papeles míos").string() + "/Thawslip");
        CHECK_FALSE(fs::exists(user.home / "Papeles míos/Thawslip"));
    }
    SUBCASE("as most have them") {
        fs::create_directories(user.home / "Documents");
        const RunningDesk desk{user, {"--port", "0"}};
        CHECK(json_of(desk.get("/api/state")).at("folder") ==
              fs::canonical(user.home / "Documents").string() + "/Thawslip");
    }
    SUBCASE("in the home folder where there are none") {
        const RunningDesk desk{user, {"--port", "0"}};
        CHECK(json_of(desk.get("/api/state")).at("folder") ==
              fs::canonical(user.home.path()).string() + "/Thawslip");
    }
}

TEST_CASE("settings with a fault do not keep the page shut: it says what is wrong") {
    const User user;
    fs::create_directories(user.home / ".config/thawslip");
    write_file(user.home / ".config/thawslip/settings.toml", "paper = \"papyrus\"\n");
    const RunningDesk desk{user};
    CHECK(desk.send("GET", "/", {{"Host", desk.host()}}).status == 200);
    const auto state = desk.get("/api/state");
    CHECK(state.status == 422);
    CHECK(has(state.body, "papyrus"));
    write_file(user.home / ".config/thawslip/settings.toml", "paper = \"a4\"\n");
    CHECK(desk.get("/api/state").status == 200); // put right while it runs
}
