#include "app/question.h"
#include "support/redirected.h"
#include "support/terminal.h"

#include <doctest/doctest.h>
#include <fcntl.h>
#include <sstream>
#include <unistd.h>

namespace question_test {

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

/// Whether somebody is taken to be there where the two streams are these.
bool is_there(int input, int errors) {
    const Redirected in{STDIN_FILENO, input};
    const Redirected out{STDERR_FILENO, errors};
    return app::somebody_is_there();
}

} // namespace

TEST_CASE("somebody is there who can both read a question and answer it") {
    if (!has_terminals()) {
        return;
    }
    const Terminal terminal;
    const int nowhere = ::open("/dev/null", O_RDWR);
    CHECK(is_there(terminal.end(), terminal.end()));
    CHECK_FALSE(is_there(terminal.end(), nowhere));
    CHECK_FALSE(is_there(nowhere, terminal.end()));
    CHECK_FALSE(is_there(nowhere, nowhere));
    ::close(nowhere);
}

TEST_CASE("an answer is a line without the blanks around it, and nothing at the end") {
    std::istringstream in{"  two bags \n\n"};
    std::ostringstream out;
    const auto ask = app::ask_on(in, out);
    CHECK(ask("How many?") == "two bags");
    CHECK(ask("Sure?") == "");
    CHECK(out.str() == "How many? Sure? ");
    CHECK(ask("Still there?") == std::nullopt);
    CHECK(out.str() == "How many? Sure? Still there? \n");
}

} // namespace question_test
