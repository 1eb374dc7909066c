// zbar 0.23.92, a reader that shares no code with ZXing, reads what is drawn.
#include "code/picture.h"
#include "conformance/code/symbols.h"
#include "damage/readers.h"

#include <doctest/doctest.h>

using namespace thawslip::code;

TEST_CASE("zbar reads every version in use at every level, full to the last character") {
    thawslip::test_support::Random random{14};
    for (int version = 1; version <= 40; version += version < 20 ? 1 : 5) {
        for (const Level level : {Level::Low, Level::Medium, Level::Quartile, Level::High}) {
            CAPTURE(version);
            const std::string text = thawslip::test_support::filling_text(random, version, level);
            const GreyPicture drawn =
                picture_of(thawslip::test_support::symbol_for(text, version, level), 3);
            CHECK(thawslip::damage::zbar_reads({drawn.width, drawn.height, drawn.pixels}, text));
        }
    }
}
