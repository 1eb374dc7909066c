#include "code/codewords.h"

#include "code/capacity.h"

namespace thawslip::code {

std::vector<Module> placed_modules(int version) {
    const int side = side_of(version);
    const std::vector<bool> function = function_modules(version);
    const auto bits = static_cast<std::size_t>(8 * blocks_of(version, Level::Low).total_codewords);
    std::vector<Module> placed;
    bool upwards = true;
    for (int right = side - 1; right > 0; right -= 2) {
        right -= right == 6 ? 1 : 0; // the column of the timing pattern is passed over
        for (int step = 0; step < 2 * side; ++step) {
            const Module at{right - step % 2, upwards ? side - 1 - step / 2 : step / 2};
            if (!function[index_of(at, side)] && placed.size() < bits) {
                placed.push_back(at);
            }
        }
        upwards = !upwards;
    }
    return placed;
}

std::vector<int> codeword_map(int version) {
    const int side = side_of(version);
    std::vector<int> map(static_cast<std::size_t>(side * side), -1);
    int bit = 0;
    for (const Module at : placed_modules(version)) {
        map[index_of(at, side)] = bit++ / 8;
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
