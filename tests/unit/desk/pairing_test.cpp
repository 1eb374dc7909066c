// Codes that let a phone in, on a clock that stands where it is put.

#include "desk/phones/pairing.h"

#include <doctest/doctest.h>
#include <set>
#include <string>

using namespace thawslip;
using desk::Pairing;
using desk::SteadyTime;
using std::chrono::milliseconds;
using std::chrono::minutes;
using std::chrono::seconds;

namespace {

const SteadyTime at_noon{std::chrono::hours{12}};

} // namespace

TEST_CASE("a code is eight of Crockford's 32 symbols, in fours") {
    // Each pair of digits is a byte, of which five bits are taken: his table of symbols.
    CHECK(desk::pairing_code("00010a101112131fff") == "01AG-HJKZ");
    CHECK(desk::pairing_code("20212a303132333f") ==
          "01AG-HJKZ"); // the other three bits say nothing
    CHECK(desk::pairing_code("0001020304050607") == "0123-4567");
    CHECK(desk::pairing_code("14151617191a1b1d") == "MNPQ-STVX"); // no I, L, O, U
    std::set<char> seen;
    for (int byte = 0; byte < 256; ++byte) {
        constexpr const char* digits = "0123456789abcdef";
        std::string random;
        for (int times = 0; times < 8; ++times) {
            random += {digits[byte / 16], digits[byte % 16]};
        }
        seen.insert(desk::pairing_code(random).front());
    }
    CHECK(seen.size() == 32);
}

TEST_CASE("a code is read as it is typed, by whoever looks at it") {
    CHECK(desk::typed_code("01ag-hjkz") == "01AGHJKZ");
    CHECK(desk::typed_code(" 01 AG HJ KZ ") == "01AGHJKZ");
    CHECK(desk::typed_code("oiag-hjkz") == "01AGHJKZ");
    CHECK(desk::typed_code("OLAG-HJKZ") == "01AGHJKZ");
    CHECK(desk::typed_code("").empty());
}

TEST_CASE("a code lets one phone in") {
    Pairing pairing{"01AG-HJKZ", at_noon};
    CHECK(pairing.is_open(at_noon));
    CHECK(pairing.lets_in("01ag hjkz", at_noon + seconds{3}));
    CHECK_FALSE(pairing.is_open(at_noon + seconds{3}));
    CHECK_FALSE(pairing.lets_in("01AG-HJKZ", at_noon + seconds{3}));
}

TEST_CASE("a code holds for two minutes") {
    Pairing in_time{"01AG-HJKZ", at_noon};
    CHECK(in_time.left(at_noon) == seconds{120});
    CHECK(in_time.left(at_noon + milliseconds{119'001}) == seconds{1});
    CHECK(in_time.lets_in("01AG-HJKZ", at_noon + milliseconds{119'999}));
    Pairing late{"01AG-HJKZ", at_noon};
    CHECK(late.left(at_noon + minutes{2}) == seconds{0});
    CHECK_FALSE(late.lets_in("01AG-HJKZ", at_noon + minutes{2}));
    CHECK_FALSE(late.lets_in("01AG-HJKZ", at_noon)); // for good
}

TEST_CASE("five wrong tries end a code, four do not") {
    Pairing four{"01AG-HJKZ", at_noon};
    Pairing five{"01AG-HJKZ", at_noon};
    for (int tries = 0; tries < 4; ++tries) {
        CHECK_FALSE(four.lets_in("01AG-HJK0", at_noon));
        CHECK_FALSE(five.lets_in("01AG-HJK0", at_noon));
    }
    CHECK_FALSE(five.lets_in("", at_noon));
    CHECK(four.lets_in("01AG-HJKZ", at_noon));
    CHECK_FALSE(five.lets_in("01AG-HJKZ", at_noon));
    CHECK(five.left(at_noon) == seconds{0});
}

TEST_CASE("only the whole code is right") {
    for (const std::string wrong : {"", "0", "01AG-HJK", "01AG-HJKZ0", "01AG-HJKZ\n", "10AG-HJKZ",
                                    "01AG.HJKZ", "U1AG-HJKZ"}) {
        CAPTURE(wrong);
        Pairing pairing{"01AG-HJKZ", at_noon};
        CHECK_FALSE(pairing.lets_in(wrong, at_noon));
    }
}

TEST_CASE("tries are counted by the span") {
    desk::Tries tries{2, seconds{60}};
    CHECK(tries.allow(at_noon));
    CHECK(tries.allow(at_noon + seconds{59}));
    CHECK_FALSE(tries.allow(at_noon + seconds{59}));
    CHECK(tries.allow(at_noon + seconds{60}));
    CHECK(tries.allow(at_noon + seconds{61}));
    CHECK_FALSE(tries.allow(at_noon + seconds{62}));
}
