#include "code/patterns.h"

#include "code/capacity.h"

#include <algorithm>

namespace thawslip::code {
namespace {

/// A square of modules, to be filled rectangle by rectangle.
class Map {
public:
    explicit Map(int side)
        : side_{side}, marked_(static_cast<std::size_t>(side) * static_cast<std::size_t>(side)) {}

    void mark(Module corner, int width, int height) {
        for (int y = corner.y; y < corner.y + height; ++y) {
            std::fill_n(marked_.begin() +
                            static_cast<std::ptrdiff_t>(index_of({corner.x, y}, side_)),
                        width, true);
        }
    }
    std::vector<bool> take() && { return std::move(marked_); }

private:
    int side_;
    std::vector<bool> marked_;
};

/// Rows and columns of the alignment patterns' middles, rising; empty for version 1.
std::vector<int> alignment_centres(int version) {
    if (version == 1) {
        return {};
    }
    const int count = version / 7 + 2;
    const int step = version == 32 ? 26 : (version * 4 + count * 2 + 1) / (count * 2 - 2) * 2;
    std::vector<int> centres{6};
    for (int i = count - 2; i >= 0; --i) {
        centres.push_back(side_of(version) - 7 - i * step);
    }
    return centres;
}

} // namespace

std::vector<Module> alignment_middles(int version) {
    std::vector<Module> middles;
    const std::vector<int> centres = alignment_centres(version);
    for (const int y : centres) {
        for (const int x : centres) {
            const bool at_finder = (x == centres.front() && y == centres.front()) ||
                                   (x == centres.front() && y == centres.back()) ||
                                   (x == centres.back() && y == centres.front());
            if (!at_finder) {
                middles.push_back({x, y});
            }
        }
    }
    return middles;
}

std::vector<bool> function_modules(int version) {
    const int side = side_of(version);
    Map map{side};
    // Finders with separator and format information, and the one module that is always dark.
    map.mark({0, 0}, 9, 9);
    map.mark({side - 8, 0}, 8, 9);
    map.mark({0, side - 8}, 9, 8);
    map.mark({0, 6}, side, 1);
    map.mark({6, 0}, 1, side);
    for (const auto& [x, y] : alignment_middles(version)) {
        map.mark({x - 2, y - 2}, 5, 5);
    }
    if (version >= 7) {
        map.mark({side - 11, 0}, 3, 6);
        map.mark({0, side - 11}, 6, 3);
    }
    return std::move(map).take();
}

unsigned format_bits(Level level, int mask) {
    constexpr std::array<unsigned, 4> level_bits = {1, 0, 3, 2};
    constexpr unsigned generator = 0x537;
    constexpr unsigned printing_mask = 0x5412;
    const unsigned data =
        level_bits.at(static_cast<std::size_t>(level)) << 3U | static_cast<unsigned>(mask);
    unsigned rest = data;
    for (int i = 0; i < 10; ++i) {
        rest = (rest << 1U) ^ ((rest >> 9U) * generator);
    }
    return (data << 10U | rest) ^ printing_mask;
}

std::array<Module, 2> format_modules(int index, int side) {
    const Module second = index < 8 ? Module{side - 1 - index, 8} : Module{8, side - 15 + index};
    if (index < 6) {
        return {Module{8, index}, second};
    }
    if (index < 8) {
        return {Module{8, index + 1}, second};
    }
    return {index == 8 ? Module{7, 8} : Module{14 - index, 8}, second};
}

} // namespace thawslip::code
