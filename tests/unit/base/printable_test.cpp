#include "base/printable.h"

#include <doctest/doctest.h>
#include <string>

using namespace thawslip;

TEST_CASE("names and texts are told so that a terminal is safe and a line is short") {
    CHECK(in_quotes("plum") == "\"plum\"");
    CHECK(in_quotes("a\x1B[2J\xFFz") == "\"a\uFFFD[2J\uFFFDz\"");
    CHECK(in_quotes("a\u202Eb\u2028c") == "\"a\uFFFDb\uFFFDc\"");
    CHECK(in_quotes(std::string(40, 'x')) == "\"" + std::string(40, 'x') + "\"");
    CHECK(in_quotes(std::string(41, 'x')) == "\"" + std::string(40, 'x') + "…\"");
    std::string long_text;
    for (int i = 0; i < 100; ++i) {
        long_text += "🍲";
    }
    CHECK(in_quotes(long_text) == "\"" + long_text.substr(0, 160) + "…\"");
}
