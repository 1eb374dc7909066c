// What a desktop is asked for: freedesktop.org, xdg-utils, xdg-open; the variables that name a
// screen are those of X11 (X(7), DISPLAY) and of Wayland (wl_display_connect, WAYLAND_DISPLAY).

#include "app/desk/browser.h"
#include "support/command.h"
#include "support/variable.h"

#include <doctest/doctest.h>
#include <sys/wait.h>

namespace browser_test {

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

bool has_screen_with(const std::optional<std::string>& x11,
                     const std::optional<std::string>& wayland) {
    const Variable one{"DISPLAY", x11};
    const Variable other{"WAYLAND_DISPLAY", wayland};
    return app::has_screen();
}

} // namespace

TEST_CASE("a screen is there where either of its variables says something") {
    CHECK_FALSE(has_screen_with(std::nullopt, std::nullopt));
    CHECK_FALSE(has_screen_with("", ""));
    CHECK(has_screen_with(":0", std::nullopt));
    CHECK(has_screen_with("", "wayland-0"));
}

TEST_CASE(
    "a link is handed to the desktop as one word, and it is known where there is no desktop") {
    const ScratchFolder folder;
    const Variable path{"PATH", folder.path().string()};
    const std::string link = "http://127.0.0.1:8033/#once=a b&c";
    CHECK(app::open_in_browser(link) == -1);
    const auto program = folder / "xdg-open";
    const auto note = folder / "note";
    write_file(program, "#!/bin/sh\necho \"$# $1\" >" + note + "\n");
    std::filesystem::permissions(program, std::filesystem::perms::owner_all);
    const auto process = app::open_in_browser(link);
    REQUIRE(process > 0);
    REQUIRE(::waitpid(process, nullptr, 0) == process);
    CHECK(read_file(note) == "1 " + link + "\n");
}

} // namespace browser_test
