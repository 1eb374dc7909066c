// ZXing-C++ 1.4.0 reads what is drawn: by read_back, which is what stands between a bad symbol and
// paper.
#include "code/symbol.h"
#include "conformance/code/symbols.h"

#include <doctest/doctest.h>

using namespace thawslip::code;

TEST_CASE("ZXing reads every version in use at every level, full to the last character") {
    REQUIRE(can_read_back());
    thawslip::test_support::Random random{12};
    for (int version = 1; version <= 40; version += version < 20 ? 1 : 5) {
        for (const Level level : {Level::Low, Level::Medium, Level::Quartile, Level::High}) {
            CAPTURE(version);
            const std::string text = thawslip::test_support::filling_text(random, version, level);
            CHECK(read_back(thawslip::test_support::symbol_for(text, version, level)) == text);
        }
    }
}

TEST_CASE("a symbol that was spoiled beyond repair is not read back as its text") {
    thawslip::test_support::Random random{13};
    const std::string text = thawslip::test_support::filling_text(random, 9, Level::Low);
    Symbol symbol = thawslip::test_support::symbol_for(text, 9, Level::Low);
    for (int i = 0; i < 800; ++i) {
        const std::size_t at = random.below(symbol.dark.size());
        symbol.dark[at] = !symbol.dark[at];
    }
    CHECK(read_back(symbol) != text);
}
