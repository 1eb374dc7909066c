// Codes of which so much is hidden that a plain reader gives up.

#include "code/capacity.h"
#include "code/codewords.h"
#include "code/draw.h"
#include "code/picture.h"
#include "code/recover/recover.h"
#include "code/recover/reed_solomon.h"
#include "code/recover/seen_modules.h"
#include "code/recover/text_of_codewords.h"
#include "support/random.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <set>
#include <utility>

using namespace thawslip::code;
using thawslip::test_support::Random;
using Bytes = std::vector<std::uint8_t>;

namespace {

Symbol symbol_of(const std::string& text, int version, Level level) {
    return draw(segment(text, group_of(version)).segments, version, level);
}

const std::string stew = "SQUASH AND RED LENTIL STEW\nSERVES 6 * BAG K7Q-2M4-9XC";

SeenModules clearly_seen(const Symbol& symbol) {
    SeenModules seen{symbol.version, {}};
    for (const bool dark : symbol.dark) {
        seen.darkness.push_back(dark ? 80.0F : -80.0F);
    }
    return seen;
}

/// Paints over a rectangle of a picture with paper.
void hide(GreyPicture& picture, int left, int top, int width, int height) {
    for (int y = top; y < top + height; ++y) {
        std::fill_n(picture.pixels.begin() + static_cast<std::ptrdiff_t>(picture.index(left, y)),
                    width, std::uint8_t{220});
    }
}

} // namespace

TEST_CASE("a Reed–Solomon word is put right as far as its check codewords go, and no further") {
    // ISO/IEC 18004:2015, annex I, figure I.1 "01234567", version 1-M: data and check codewords
    // (from memory; codewords_test holds the roots of every symbol's words).
    const Bytes word = {0x10, 0x20, 0x0C, 0x56, 0x61, 0x80, 0xEC, 0x11, 0xEC,
                        0x11, 0xEC, 0x11, 0xEC, 0x11, 0xEC, 0x11, 0xA5, 0x24,
                        0xD4, 0xC1, 0xED, 0x36, 0xC7, 0x87, 0x2C, 0x55};
    constexpr std::size_t check = 10;
    CHECK(corrected(word, check, {}, 0) == word);
    Random random{21};
    for (std::size_t erasures = 0; erasures <= check; ++erasures) {
        for (std::size_t errors = 0; errors <= check / 2; ++errors) {
            CAPTURE(erasures);
            CAPTURE(errors);
            auto spoiled = word;
            std::vector<std::size_t> places(word.size());
            for (std::size_t i = 0; i < places.size(); ++i) {
                places[i] = i;
            }
            for (std::size_t i = places.size(); i-- > 1;) {
                std::swap(places[i], places[random.below(i + 1)]);
            }
            for (std::size_t i = 0; i < erasures + errors; ++i) {
                spoiled[places[i]] = static_cast<std::uint8_t>(spoiled[places[i]] ^ (1 + i));
            }
            const std::vector<std::size_t> erased{
                places.begin(), places.begin() + static_cast<std::ptrdiff_t>(erasures)};
            const auto right = corrected(spoiled, check, erased, 0);
            if (erasures + 2 * errors <= check) {
                CHECK(right == word);
                const bool has_two_spare = erasures + 2 * errors + 2 <= check;
                CHECK(corrected(spoiled, check, erased, 2).has_value() == has_two_spare);
            } else {
                CHECK(right != word);
            }
        }
    }
}

TEST_CASE("codewords are read as the text that was written, in every mode") {
    // The same example: numeric mode, "01234567", and padding.
    const Bytes digits = {0x10, 0x20, 0x0C, 0x56, 0x61, 0x80, 0xEC, 0x11,
                          0xEC, 0x11, 0xEC, 0x11, 0xEC, 0x11, 0xEC, 0x11};
    CHECK(text_of_codewords(digits, 1) == "01234567");
    auto other = digits;
    other.back() = 0xEC; // no padding
    CHECK(text_of_codewords(other, 1) == std::nullopt);
    other = digits;
    other[0] = 0x70; // another interpretation of characters
    CHECK(text_of_codewords(other, 1) == std::nullopt);
    CHECK(text_of_codewords({}, 1) == "");
    // Three digits fill three codewords: 0001, 0000000011, 0001111011, and no room for an end.
    CHECK(text_of_codewords({0x10, 0x0C, 0x7B}, 1) == "123");
    CHECK(text_of_codewords({0x10, 0x10, 0x7B}, 1) == std::nullopt); // a fourth is not there
    // Mode 0100, one character: "A", a line's end, a bell, which no label writes.
    CHECK(text_of_codewords({0x40, 0x14, 0x10}, 1) == "A");
    CHECK(text_of_codewords({0x40, 0x10, 0xA0}, 1) == "\n");
    CHECK(text_of_codewords({0x40, 0x10, 0x70}, 1) == std::nullopt);
    for (const std::string text : {"AC-42", "SERVES 6\nBAG 12345678", "a\nb~", "100", "%/:"}) {
        for (const int version : {4, 12, 27}) {
            CHECK(text_of(clearly_seen(symbol_of(text, version, Level::Quartile))) == text);
        }
    }
}

TEST_CASE("doubtful modules count as lost, and twice as many can be as are restored unawares") {
    const auto symbol = symbol_of(std::string(100, 'A'), 6, Level::Medium);
    auto seen = clearly_seen(symbol);
    const auto map = codeword_map(symbol.version);
    const Blocks blocks = blocks_of(symbol.version, symbol.level);
    // Of every block, as many codewords as it has check codewords less the reserve, all wrong.
    const int lost = blocks.count * (blocks.check_codewords - 2);
    const auto spoil = [&](float seen_as) {
        for (std::size_t i = 0; i < map.size(); ++i) {
            if (map[i] >= 0 && map[i] < lost) {
                seen.darkness[i] = symbol.dark[i] ? -seen_as : seen_as;
            }
        }
    };
    spoil(3.0F);
    CHECK(text_of(seen) == std::string(100, 'A'));
    spoil(120.0F); // as if they were surer than all others
    CHECK(text_of(seen) == std::nullopt);
}

TEST_CASE("what is known of a symbol is what every symbol of its version shows") {
    for (const int version : {1, 2, 7, 10, 14, 25, 40}) {
        CAPTURE(version);
        const auto symbol = symbol_of("THAW", version, Level::High);
        int wrong = 0;
        for (const auto& [at, dark] : known_modules(version)) {
            wrong += symbol.dark[index_of(at, symbol.side)] != dark ? 1 : 0;
        }
        CHECK(wrong == 0);
    }
}

TEST_CASE("all is known of a symbol but what its text, its level and its mask decide") {
    for (const int version : {1, 2, 6, 7, 14, 40}) {
        CAPTURE(version);
        const int side = side_of(version);
        std::set<std::pair<int, int>> unknown; // of what carries no codewords
        for (int bit = 0; bit < 15; ++bit) {
            for (const Module at : format_modules(bit, side)) {
                unknown.insert({at.x, at.y});
            }
        }
        unknown.insert({8, side - 8}); // always dark, but beside what is not
        for (int i = 0; i < 18 && version >= 7; ++i) {
            unknown.insert({side - 11 + i % 3, i / 3});
            unknown.insert({i / 3, side - 11 + i % 3});
        }
        std::set<std::pair<int, int>> known;
        for (const auto& [at, dark] : known_modules(version)) {
            known.insert({at.x, at.y});
        }
        const auto function = function_modules(version);
        for (int y = 0; y < side; ++y) {
            for (int x = 0; x < side; ++x) {
                CAPTURE(x);
                CAPTURE(y);
                CHECK(known.contains({x, y}) ==
                      (function[index_of({x, y}, side)] && !unknown.contains({x, y})));
            }
        }
    }
}

TEST_CASE(
    "a module is crisper by a fifth of those beside it, at the edge of those that there are") {
    SeenModules seen{1, std::vector<float>(21 * 21, 0.0F)};
    const auto at = [&seen](int x, int y) { return index_of({x, y}, side_of(seen.version)); };
    seen.darkness[at(10, 10)] = 50.0F;
    seen.darkness[at(0, 0)] = -10.0F;
    seen.darkness[at(20, 20)] = 5.0F;
    auto wanted = seen.darkness;
    for (const auto& [x, y] : {std::pair{9, 10}, {11, 10}, {10, 9}, {10, 11}}) {
        wanted[at(x, y)] = -10.0F;
    }
    for (const auto& [x, y] : {std::pair{1, 0}, {0, 1}}) {
        wanted[at(x, y)] = 2.0F;
    }
    for (const auto& [x, y] : {std::pair{19, 20}, {20, 19}}) {
        wanted[at(x, y)] = -1.0F;
    }
    const auto crisp = crisper(seen);
    CHECK(crisp.version == 1);
    REQUIRE(crisp.darkness.size() == wanted.size());
    for (std::size_t i = 0; i < wanted.size(); ++i) {
        CAPTURE(i);
        CHECK(crisp.darkness[i] == doctest::Approx(wanted[i]));
    }
}

TEST_CASE("in a single block four check codewords are kept back against accidents") {
    for (const Level level : {Level::Medium, Level::High}) {
        const auto symbol = symbol_of("QUINCE AND OAT", 2, level);
        const Blocks blocks = blocks_of(2, level);
        REQUIRE(blocks.count == 1);
        const auto map = codeword_map(2);
        for (const auto& [spoiled, is_read] :
             {std::pair{blocks.check_codewords - 4, true}, {blocks.check_codewords - 3, false}}) {
            CAPTURE(spoiled);
            auto seen = clearly_seen(symbol);
            for (std::size_t i = 0; i < map.size(); ++i) {
                if (map[i] >= 0 && map[i] < spoiled) {
                    seen.darkness[i] = symbol.dark[i] ? -3.0F : 3.0F;
                }
            }
            CHECK((text_of(seen) == "QUINCE AND OAT") == is_read);
        }
    }
}

TEST_CASE("either copy of level and mask is enough, and what is surer counts more") {
    for (const Level level : {Level::Low, Level::Medium, Level::Quartile, Level::High}) {
        for (const std::string text : {"OATS", "RYE 1", "PLUM 22", "PEAR*333", "KALE-4444"}) {
            const auto symbol = symbol_of(text, 2, level);
            for (const std::size_t copy : {0U, 1U}) {
                CAPTURE(text);
                CAPTURE(copy);
                auto hidden = clearly_seen(symbol);
                auto wrong = clearly_seen(symbol);
                for (int bit = 0; bit < 15; ++bit) {
                    const auto at =
                        index_of(format_modules(bit, symbol.side).at(copy), symbol.side);
                    hidden.darkness[at] = 0.0F;
                    // Of another level and mask, but doubtful.
                    const auto other = format_bits(Level::Low, symbol.mask == 3 ? 4 : 3);
                    const bool dark = (other >> static_cast<unsigned>(bit) & 1U) != 0;
                    wrong.darkness[at] = dark ? 20.0F : -20.0F;
                }
                CHECK(text_of(hidden) == text);
                CHECK(text_of(wrong) == text);
            }
        }
    }
}

TEST_CASE("what no label writes is not read: other characters, other padding, a count too large") {
    // ISO/IEC 18004:2015, 7.4: byte mode is 0100, then 8 bits of count; the end is 0000 or less.
    const auto byte = [](unsigned c) {
        return text_of_codewords({0x40, static_cast<std::uint8_t>(0x10 | c >> 4U),
                                  static_cast<std::uint8_t>(c << 4U & 0xF0U)},
                                 1);
    };
    CHECK(byte(' ') == " ");
    CHECK(byte('~') == "~");
    for (const unsigned c : {0x1FU, 0x7FU, 0x09U, 0x0BU, 0x0DU, 0x80U, 0xE9U}) {
        CAPTURE(c);
        CHECK(byte(c) == std::nullopt);
    }
    CHECK(text_of_codewords({0x40, 0x14, 0x10, 0xEC, 0x11, 0xEC}, 1) == "A");
    CHECK(text_of_codewords({0x40, 0x14, 0x10, 0x11, 0xEC}, 1) == std::nullopt);
    CHECK(text_of_codewords({0x40, 0x14, 0x10, 0xEC, 0xEC}, 1) == std::nullopt);
    CHECK(text_of_codewords({0x40, 0x24, 0x10}, 1) == std::nullopt); // a second is not there
    CHECK(text_of_codewords({0x40, 0x24, 0x14, 0x20}, 1) == "AB");   // and here it is
    // A digit: 0001, 0000000001, 0101, and the end; then what is none; then bits behind the end.
    CHECK(text_of_codewords({0x10, 0x05, 0x40, 0xEC}, 1) == "5");
    CHECK(text_of_codewords({0x10, 0x06, 0x80, 0xEC}, 1) == std::nullopt);
    CHECK(text_of_codewords({0x10, 0x05, 0x41, 0xEC}, 1) == std::nullopt);
    // Two segments, and no room for the whole end: the digit, and 0100, 00000001, 01000010.
    CHECK(text_of_codewords({0x10, 0x05, 0x50, 0x05, 0x08}, 1) == "5B");
    const std::string all = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:";
    for (const int version : {5, 10, 27}) {
        CHECK(text_of(clearly_seen(symbol_of(all, version, Level::Medium))) == all);
        CHECK(text_of(clearly_seen(symbol_of(all + "A", version, Level::Low))) == all + "A");
        CHECK(text_of(clearly_seen(symbol_of("oats, 250 g\n12345678901234", version,
                                             Level::Low))) == "oats, 250 g\n12345678901234");
    }
}

TEST_CASE("a code is read of which any one finder pattern is hidden, whichever way it lies") {
    constexpr int module = 5;
    for (const int version : {4, 7}) {
        CAPTURE(version);
        const auto symbol = symbol_of(stew, version, Level::Medium);
        const auto whole = picture_of(symbol, module);
        const int far = (symbol.side - 8 + quiet_zone_modules) * module;
        constexpr int near = quiet_zone_modules * module;
        constexpr int size = 8 * module;
        for (const auto& [left, top] : {std::pair{near, near}, {far, near}, {near, far}}) {
            auto picture = whole;
            hide(picture, left, top, size, size);
            CHECK(read_picture(picture) == std::vector{stew});
            std::ranges::reverse(picture.pixels); // turned by half
            CHECK(recovered(picture, enough_modules) == stew);
        }
    }
}

TEST_CASE("of a photograph that is larger than need be, a smaller one is repaired") {
    constexpr int module = 45;
    const auto symbol = symbol_of(stew, 4, Level::Medium);
    auto picture = picture_of(symbol, module); // 1845 pixels wide
    const int near = quiet_zone_modules * module;
    hide(picture, near, near, 8 * module, 8 * module);
    CHECK(read_picture(picture) == std::vector{stew});
}

TEST_CASE("where no code is, none is recovered") {
    CHECK(recovered({}, enough_modules) == std::nullopt);
    CHECK(recovered({300, 300, Bytes(90000, 255)}, enough_modules) == std::nullopt);
    Random random{22};
    GreyPicture noise{150, 150, {}};
    for (int i = 0; i < 150 * 150; ++i) {
        noise.pixels.push_back(static_cast<std::uint8_t>(random.below(256)));
    }
    CHECK(recovered(noise, enough_modules) == std::nullopt);
    // Finder patterns, and nothing that makes sense.
    const auto symbol = symbol_of(stew, 4, Level::Medium);
    constexpr int module = 4;
    auto picture = picture_of(symbol, module);
    const auto somewhere = [&] {
        return (quiet_zone_modules + 9 + static_cast<int>(random.below(15))) * module;
    };
    for (int i = 0; i < 400; ++i) {
        const int left = somewhere();
        hide(picture, left, somewhere(), module, module);
    }
    CHECK(recovered(picture, enough_modules) == std::nullopt);
}
