#include "intake/placing.h"

#include <array>

namespace thawslip::intake {

std::span<const toml::Word> placing_words() {
    static const std::array<toml::Word, 3> words = {
        {{"rack", {"on a rack", "wire rack", "wire shelf"}},
         {"tray", {"on a tray", "plate", "on a plate", "glass shelf"}},
         {"stacked", {"in a stack", "stack", "pile"}}}};
    return words;
}

} // namespace thawslip::intake
