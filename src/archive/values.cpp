#include "archive/values.h"

namespace thawslip::archive {

std::string_view word_of(State state) {
    for (const auto& [known, word] : state_words) {
        if (known == state) {
            return word;
        }
    }
    return {};
}

std::optional<State> state_of(std::string_view word) {
    for (const auto& [state, known] : state_words) {
        if (known == word) {
            return state;
        }
    }
    return std::nullopt;
}

} // namespace thawslip::archive
