// Our cut of a text against that of qrcodegen (Nayuki, QR Code generator library 1.8.0), which
// keeps to one mode for the whole text.
#include "code/message.h"
#include "code/segments.h"
#include "unit/code/random_messages.h"

#include <doctest/doctest.h>
#include <qrcodegen/qrcodegen.hpp>

using namespace thawslip::code;
using qrcodegen::QrSegment;

namespace {

std::size_t qrcodegen_bits(const std::string& text, int version) {
    std::size_t bits = 0;
    for (const QrSegment& each : QrSegment::makeSegments(text.c_str())) {
        bits += 4 + static_cast<std::size_t>(each.getMode().numCharCountBits(version)) +
                each.getData().size();
    }
    return bits;
}

} // namespace

TEST_CASE(
    "our cut of a label's text is never dearer than qrcodegen's, and a sixth cheaper overall") {
    thawslip::test_support::Random random{11};
    std::size_t ours = 0;
    std::size_t theirs = 0;
    for (int i = 0; i < 300; ++i) {
        const std::string text = write(thawslip::test_support::random_message(random));
        for (const int version : {9, 14, 30}) {
            const std::size_t bits = segment(text, group_of(version)).bits;
            CHECK(bits <= qrcodegen_bits(text, version));
            ours += bits;
            theirs += qrcodegen_bits(text, version);
        }
    }
    CHECK(ours * 6 < theirs * 5);
}

TEST_CASE("segment sizes are those that qrcodegen makes") {
    for (std::size_t length = 1; length < 40; ++length) {
        const std::string digits(length, '7');
        const std::string letters(length, 'A');
        const std::string bytes(length, 'a');
        for (const int version : {1, 9, 10, 26, 27, 40}) {
            const VersionGroup group = group_of(version);
            CHECK(segment_bits(Mode::Numeric, length, group) == qrcodegen_bits(digits, version));
            CHECK(segment_bits(Mode::Alphanumeric, length, group) ==
                  qrcodegen_bits(letters, version));
            CHECK(segment_bits(Mode::Byte, length, group) == qrcodegen_bits(bytes, version));
        }
    }
}
