#include "app/command_line/printer_argument.h"

#include <algorithm>

namespace thawslip::app {

std::vector<std::string> with_printers_joined(std::vector<std::string> words) {
    const auto end_of_options = std::ranges::find(words, "--");
    std::vector<std::string> joined;
    for (auto word = words.begin(); word != words.end(); ++word) {
        const bool follows_print =
            word < end_of_options && !joined.empty() && joined.back() == "--print";
        if (follows_print && !word->starts_with('-') && !word->ends_with(".toml")) {
            joined.back() += "=" + *word;
        } else {
            joined.push_back(std::move(*word));
        }
    }
    return joined;
}

} // namespace thawslip::app
