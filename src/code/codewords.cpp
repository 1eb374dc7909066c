#include "code/codewords.h"

#include "code/capacity.h"
#include "code/patterns.h"

#include <algorithm>

namespace thawslip::code {

std::vector<int> codeword_map(int version) {
    const int side = side_of(version);
    const std::vector<bool> function = function_modules(version);
    const int bits = 8 * blocks_of(version, Level::Low).total_codewords;
    std::vector<int> map(function.size(), -1);
    int bit = 0;
    bool upwards = true;
    for (int right = side - 1; right > 0; right -= 2) {
        right -= right == 6 ? 1 : 0; // the column of the timing pattern is passed over
        for (int step = 0; step < 2 * side; ++step) {
            const int y = upwards ? side - 1 - step / 2 : step / 2;
            const auto module = index_of({right - step % 2, y}, side);
            if (!function[module] && bit < bits) {
                map[module] = bit++ / 8;
            }
        }
        upwards = !upwards;
    }
    return map;
}

std::vector<int> block_map(int version, Level level) {
    const Blocks blocks = blocks_of(version, level);
    const int data = blocks.data_codewords();
    const int longer = data % blocks.count; // the last blocks hold one data codeword more
    std::vector<int> map;
    for (int i = 0; i < data - longer; ++i) {
        map.push_back(i % blocks.count);
    }
    for (int i = 0; i < longer; ++i) {
        map.push_back(blocks.count - longer + i);
    }
    for (int i = 0; i < blocks.count * blocks.check_codewords; ++i) {
        map.push_back(i % blocks.count);
    }
    return map;
}

} // namespace thawslip::code
