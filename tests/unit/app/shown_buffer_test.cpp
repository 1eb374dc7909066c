// What is said of foreign words reaches a terminal as words.

#include "app/files/shown_buffer.h"

#include <doctest/doctest.h>
#include <memory>
#include <sstream>

using thawslip::app::ShownBuffer;

namespace {

/// A stream that is shown on `seen`.
struct Shown {
    std::ostringstream seen;
    std::unique_ptr<ShownBuffer> buffer = std::make_unique<ShownBuffer>(seen);
    std::ostream out{buffer.get()};
};

} // namespace

TEST_CASE("a line is seen at its end, or when it is asked for") {
    Shown shown;
    shown.out << "two dishes";
    CHECK(shown.seen.str().empty());
    shown.out << '\n' << "three";
    CHECK(shown.seen.str() == "two dishes\n");
    shown.out << std::flush;
    CHECK(shown.seen.str() == "two dishes\nthree");
}

TEST_CASE("what is said last is seen though no line ends") {
    Shown shown;
    shown.out << "Which one?";
    shown.out.rdbuf(nullptr);
    shown.buffer.reset();
    CHECK(shown.seen.str() == "Which one?");
}

TEST_CASE("what a terminal would obey is shown, not sent") {
    Shown shown;
    shown.out << "stew\x1b[2J\n";
    CHECK(shown.seen.str().find('\x1b') == std::string::npos);
    CHECK(shown.seen.str().starts_with("stew"));
}

TEST_CASE("a letter that comes byte by byte is one letter") {
    Shown shown;
    shown.out << "\xC3" << std::flush;
    CHECK(shown.seen.str().empty());
    shown.out << "\xA4" << std::flush;
    CHECK(shown.seen.str() == "\xC3\xA4");
}
