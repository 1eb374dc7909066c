#include "code/recover/seen_modules.h"

#include "code/capacity.h"
#include "code/codewords.h"
#include "code/recover/reed_solomon.h"
#include "code/recover/text_of_codewords.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <limits>
#include <numeric>

namespace thawslip::code {
namespace {

void add_rings(std::vector<KnownModule>& known, Module middle, int reach, int light_ring,
               int side) {
    for (int y = -reach; y <= reach; ++y) {
        for (int x = -reach; x <= reach; ++x) {
            const Module at{middle.x + x, middle.y + y};
            const int ring = std::max(std::abs(x), std::abs(y));
            if (is_inside(at, side)) {
                known.push_back({at, ring != light_ring && ring != 4});
            }
        }
    }
}

struct Format {
    Level level = Level::Low;
    int mask = 0;
    float likelihood = 0.0F;
};

/// How well both copies of the format information agree with this level and mask.
float likelihood(const SeenModules& seen, Level level, int mask) {
    const unsigned bits = format_bits(level, mask);
    const int side = side_of(seen.version);
    float sum = 0.0F;
    for (int i = 0; i < 15; ++i) {
        for (const Module& at : format_modules(i, side)) {
            const float darkness = seen.darkness[index_of(at, side)];
            sum += (bits >> static_cast<unsigned>(i) & 1U) != 0 ? darkness : -darkness;
        }
    }
    return sum;
}

std::vector<Format> likely_formats(const SeenModules& seen) {
    std::vector<Format> formats;
    for (const auto level : {Level::Low, Level::Medium, Level::Quartile, Level::High}) {
        for (int mask = 0; mask < 8; ++mask) {
            formats.push_back({level, mask, likelihood(seen, level, mask)});
        }
    }
    std::ranges::stable_sort(formats, std::ranges::greater{}, &Format::likelihood);
    constexpr std::size_t enough = 2;
    formats.resize(enough);
    return formats;
}

/// A codeword as it was read, and how sure its least certain bit is.
struct Doubtful {
    std::uint8_t value = 0;
    float certainty = std::numeric_limits<float>::max();
};

/// The codewords in the order of placement.
std::vector<Doubtful> codewords_of(const SeenModules& seen, int mask) {
    const int side = side_of(seen.version);
    const auto placed = placed_modules(seen.version);
    std::vector<Doubtful> words(placed.size() / 8);
    for (std::size_t bit = 0; bit < placed.size(); ++bit) {
        const Module at = placed[bit];
        auto& word = words[bit / 8];
        const float darkness = seen.darkness[index_of(at, side)];
        const bool one = (darkness > 0.0F) != turns_over(mask, at.x, at.y);
        word.value = static_cast<std::uint8_t>(unsigned{word.value} << 1U | (one ? 1U : 0U));
        word.certainty = std::min(word.certainty, std::abs(darkness));
    }
    return words;
}

/// The data of one block, for any number of its least certain codewords taken for lost.
std::optional<std::vector<std::uint8_t>> corrected_block(const std::vector<Doubtful>& block,
                                                         const Blocks& blocks) {
    const auto check = static_cast<std::size_t>(blocks.check_codewords);
    const std::size_t spare = blocks.count == 1 ? 4 : 2;
    std::vector<std::uint8_t> word;
    std::vector<std::size_t> doubtful(block.size());
    std::iota(doubtful.begin(), doubtful.end(), 0);
    std::ranges::stable_sort(doubtful, {}, [&](std::size_t at) { return block[at].certainty; });
    for (const auto& each : block) {
        word.push_back(each.value);
    }
    for (std::size_t lost = 0; lost + spare <= check; lost += 2) {
        const std::vector<std::size_t> erased{doubtful.begin(),
                                              doubtful.begin() + static_cast<std::ptrdiff_t>(lost)};
        if (auto right = corrected(word, check, erased, spare)) {
            right->resize(block.size() - check);
            return right;
        }
    }
    return std::nullopt;
}

std::optional<std::string> text_in(const SeenModules& seen, const Format& format) {
    const Blocks blocks = blocks_of(seen.version, format.level);
    const auto words = codewords_of(seen, format.mask);
    const auto map = block_map(seen.version, format.level);
    std::vector<std::vector<Doubtful>> dealt(static_cast<std::size_t>(blocks.count));
    for (std::size_t i = 0; i < words.size(); ++i) {
        dealt[static_cast<std::size_t>(map[i])].push_back(words[i]);
    }
    std::vector<std::uint8_t> data;
    for (const auto& block : dealt) {
        const auto right = corrected_block(block, blocks);
        if (!right) {
            return std::nullopt;
        }
        data.insert(data.end(), right->begin(), right->end());
    }
    return text_of_codewords(data, seen.version);
}

} // namespace

std::vector<KnownModule> known_modules(int version) {
    const int side = side_of(version);
    std::vector<KnownModule> known;
    for (const Module middle : {Module{3, 3}, Module{side - 4, 3}, Module{3, side - 4}}) {
        add_rings(known, middle, 4, 2, side);
    }
    for (const Module middle : alignment_middles(version)) {
        add_rings(known, middle, 2, 1, side);
    }
    for (int i = 8; i < side - 8; ++i) {
        known.push_back({{i, 6}, i % 2 == 0});
        known.push_back({{6, i}, i % 2 == 0});
    }
    return known;
}

SeenModules crisper(const SeenModules& seen) {
    constexpr float mixed = 0.2F; // of each module beside it
    const int side = side_of(seen.version);
    SeenModules crisp = seen;
    for (int y = 0; y < side; ++y) {
        for (int x = 0; x < side; ++x) {
            for (const Module& at : {Module{x - 1, y}, {x + 1, y}, {x, y - 1}, {x, y + 1}}) {
                const float beside = is_inside(at, side) ? seen.darkness[index_of(at, side)] : 0.0F;
                crisp.darkness[index_of({x, y}, side)] -= mixed * beside;
            }
        }
    }
    return crisp;
}

std::optional<std::string> text_of(const SeenModules& seen) {
    for (const auto& format : likely_formats(seen)) {
        if (auto text = text_in(seen, format)) {
            return text;
        }
    }
    return std::nullopt;
}

} // namespace thawslip::code
