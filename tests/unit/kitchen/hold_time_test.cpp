#include "kitchen/measures/hold_time.h"

#include <doctest/doctest.h>

namespace hold_time_test {

using namespace thawslip::kitchen;
using namespace std::chrono;

TEST_CASE("a holding time is read in seconds, minutes or hours") {
    CHECK(parse_hold("2 min").value() == minutes{2});
    CHECK(parse_hold("30 s").value() == seconds{30});
    CHECK(parse_hold("6 Seconds").value() == seconds{6});
    CHECK(parse_hold(" 45 sec").value() == seconds{45});
    CHECK(parse_hold("1 h").value() == hours{1});
    CHECK_FALSE(parse_hold("1½ min"));
    CHECK(parse_hold("2-3 min").value() == minutes{2}); // only the shorter is sure
}

TEST_CASE("what is no holding time is refused") {
    for (const auto* text : {"", "two minutes", "0 s", "0 min", "½ s", "-2 min", "80 h", "2"}) {
        CAPTURE(text);
        CHECK_FALSE(parse_hold(text));
    }
}

TEST_CASE("a holding time is written with its symbols") {
    CHECK(hold_text(minutes{10}) == "10 min");
    CHECK(hold_text(seconds{30}) == "30 s");
    CHECK(hold_text(seconds{90}) == "1 min 30 s");
}

} // namespace hold_time_test
