// Published capacities of QR Code symbols, in characters of one segment.
#include "code/capacity.h"
#include "code/segments.h"

#include <doctest/doctest.h>
#include <qrcodegen/qrcodegen.hpp>

using namespace thawslip::code;

namespace {

std::size_t capacity(int version, Level level, Mode mode) {
    const auto bits = static_cast<std::size_t>(8 * blocks_of(version, level).data_codewords());
    std::size_t characters = 0;
    while (segment_bits(mode, characters + 1, group_of(version)) <= bits) {
        ++characters;
    }
    return characters;
}

struct Row {
    int version;
    Level level;
    std::size_t numeric, alphanumeric, bytes;
};

} // namespace

TEST_CASE("capacities are those that DENSO WAVE publishes") {
    // DENSO WAVE, QRcode.com, "Information capacity and versions of the QR Code", tables of
    // versions 31-40 and 1-10.
    constexpr Row rows[] = {
        {1, Level::Low, 41, 25, 17},
        {40, Level::Low, 7089, 4296, 2953},
        {31, Level::Low, 4417, 2677, 1840},
        {33, Level::Medium, 3909, 2369, 1628},
        {35, Level::Quartile, 3081, 1867, 1283},
        {37, Level::High, 2625, 1591, 1093},
    };
    for (const Row& row : rows) {
        CAPTURE(row.version);
        CHECK(capacity(row.version, row.level, Mode::Numeric) == row.numeric);
        CHECK(capacity(row.version, row.level, Mode::Alphanumeric) == row.alphanumeric);
        CHECK(capacity(row.version, row.level, Mode::Byte) == row.bytes);
    }
}

TEST_CASE("capacities of the versions that labels use are those of ISO/IEC 18004") {
    // ISO/IEC 18004:2015, table 7 "Number of symbol characters and input data capacity" (measured
    // through qrcodegen 1.8.0, which follows it).
    constexpr Row rows[] = {
        {2, Level::Low, 77, 47, 32},          {5, Level::Medium, 202, 122, 84},
        {7, Level::Quartile, 207, 125, 86},   {8, Level::High, 202, 122, 84},
        {9, Level::Medium, 432, 262, 180},    {10, Level::Medium, 513, 311, 213},
        {10, Level::Low, 652, 395, 271},      {11, Level::Quartile, 427, 259, 177},
        {13, Level::High, 427, 259, 177},     {14, Level::Medium, 871, 528, 362},
        {15, Level::Quartile, 703, 426, 292}, {17, Level::High, 674, 408, 280},
        {20, Level::Low, 2061, 1249, 858},    {20, Level::High, 919, 557, 382},
    };
    for (const Row& row : rows) {
        CAPTURE(row.version);
        CHECK(capacity(row.version, row.level, Mode::Numeric) == row.numeric);
        CHECK(capacity(row.version, row.level, Mode::Alphanumeric) == row.alphanumeric);
        CHECK(capacity(row.version, row.level, Mode::Byte) == row.bytes);
    }
}

TEST_CASE("a hundred digits at level M fit version 3, as in DENSO WAVE's worked example") {
    CHECK(capacity(2, Level::Medium, Mode::Numeric) < 100);
    CHECK(capacity(3, Level::Medium, Mode::Numeric) >= 100);
}

TEST_CASE(
    "another encoder puts as many bytes into every version at every level, and not one more") {
    // qrcodegen (Nayuki, QR Code generator library 1.8.0), after ISO/IEC 18004:2015, table 7.
    using qrcodegen::QrCode;
    constexpr QrCode::Ecc their_levels[] = {QrCode::Ecc::LOW, QrCode::Ecc::MEDIUM,
                                            QrCode::Ecc::QUARTILE, QrCode::Ecc::HIGH};
    const auto takes = [&](std::size_t bytes, int version, Level level) {
        const std::vector<std::uint8_t> data(bytes, 'x');
        try {
            QrCode::encodeSegments({qrcodegen::QrSegment::makeBytes(data)},
                                   their_levels[static_cast<int>(level)], version, version, 0,
                                   false);
            return true;
        } catch (const qrcodegen::data_too_long&) {
            return false;
        }
    };
    for (int version = 1; version <= 40; ++version) {
        for (const Level level : {Level::Low, Level::Medium, Level::Quartile, Level::High}) {
            CAPTURE(version);
            CAPTURE(level);
            const auto bytes = capacity(version, level, Mode::Byte);
            CHECK(takes(bytes, version, level));
            CHECK_FALSE(takes(bytes + 1, version, level));
        }
    }
}
