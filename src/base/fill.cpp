#include "base/fill.h"

#include "base/letters.h"

namespace thawslip {

std::string fill(std::string_view phrase, const std::vector<std::string>& values) {
    std::string filled;
    for (std::size_t i = 0; i < phrase.size(); ++i) {
        const bool slot = phrase[i] == '{' && i + 2 < phrase.size() && phrase[i + 2] == '}' &&
                          is_digit(phrase[i + 1]);
        const auto number = slot ? static_cast<std::size_t>(phrase[i + 1] - '0') : 0;
        if (slot && number < values.size()) {
            filled += values[number];
            i += 2;
        } else {
            filled += phrase[i];
        }
    }
    return filled;
}

} // namespace thawslip
