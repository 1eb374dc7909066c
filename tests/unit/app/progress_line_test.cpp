#include "app/progress_line.h"
#include "support/redirected.h"
#include "support/terminal.h"
#include "support/variable.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <fcntl.h>
#include <thread>
#include <unistd.h>

using namespace thawslip::test_support;
using std::chrono::milliseconds;
using std::chrono::seconds;
using thawslip::app::progress_line;
using thawslip::app::progress_text;

TEST_CASE("only a terminal that can clear a line is shown how far work is") {
    if (!has_terminals()) {
        return;
    }
    const Terminal terminal;
    {
        const Redirected there{STDERR_FILENO, terminal.end()};
        const Variable kind{"TERM", "vt100"};
        CHECK(static_cast<bool>(progress_line("reading")));
        const Variable none{"TERM", std::nullopt};
        CHECK_FALSE(static_cast<bool>(progress_line("reading")));
        const Variable dumb{"TERM", "dumb"};
        CHECK_FALSE(static_cast<bool>(progress_line("reading")));
    }
    const int file = ::open("/dev/null", O_WRONLY);
    const Redirected nobody{STDERR_FILENO, file};
    const Variable kind{"TERM", "vt100"};
    CHECK_FALSE(static_cast<bool>(progress_line("reading")));
    ::close(file);
}

TEST_CASE("work that takes no second shows nothing, and longer work a line that goes at its end") {
    if (!has_terminals()) {
        return;
    }
    const Terminal terminal;
    const Redirected there{STDERR_FILENO, terminal.end()};
    const Variable kind{"TERM", "vt100"};
    const auto line = progress_line("reading");
    line(1, 9);
    line(9, 9);
    CHECK(read_at_once(terminal.hand()).empty());
    std::this_thread::sleep_for(milliseconds{1100});
    for (std::size_t done = 0; done < 50; ++done) { // a line that flickers is not read
        line(2, 9);
    }
    const auto shown = read_at_once(terminal.hand());
    CHECK(shown.starts_with("\r\x1b[Kreading: 2 of 9, "));
    CHECK(std::ranges::count(shown, '\r') < 50);
    std::this_thread::sleep_for(milliseconds{110});
    line(4, 9);
    CHECK(read_at_once(terminal.hand()).starts_with("\r\x1b[Kreading: 4 of 9, "));
    line(9, 9);
    CHECK(read_at_once(terminal.hand()) == "\r\x1b[K");
    line(9, 9);
    CHECK(read_at_once(terminal.hand()).empty());
}

TEST_CASE("how far work is, how fast, and how long it takes still") {
    CHECK(progress_text("reading", 120, 1000, std::chrono::milliseconds{500}) ==
          "reading: 120 of 1000, 240 a second, 4 s left");
    CHECK(progress_text("drawing", 3, 12, seconds{2}) ==
          "drawing: 3 of 12, 1.5 a second, 6 s left");
    CHECK(progress_text("writing", 100, 100'000, seconds{10}) ==
          "writing: 100 of 100000, 10 a second, 167 min left");
}

TEST_CASE("nothing done yet, nothing to do, and more than there was") {
    CHECK(progress_text("reading", 0, 0, seconds{1}) == "reading: 0 of 0, 0.0 a second, 0 s left");
    CHECK(progress_text("reading", 0, 9, seconds{1}).ends_with("150 min left")); // 0.001 a second
    CHECK(progress_text("reading", 7, 5, seconds{1}).ends_with("0 s left"));
}
