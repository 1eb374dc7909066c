#include "app/command_line/joined_words.h"

#include "kitchen/bag_id.h"
#include "service/print/part.h"

#include <algorithm>

namespace thawslip::app {
namespace {

bool takes(const std::string& option, const std::string& word) {
    return service::are_numbers(word) || (option == "--bag" && kitchen::parse_bag_id(word).ok());
}

} // namespace

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

std::vector<std::string> with_numbers_joined(std::vector<std::string> words) {
    const auto end_of_options = std::ranges::find(words, "--");
    std::vector<std::string> joined;
    for (auto word = words.begin(); word != words.end(); ++word) {
        const bool is_value = joined.size() > 1 && (joined[joined.size() - 2] == "--skip" ||
                                                    joined[joined.size() - 2] == "--bag");
        if (is_value && word < end_of_options && takes(joined[joined.size() - 2], *word)) {
            joined.back() += "," + *word;
        } else {
            joined.push_back(std::move(*word));
        }
    }
    return joined;
}

} // namespace thawslip::app
