#include "code/capacity.h"
#include "code/codewords.h"
#include "code/draw.h"
#include "code/patterns.h"

#include <array>
#include <cstdint>
#include <doctest/doctest.h>

using namespace thawslip::code;

namespace {

/// Product in the field of 256 elements that QR Code uses (x⁸ + x⁴ + x³ + x² + 1).
int product(int a, int b) {
    int result = 0;
    for (; b != 0; b >>= 1) {
        result ^= (b & 1) != 0 ? a : 0;
        a = (a << 1) ^ ((a & 0x80) != 0 ? 0x11D : 0);
    }
    return result;
}

/// The codewords that a symbol shows, in the order of placement.
std::vector<int> codewords_of(const Symbol& symbol) {
    const std::vector<int> map = codeword_map(symbol.version);
    const Blocks blocks = blocks_of(symbol.version, symbol.level);
    std::vector<int> words(static_cast<std::size_t>(blocks.total_codewords), 0);
    // Bits of one codeword stand in the order of placement, which rows do not follow: replay it.
    int bit = 0;
    bool upwards = true;
    for (int right = symbol.side - 1; right > 0; right -= 2) {
        right -= right == 6 ? 1 : 0;
        for (int step = 0; step < 2 * symbol.side; ++step) {
            const int y = upwards ? symbol.side - 1 - step / 2 : step / 2;
            const int x = right - step % 2;
            const auto module = static_cast<std::size_t>(y * symbol.side + x);
            if (map[module] < 0) {
                continue;
            }
            REQUIRE(map[module] == bit++ / 8);
            const bool one = symbol.dark[module] != turns_over(symbol.mask, x, y);
            int& word = words[static_cast<std::size_t>(map[module])];
            word = word << 1 | (one ? 1 : 0);
        }
        upwards = !upwards;
    }
    return words;
}

} // namespace

TEST_CASE("the codewords of each block make up a word of its Reed–Solomon code") {
    for (const int version : {1, 2, 6, 7, 10, 14, 22, 40}) {
        for (const Level level : {Level::Low, Level::Medium, Level::Quartile, Level::High}) {
            CAPTURE(version);
            const std::string text = "THAW";
            const Symbol symbol = draw({{Mode::Alphanumeric, text}}, version, level);
            const std::vector<int> words = codewords_of(symbol);
            const std::vector<int> map = block_map(version, level);
            REQUIRE(map.size() == words.size());
            const Blocks blocks = blocks_of(version, level);
            for (int block = 0; block < blocks.count; ++block) {
                int root = 1;
                for (int i = 0; i < blocks.check_codewords; ++i, root = product(root, 2)) {
                    int value = 0;
                    for (std::size_t at = 0; at < words.size(); ++at) {
                        value = map[at] == block ? product(value, root) ^ words[at] : value;
                    }
                    REQUIRE(value == 0);
                }
            }
        }
    }
}
