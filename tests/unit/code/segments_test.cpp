#include "code/segments.h"
#include "support/random.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <string>

using namespace thawslip::code;
using thawslip::test_support::Random;

namespace {

constexpr VersionGroup groups[] = {VersionGroup::Small, VersionGroup::Medium, VersionGroup::Large};

bool carries(Mode mode, std::string_view text) {
    return std::ranges::all_of(text, [mode](char c) {
        return mode == Mode::Byte || (mode == Mode::Alphanumeric && is_alphanumeric(c)) ||
               (c >= '0' && c <= '9');
    });
}

/// The fewest bits over every way there is to cut `text` and to choose the modes: tries every
/// first segment on the best cut of what follows it.
std::size_t fewest_bits(std::string_view text, VersionGroup group) {
    std::vector<std::size_t> fewest(text.size() + 1, 0); // of the text from here to its end
    for (std::size_t start = text.size(); start-- > 0;) {
        fewest[start] = ~std::size_t{0};
        for (std::size_t length = 1; start + length <= text.size(); ++length) {
            for (const Mode mode : {Mode::Numeric, Mode::Alphanumeric, Mode::Byte}) {
                if (carries(mode, text.substr(start, length))) {
                    fewest[start] = std::min(fewest[start], segment_bits(mode, length, group) +
                                                                fewest[start + length]);
                }
            }
        }
    }
    return fewest.front();
}

std::string mixed_text(Random& random, std::size_t length) {
    std::string text(length, ' ');
    constexpr std::string_view kinds[] = {"0123456789", "AZ $%*+-./:", "az,\n"};
    std::string_view kind = kinds[0];
    for (char& c : text) {
        kind = random.chance(6) ? kinds[random.below(3)] : kind;
        c = kind[random.below(kind.size())];
    }
    return text;
}

} // namespace

TEST_CASE("a text is cut into segments that carry it whole, at the cost that is said") {
    Random random{6};
    for (int i = 0; i < 300; ++i) {
        const std::string text = mixed_text(random, random.below(120));
        const VersionGroup group = groups[random.below(3)];
        std::string joined;
        std::size_t bits = 0;
        const Segments cut = segment(text, group);
        for (const Segment& each : cut.segments) {
            CHECK(carries(each.mode, each.text));
            joined += each.text;
            bits += segment_bits(each.mode, each.text.size(), group);
        }
        CHECK(joined == text);
        CHECK(bits == cut.bits);
    }
}

TEST_CASE("no other cut of a text is cheaper") {
    Random random{7};
    for (int i = 0; i < 150; ++i) {
        const std::string text = mixed_text(random, random.below(60));
        for (const VersionGroup group : groups) {
            CAPTURE(text);
            CHECK(segment(text, group).bits == fewest_bits(text, group));
        }
    }
    // Long enough for a change of mode to pay.
    for (const std::string text : {"12345678901234ab", "ABCDEFGHIJ\nKLMNO", "A12345678901234"}) {
        CHECK(segment(text, VersionGroup::Small).bits == fewest_bits(text, VersionGroup::Small));
    }
}

TEST_CASE("a newline between long lines of capitals is a byte of its own") {
    const Segments cut =
        segment("SQUASH AND RED LENTIL STEW\nTHAW IN REFRIGERATOR", VersionGroup::Small);
    REQUIRE(cut.segments.size() == 3);
    CHECK(cut.segments[0].mode == Mode::Alphanumeric);
    CHECK(cut.segments[1].mode == Mode::Byte);
    CHECK(cut.segments[1].text == "\n");
    CHECK(cut.segments[2].mode == Mode::Alphanumeric);
}

TEST_CASE("an empty text has no segments and costs nothing") {
    CHECK(segment("", VersionGroup::Small).segments.empty());
    CHECK(segment("", VersionGroup::Small).bits == 0);
}
