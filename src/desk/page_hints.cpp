#include "desk/page_hints.h"

#include <algorithm>
#include <array>

namespace thawslip::desk {
namespace {

constexpr std::string_view program = "thawslip ";
constexpr std::string_view appended = ": thawslip ";

/// Whether words before a command say something without it.
bool is_a_sentence(std::string_view words) {
    constexpr std::array<std::string_view, 4> ends = {" with", " by", " of", " without that"};
    return !words.empty() && !words.starts_with("if ") &&
           std::ranges::none_of(ends, [&](std::string_view end) { return words.ends_with(end); });
}

/// What of a part is left without its command; may be empty.
std::string without_command(std::string_view part) {
    if (part.starts_with(program)) {
        return {};
    }
    const auto at = part.find(appended);
    const auto before = part.substr(0, at);
    return at == std::string_view::npos || is_a_sentence(before) ? std::string{before}
                                                                 : std::string{};
}

/// "for example --to \"garage\"": without "--to ".
std::string without_option(std::string hint) {
    constexpr std::string_view example = "for example --";
    if (!hint.starts_with(example)) {
        return hint;
    }
    const auto end = hint.find(' ', example.size());
    return end == std::string::npos ? std::string{} : "for example" + hint.substr(end);
}

std::string page_hint(std::string_view hint) {
    constexpr std::string_view between = "; ";
    std::string kept;
    for (std::size_t begin = 0; begin <= hint.size();) {
        const auto end = std::min(hint.find(between, begin), hint.size());
        if (const auto part = without_command(hint.substr(begin, end - begin)); !part.empty()) {
            kept += (kept.empty() ? "" : "; ") + part;
        }
        begin = end + between.size();
    }
    return without_option(kept);
}

} // namespace

std::vector<std::string> page_hints(const std::vector<std::string>& hints) {
    std::vector<std::string> kept;
    for (const auto& hint : hints) {
        if (auto text = page_hint(hint); !text.empty()) {
            kept.push_back(std::move(text));
        }
    }
    return kept;
}

} // namespace thawslip::desk
