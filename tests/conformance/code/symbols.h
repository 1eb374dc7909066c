#pragma once

#include "code/capacity.h"
#include "code/draw.h"
#include "support/random.h"

#include <string>
#include <string_view>

namespace thawslip::test_support {

/// Lines of capitals that fill a symbol of this version and level: as long as a text can be.
inline std::string filling_text(Random& random, int version, code::Level level) {
    const auto bits =
        static_cast<std::size_t>(8 * code::blocks_of(version, level).data_codewords());
    constexpr std::string_view characters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ 0123456789-*\n";
    std::string text(bits / 3, ' ');
    for (char& c : text) {
        c = characters[random.below(characters.size())];
    }
    std::size_t fits = 0;
    for (std::size_t step = text.size(); step > 0; step /= 2) {
        while (fits + step <= text.size() &&
               code::segment(text.substr(0, fits + step), code::group_of(version)).bits <= bits) {
            fits += step;
        }
    }
    return text.substr(0, fits);
}

inline code::Symbol symbol_for(const std::string& text, int version, code::Level level) {
    return code::draw(code::segment(text, code::group_of(version)).segments, version, level);
}

} // namespace thawslip::test_support
