#pragma once

#include "code/capacity.h"
#include "code/draw.h"
#include "support/random.h"

#include <string>
#include <string_view>

namespace thawslip::code::test {

/// Lines of capitals that fill a symbol of this version and level: as long as a text can be.
inline std::string filling_text(thawslip::test::Random& random, int version, Level level) {
    const auto bits = static_cast<std::size_t>(8 * blocks_of(version, level).data_codewords());
    constexpr std::string_view characters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ 0123456789-*\n";
    std::string text(bits / 3, ' ');
    for (char& c : text) {
        c = characters[random.below(characters.size())];
    }
    std::size_t fits = 0;
    for (std::size_t step = text.size(); step > 0; step /= 2) {
        while (fits + step <= text.size() &&
               segment(text.substr(0, fits + step), group_of(version)).bits <= bits) {
            fits += step;
        }
    }
    return text.substr(0, fits);
}

inline Symbol symbol_for(const std::string& text, int version, Level level) {
    return draw(segment(text, group_of(version)).segments, version, level);
}

} // namespace thawslip::code::test
