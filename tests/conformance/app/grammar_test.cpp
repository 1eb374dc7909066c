// The page that says what a label's code says begins with one: it is that of the sample day.

#include "code/message.h"
#include "support/command.h"

#include <doctest/doctest.h>

using namespace thawslip::test_support;

namespace {

/// The first block between lines of ``` on a page.
std::string first_block(const std::string& page) {
    const auto begin = page.find("```\n") + 4;
    return page.substr(begin, page.find("\n```", begin) - begin);
}

} // namespace

TEST_CASE("the example in GRAMMAR.md is what the sample day's first label carries in full") {
    const auto example = first_block(read_file(THAWSLIP_SOURCE_DIR "/src/code/GRAMMAR.md"));
    const auto outcome = run("XDG_CONFIG_HOME=/nonexistent " THAWSLIP_PROGRAM
                             " text --stock roll-100x150mm --dpi 600 " +
                             shell_word(THAWSLIP_SOURCE_DIR "/samples/orchard-day.toml"));
    REQUIRE(outcome.status == 0);
    CHECK(outcome.out.substr(0, outcome.out.find("\n\n")) == example);
    CHECK(thawslip::code::parse(example).ok());
}
