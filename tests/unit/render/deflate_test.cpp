#include "render/deflate.h"
#include "support/random.h"

#include <doctest/doctest.h>
#include <zlib.h>

using namespace thawslip;

namespace {

/// What zlib, which shares no code with the packer, makes of it.
std::string unpacked(std::string_view packed, std::size_t expected) {
    std::string bytes(expected + 1, '?');
    auto size = static_cast<uLongf>(bytes.size());
    const int status = uncompress(reinterpret_cast<Bytef*>(bytes.data()), &size,
                                  reinterpret_cast<const Bytef*>(packed.data()),
                                  static_cast<uLong>(packed.size()));
    REQUIRE(status == Z_OK);
    bytes.resize(size);
    return bytes;
}

} // namespace

TEST_CASE("zlib unpacks what was packed: nothing, one byte, text, noise, a megabyte") {
    render::Deflater deflater;
    test_support::Random random{3};
    std::string noise;
    for (int i = 0; i < 100'000; ++i) {
        noise += static_cast<char>(random.below(256));
    }
    const std::string samples[] = {"", "q", "q\n1 0 0 1 0 0 cm\nQ\n", noise,
                                   std::string(1 << 20, ' ')};
    for (const auto& sample : samples) {
        CAPTURE(sample.size());
        CHECK(unpacked(deflater.pack(sample), sample.size()) == sample);
    }
    CHECK(deflater.pack(samples[4]).size() < 2000);
}

TEST_CASE("the same bytes pack alike, whatever was packed before") {
    const std::string text = "100 200 Td\n[<0001>-12<0002>]TJ\n";
    render::Deflater one;
    render::Deflater other;
    const std::string first{one.pack(text)};
    other.pack(std::string(5000, 'x'));
    CHECK(other.pack(text) == first);
    CHECK(one.pack(text) == first);
}

TEST_CASE("CRC-32 is that of ISO/IEC 3309 and goes on from where it stopped") {
    // The check value of CRC-32: of the nine digits it is 0xCBF43926 (from memory).
    CHECK(render::crc32(0, "123456789") == 0xCBF43926U);
    CHECK(render::crc32(render::crc32(0, "1234"), "56789") == 0xCBF43926U);
    CHECK(render::crc32(0, "") == 0);
}
