// Pictures that mean harm end the process that looks at them, and nothing else. PNG: W3C, Portable
// Network Graphics (Third Edition), 5 and 11.2.1.

#include "running_desk.h"

#include <doctest/doctest.h>
#include <fmt/format.h>
#include <future>
#include <zlib.h>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

std::string number(std::uint32_t value) {
    std::string bytes;
    for (int shift = 24; shift >= 0; shift -= 8) {
        bytes += static_cast<char>(value >> shift);
    }
    return bytes;
}

std::string chunk(const std::string& type, const std::string& data) {
    const auto all = type + data;
    const auto sum =
        ::crc32(0, reinterpret_cast<const Bytef*>(all.data()), static_cast<uInt>(all.size()));
    return number(static_cast<std::uint32_t>(data.size())) + all +
           number(static_cast<std::uint32_t>(sum));
}

std::string deflated(const std::string& bytes) {
    uLongf size = ::compressBound(bytes.size());
    std::string out(size, '\0');
    ::compress(reinterpret_cast<Bytef*>(out.data()), &size,
               reinterpret_cast<const Bytef*>(bytes.data()), bytes.size());
    out.resize(size);
    return out;
}

/// A grey PNG of these dimensions, which says what its pixels are.
std::string png(std::uint32_t width, std::uint32_t height, const std::string& pixels) {
    return "\x89PNG\r\n\x1a\n" +
           chunk("IHDR", number(width) + number(height) + std::string{"\x08\0\0\0\0", 5}) +
           chunk("IDAT", deflated(pixels)) + chunk("IEND", "");
}

/// Noise of edges, in which a reader of codes finds much to look at.
std::string busy_pixels(std::uint32_t width, std::uint32_t height) {
    std::string pixels;
    std::uint32_t state = 17;
    for (std::uint32_t y = 0; y < height; ++y) {
        pixels += '\0';
        for (std::uint32_t x = 0; x < width; ++x) {
            state = state * 1'664'525U + 1'013'904'223U;
            pixels += (state >> 24U) % 7 < 3 ? '\0' : '\xFF';
        }
    }
    return pixels;
}

std::string some_text(const Reply& reply) {
    return json_of(reply).at("messages").at(0).at("text").get<std::string>();
}

} // namespace

TEST_CASE("a picture that means harm is refused with words, and the desk answers on") {
    const User user;
    const RunningDesk desk{user};
    const std::pair<const char*, std::string> pictures[] = {
        {"nothing", ""},
        {"no picture", "a text that says nothing"},
        {"a PNG cut off", png(400, 400, busy_pixels(400, 400)).substr(0, 90)},
        {"a PNG of gigantic size", png(0x7FFF'FFFFU, 0x7FFF'FFFFU, "little")},
        {"a PNG larger than any limit", png(60'000, 60'000, "little")},
        {"a PNG that says more than it has", png(9'000, 9'000, std::string(1000, '\0'))},
        {"a JPEG that is only its beginning", std::string{"\xFF\xD8\xFF\xE0", 4} + "JFIF"},
        {"a bomb", png(10'900, 10'900, std::string(10'901ULL * 10'900ULL, '\0'))}};
    for (const auto& [what, bytes] : pictures) {
        CAPTURE(what);
        const auto reply = desk.post_bytes("/api/read?as=photo", bytes);
        CHECK(reply.status >= 200);
        CHECK(reply.status < 500);
        CHECK_FALSE(some_text(reply).empty());
        CHECK(desk.get("/api/state").status == 200);
    }
}

TEST_CASE("while pictures are looked at, the desk answers others") {
    const User user;
    const RunningDesk desk{user};
    const auto busy = png(100, 80, busy_pixels(100, 80));
    std::vector<std::future<Reply>> readings;
    for (int i = 0; i < 3; ++i) { // one more than are read at a time
        readings.push_back(std::async(std::launch::async,
                                      [&] { return desk.post_bytes("/api/read?as=photo", busy); }));
    }
    CHECK(desk.get("/api/state").status == 200);
    for (auto& reading : readings) {
        CHECK_FALSE(some_text(reading.get()).empty());
    }
    CHECK(desk.get("/api/state").status == 200);
}

TEST_CASE("the text of a code in a photograph is read as `read` reads it") {
    User user;
    std::filesystem::copy_file(sample_day, user.day("orchard.toml"));
    // One label, as large as a screen shows it.
    const auto labels = user.thawslip("labels " + shell_word(user.day("orchard.toml")) + " -o " +
                                      shell_word(user.home / "labels.svg") + " --bag 1");
    REQUIRE(labels.status == 0);
    REQUIRE(run("rsvg-convert -d 200 -p 200 " + shell_word(user.home / "labels.svg") + " -o " +
                shell_word(user.home / "label.png"))
                .status == 0);
    const auto picture = read_file(user.home / "label.png");
    const RunningDesk desk{user};
    const auto reply = desk.post_bytes("/api/read?as=photo", picture);
    REQUIRE(reply.status == 200);
    const auto bags = json_of(reply).at("bags");
    REQUIRE(bags.size() == 1);
    const auto said = user.thawslip("read --json " + shell_word(user.home / "label.png"));
    REQUIRE(said.status == 0);
    const auto expected = json::parsed(said.out);
    for (const auto& [name, value] : expected.items()) {
        CAPTURE(name);
        CHECK(bags[0].at(name) == value);
    }
}
