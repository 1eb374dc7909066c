#include "service/allergen_names.h"

#include <algorithm>

namespace thawslip::service {

std::vector<std::string> allergen_names(const std::vector<kitchen::DeclaredAllergen>& list,
                                        const std::string& before) {
    std::vector<std::string> names;
    for (const auto& declared : list) {
        for (const auto& named : declared.meant) {
            names.push_back(before + std::string{key(named.allergen)} +
                            (named.kind.empty() ? "" : " (" + named.kind + ")"));
        }
        if (declared.meant.empty()) {
            names.push_back(before + declared.as_written);
        }
    }
    return names;
}

std::vector<std::string> sorted_once(std::vector<std::string> words) {
    std::ranges::sort(words);
    // Not ranges::unique: clang 14 cannot compile GCC 12's subrange.
    words.erase(std::unique(words.begin(), words.end()), words.end());
    return words;
}

} // namespace thawslip::service
