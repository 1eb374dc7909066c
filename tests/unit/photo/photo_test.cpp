#include "photo/formats.h"
#include "photo/photo.h"
#include "support/command.h"
#include "support/redirected.h"

#include <cstdlib>
#include <doctest/doctest.h>
#include <string>
#include <unistd.h>
#include <utility>

using namespace thawslip;

namespace {

std::string sample(const std::string& name) {
    return test_support::read_file(THAWSLIP_SOURCE_DIR "/tests/fuzz/corpus/photo/" + name);
}

Result<code::GreyPicture, photo::PhotoFault> decode(const std::string& bytes) {
    return photo::decode({reinterpret_cast<const std::uint8_t*>(bytes.data()), bytes.size()});
}

std::string fault_of(const std::string& bytes) {
    const auto picture = decode(bytes);
    return picture ? "none" : picture.fault().message;
}

} // namespace

TEST_CASE("pictures of every kind become grey ones of their size") {
    const struct {
        std::string name;
        int width;
        int height;
    } cases[] = {
        {"label.png", 140, 180}, {"label.jpg", 140, 180}, {"progressive.jpg", 140, 180},
        {"palette.png", 8, 8},   {"alpha-16.png", 4, 4},  {"interlaced.png", 8, 8},
    };
    for (const auto& c : cases) {
        CAPTURE(c.name);
        const auto picture = decode(sample(c.name));
        REQUIRE(picture);
        CHECK(picture.value().width == c.width);
        CHECK(picture.value().height == c.height);
        CHECK(picture.value().pixels.size() == static_cast<std::size_t>(c.width * c.height));
    }
}

TEST_CASE("a picture without width or without height has no pixels") {
    for (const auto& [width, height] : {std::pair{0U, 4U}, std::pair{4U, 0U}, std::pair{0U, 0U}}) {
        CHECK(photo::refusal(width, height, {}) == "the picture has no pixels");
    }
    CHECK(photo::refusal(4, 4, {}).empty());
}

TEST_CASE("a JPEG is halved as often as its pixels ask, and no more") {
    const auto bytes = sample("label.jpg"); // 140 x 180: 25 200 pixels
    const struct {
        std::uint64_t most;
        int width;
        int height;
    } cases[] = {{25'200, 140, 180}, {25'199, 70, 90}, {6'300, 70, 90}, {6'299, 35, 45}};
    for (const auto& c : cases) {
        CAPTURE(c.most);
        photo::Limits limits;
        limits.read_pixels = c.most;
        const auto picture = photo::decode(
            {reinterpret_cast<const std::uint8_t*>(bytes.data()), bytes.size()}, limits);
        REQUIRE(picture);
        CHECK(picture.value().width == c.width);
        CHECK(picture.value().height == c.height);
    }
}

TEST_CASE("what is no picture, or claims too much, is refused in words") {
    const auto png = sample("label.png");
    const struct {
        std::string about;
        std::string bytes;
        std::string fault;
    } cases[] = {
        {"nothing", "", "it is neither a PNG nor a JPEG picture"},
        {"a telephone's",
         std::string{"\0\0\0\x18"
                     "ftypheic\0\0\0\0mif1heic",
                     24},
         "this is a HEIC picture, as some telephones take them, and cannot be read here: send it "
         "as "
         "JPEG, or set the camera to JPEG"},
        {"the first bytes of one",
         std::string{"\0\0\0\x18"
                     "ftypheic",
                     12},
         "this is a HEIC picture"},
        {"a film",
         std::string{"\0\0\0\x18"
                     "ftypisom\0\0\0\0",
                     16},
         "it is neither a PNG nor a JPEG picture"},
        {"words", "plum and ginger compote", "it is neither a PNG nor a JPEG picture"},
        {"sixty thousand by sixty thousand", sample("claims-much.png"),
         "the picture is 60000 x 60000 pixels; at most 120 million are taken"},
        {"no side", sample("no-pixels.png"), "the PNG is damaged: "},
        {"cut after the header", png.substr(0, 40), "the PNG is damaged: "},
        {"cut in the rows", png.substr(0, png.size() / 2), "the PNG is damaged: "},
        {"the first bytes alone", "\xFF\xD8\xFF", "the JPEG is damaged: "},
    };
    for (const auto& c : cases) {
        CAPTURE(c.about);
        const auto fault = fault_of(c.bytes);
        CHECK(fault.substr(0, c.fault.size()) == c.fault);
        CHECK_FALSE(fault.ends_with(": ")); // the library says how
    }
}

TEST_CASE("a picture is taken up to its limits and not beyond") {
    photo::Limits limits;
    limits.side = 300;
    limits.pixels = 60'000;
    for (const auto& [width, height] :
         {std::pair<std::uint64_t, std::uint64_t>{200, 300}, {300, 200}, {1, 300}, {300, 1}}) {
        CHECK(photo::refusal(width, height, limits).empty());
    }
    for (const auto& [width, height] :
         {std::pair<std::uint64_t, std::uint64_t>{201, 299}, {1, 301}, {301, 1}}) {
        CHECK_FALSE(photo::refusal(width, height, limits).empty());
    }
    limits.pixels = 3'999'999;
    CHECK(photo::refusal(301, 7, limits) ==
          "the picture is 301 x 7 pixels; at most 3 million are taken");
    limits.pixels = 4'000'000;
    CHECK(photo::refusal(301, 7, limits).find("at most 4 million") != std::string::npos);
}

TEST_CASE("a JPEG that is larger than is read is made smaller while it is decoded") {
    const auto file = sample("label.jpg"); // 140 x 180
    const auto decoded = [&file](std::uint64_t read_pixels) {
        photo::Limits limits;
        limits.read_pixels = read_pixels;
        const auto picture = photo::decode_jpeg(
            {reinterpret_cast<const std::uint8_t*>(file.data()), file.size()}, limits);
        REQUIRE(picture);
        return std::pair{picture.value().width, picture.value().height};
    };
    CHECK(decoded(140 * 180) == std::pair{140, 180});
    CHECK(decoded(140 * 180 - 1) == std::pair{70, 90});
    CHECK(decoded(70 * 90 - 1) == std::pair{35, 45});
    CHECK(decoded(1) == std::pair{18, 23}); // an eighth, rounded up, is the least
}

TEST_CASE("a JPEG of endless scans is refused before they are all decoded") {
    const auto whole = sample("progressive.jpg");
    const auto last = whole.rfind("\xFF\xDA"); // start of a scan: ISO/IEC 10918-1, B.2.3
    REQUIRE(last != std::string::npos);
    const auto scan = whole.substr(last, whole.size() - 2 - last);
    auto bytes = whole.substr(0, whole.size() - 2);
    for (int i = 0; i < 200; ++i) {
        bytes += scan;
    }
    CHECK(fault_of(bytes + "\xFF\xD9") == "the JPEG is damaged: more than 100 scans");
}

TEST_CASE("a picture too flat for any code holds none, however wide it is") {
    for (const auto& [width, height] : {std::pair{1, 1},
                                        {4000, 1},
                                        {65'500, 1},
                                        {1, 65'500},
                                        {65'500, 40},
                                        {20, 20'000},
                                        {21, 21}}) {
        CAPTURE(width);
        CAPTURE(height);
        code::GreyPicture picture{width, height, {}};
        picture.pixels.assign(static_cast<std::size_t>(width) * static_cast<std::size_t>(height),
                              0);
        for (std::size_t i = 0; i < picture.pixels.size(); i += 2) {
            picture.pixels[i] = 255;
        }
        CHECK(code::read_picture(picture).empty());
    }
}

TEST_CASE(
    "a picture that is larger than it needs to be is halved: every four pixels are their mean") {
    for (const std::string name : {"label.png", "interlaced.png"}) {
        CAPTURE(name);
        const auto bytes = sample(name);
        const auto whole = decode(bytes);
        REQUIRE(whole);
        const auto& full = whole.value();
        photo::Limits limits;
        limits.read_pixels = full.pixels.size() - 1;
        const auto small = photo::decode(
            {reinterpret_cast<const std::uint8_t*>(bytes.data()), bytes.size()}, limits);
        REQUIRE(small);
        const auto& half = small.value();
        REQUIRE(half.width == full.width / 2);
        REQUIRE(half.height == full.height / 2);
        int wrong = 0;
        for (int y = 0; y < half.height; ++y) {
            for (int x = 0; x < half.width; ++x) {
                double sum = 0;
                for (const int i : {0, 1, 2, 3}) {
                    sum += full.pixels[full.index(2 * x + i % 2, 2 * y + i / 2)];
                }
                const double difference = half.pixels[half.index(x, y)] - sum / 4;
                wrong += difference <= -0.5 || difference > 0.5 ? 1 : 0; // a half goes up
            }
        }
        CHECK(wrong == 0);
    }
}

TEST_CASE("a file is taken up to the bytes that are allowed, and not one more") {
    const auto bytes = sample("label.png");
    const auto fault = [&bytes](std::size_t allowed) {
        photo::Limits limits;
        limits.bytes = allowed;
        const auto picture = photo::decode(
            {reinterpret_cast<const std::uint8_t*>(bytes.data()), bytes.size()}, limits);
        return picture ? std::string{} : picture.fault().message;
    };
    CHECK(fault(bytes.size()).empty());
    CHECK(fault(bytes.size() - 1) == "the file is larger than 0 MiB");
    photo::Limits limits;
    limits.bytes = std::size_t{3} << 20U;
    const std::vector<std::uint8_t> large(limits.bytes + 1);
    CHECK(photo::decode(large, limits).fault().message == "the file is larger than 3 MiB");
}

namespace {

int grey(const code::GreyPicture& picture, int x, int y) {
    return picture.pixels[picture.index(x, y)];
}

/// How much two pictures of one size differ, in the mean.
double difference(const code::GreyPicture& one, const code::GreyPicture& other) {
    REQUIRE(one.pixels.size() == other.pixels.size());
    double sum = 0;
    for (std::size_t i = 0; i < one.pixels.size(); ++i) {
        sum += std::abs(one.pixels[i] - other.pixels[i]);
    }
    return sum / static_cast<double>(one.pixels.size());
}

code::GreyPicture decoded(const std::string& bytes, std::uint64_t read_pixels = 1'000'000) {
    photo::Limits limits;
    limits.read_pixels = read_pixels;
    const auto picture =
        photo::decode({reinterpret_cast<const std::uint8_t*>(bytes.data()), bytes.size()}, limits);
    REQUIRE(picture);
    return picture.value();
}

} // namespace

TEST_CASE("each pixel has the grey that its file says, and what is transparent is paper") {
    const auto palette = decoded(sample("palette.png")); // each row: entries 0 1 2 3 3 2 1 0
    // Each pixel is nearly black, and covers an eighth of the paper at most.
    const auto alpha = decoded(sample("alpha-16.png"));
    for (int y = 0; y < 8; ++y) {
        for (const int x : {0, 7}) {
            CHECK(grey(palette, x, y) == 0);
        }
        for (const int x : {1, 6}) { // white, half of it transparent
            CHECK(grey(palette, x, y) == 255);
        }
        for (const int x : {2, 5}) {
            CHECK(grey(palette, x, y) == 0x5A);
        }
        CHECK(grey(palette, 3, y) > 10); // a dark red
        CHECK(grey(palette, 3, y) < 200);
        CHECK(grey(palette, 4, y) == grey(palette, 3, y));
    }
    for (const auto pixel : alpha.pixels) {
        CHECK(pixel > 220);
    }
}

TEST_CASE("what is transparent all through is as white as paper") {
    // ISO/IEC 15948:2004: one pixel of colour type 6, of which nothing covers anything.
    const std::string digits =
        "89504e470d0a1a0a0000000d49484452000000010000000108060000001f15c4890000000b494441"
        "54789c6360000200000500017a5eab3f0000000049454e44ae426082";
    std::string bytes;
    for (std::size_t i = 0; i < digits.size(); i += 2) {
        bytes += static_cast<char>(std::stoi(digits.substr(i, 2), nullptr, 16));
    }
    CHECK(grey(decoded(bytes), 0, 0) == 255);
}

TEST_CASE("an interlaced picture has each pixel where its pass puts it") {
    // ISO/IEC 15948:2004, 8.2, table of the seven passes: where each begins, and its steps. In each
    // row of a pass of the file every second pixel is white, the first among them.
    const struct {
        int x, y, right, down;
    } passes[] = {{0, 0, 8, 8}, {4, 0, 8, 8}, {0, 4, 4, 8}, {2, 0, 4, 4},
                  {0, 2, 2, 4}, {1, 0, 2, 2}, {0, 1, 1, 2}};
    const auto picture = decoded(sample("interlaced.png"));
    int seen = 0;
    for (const auto& pass : passes) {
        for (int y = pass.y; y < 8; y += pass.down) {
            for (int x = pass.x, count = 0; x < 8; x += pass.right, ++count) {
                CAPTURE(x);
                CAPTURE(y);
                CHECK(grey(picture, x, y) == (count % 2 == 0 ? 255 : 0));
                ++seen;
            }
        }
    }
    CHECK(seen == 64);
}

TEST_CASE("a JPEG shows what the PNG of the same label does, whole or halved on the way") {
    for (const std::string name : {"label.jpg", "progressive.jpg"}) {
        CAPTURE(name);
        for (const std::uint64_t most : {25'200U, 6'300U, 1'575U}) {
            CAPTURE(most);
            CHECK(difference(decoded(sample(name), most), decoded(sample("label.png"), most)) < 12);
        }
    }
    auto inverse = decoded(sample("label.png"));
    for (auto& pixel : inverse.pixels) {
        pixel = static_cast<std::uint8_t>(255 - pixel);
    }
    CHECK(difference(inverse, decoded(sample("label.jpg"))) > 100); // so that 12 is little
}

TEST_CASE("a PNG is halved as often as its pixels ask, and no more") {
    for (const auto& [most, width] :
         {std::pair{25'200, 140}, {25'199, 70}, {6'300, 70}, {6'299, 35}, {1'574, 17}}) {
        CAPTURE(most);
        CHECK(decoded(sample("label.png"), static_cast<std::uint64_t>(most)).width == width);
    }
}

TEST_CASE("a JPEG that is cut short gives the rows that it has, and nothing is said of it") {
    const auto bytes = sample("label.jpg");
    const auto whole = decoded(bytes);
    char path[] = "/tmp/thawslip-photo-XXXXXX";
    const int file = ::mkstemp(path);
    REQUIRE(file >= 0);
    const auto cut = [&] {
        const test_support::Redirected quiet{STDERR_FILENO, file};
        return decoded(bytes.substr(0, bytes.size() * 2 / 3));
    }();
    CHECK(::lseek(file, 0, SEEK_END) == 0);
    ::close(file);
    ::unlink(path);
    CHECK(cut.width == whole.width);
    CHECK(cut.height == whole.height);
    int same = 0;
    for (std::size_t i = 0; i < whole.pixels.size() / 3; ++i) {
        same += cut.pixels[i] == whole.pixels[i] ? 1 : 0;
    }
    CHECK(same > 8'000); // of 8 400 in the upper third
    CHECK(cut.pixels != whole.pixels);
}

TEST_CASE("a hundred scans of a JPEG are decoded, and one more is not") {
    const auto whole = sample("progressive.jpg");
    const auto last = whole.rfind("\xFF\xDA"); // start of a scan: ISO/IEC 10918-1, B.2.3
    const auto scan = whole.substr(last, whole.size() - 2 - last);
    int scans = 0;
    for (auto at = whole.find("\xFF\xDA"); at != std::string::npos;
         at = whole.find("\xFF\xDA", at + 1)) {
        ++scans;
    }
    auto bytes = whole.substr(0, whole.size() - 2);
    for (; scans < 100; ++scans) {
        bytes += scan;
    }
    CHECK(fault_of(bytes + "\xFF\xD9") == "none");
    CHECK(fault_of(bytes + scan + "\xFF\xD9") == "the JPEG is damaged: more than 100 scans");
}

TEST_CASE("a file is told by its first bytes, all of them") {
    const std::string neither = "it is neither a PNG nor a JPEG picture";
    const std::string png = "\x89PNG\r\n\x1A\n"; // ISO/IEC 15948:2004, 5.2
    const std::string jpeg = "\xFF\xD8\xFF";     // ISO/IEC 10918-1, B.1.1.3: SOI and a marker
    CHECK(fault_of(png).starts_with("the PNG is damaged: "));
    CHECK(fault_of(jpeg).starts_with("the JPEG is damaged: "));
    for (const auto& magic : {png, jpeg}) {
        CHECK(fault_of(magic.substr(0, magic.size() - 1)) == neither);
        for (std::size_t i = 0; i < magic.size(); ++i) {
            auto other = magic;
            other[i] = 'x';
            CAPTURE(i);
            CHECK(fault_of(other + std::string(20, 'x')) == neither);
        }
    }
}

TEST_CASE("each brand of the telephones' format is told as that, and no other") {
    // ISO/IEC 23008-12 and its registered brands, from memory.
    const auto fault = [](const std::string& type, const std::string& brand) {
        return fault_of(std::string(4, '\x18') + type + brand).substr(0, 22);
    };
    for (const auto* brand :
         {"heic", "heix", "heim", "heis", "hevc", "hevx", "mif1", "msf1", "avif"}) {
        CAPTURE(brand);
        CHECK(fault("ftyp", brand) == "this is a HEIC picture");
        CHECK(fault("ftyq", brand) == "it is neither a PNG no");
    }
    CHECK(fault("ftyp", "isom") == "it is neither a PNG no");
    CHECK(fault("ftyp", "hei") == "it is neither a PNG no");
    CHECK(fault("ftyp", "heicheic") == "this is a HEIC picture");
    // What stands behind a file's last byte in memory is none of it.
    const std::string whole = std::string(4, '\x18') + "ftypheic";
    const auto cut = photo::decode({reinterpret_cast<const std::uint8_t*>(whole.data()), 11});
    CHECK(cut.fault().message == "it is neither a PNG nor a JPEG picture");
}
