#include "app/command_line/joined_words.h"

#include <doctest/doctest.h>

namespace joined_words_test {

using thawslip::app::with_numbers_joined;
using Words = std::vector<std::string>;

TEST_CASE("numbers that go on behind a list of numbers are of that list") {
    CHECK(with_numbers_joined({"labels", "--skip", "1", "3-5", "day.toml"}) ==
          Words{"labels", "--skip", "1,3-5", "day.toml"});
    CHECK(with_numbers_joined({"--bag", "2", "4", "6"}) == Words{"--bag", "2,4,6"});
    CHECK(with_numbers_joined({"--first-cell", "2", "4"}) == Words{"--first-cell", "2", "4"});
    CHECK(with_numbers_joined({"--", "--skip", "1", "2"}) == Words{"--", "--skip", "1", "2"});
    CHECK(with_numbers_joined({"--skip"}) == Words{"--skip"});
}

TEST_CASE("ids go on behind ids, and cells are numbers alone") {
    CHECK(with_numbers_joined({"--bag", "SW3-HY0-87T", "SW3-HY0-87T"}) ==
          Words{"--bag", "SW3-HY0-87T,SW3-HY0-87T"});
    CHECK(with_numbers_joined({"--skip", "1", "SW3-HY0-87T"}) ==
          Words{"--skip", "1", "SW3-HY0-87T"});
    CHECK(with_numbers_joined({"--bag", "1", "day"}) == Words{"--bag", "1", "day"});
}

} // namespace joined_words_test
