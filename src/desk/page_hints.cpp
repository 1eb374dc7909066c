#include "desk/page_hints.h"

#include "base/letters.h"

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

/// An option, and what the page has in its place: a field by the key of its name, or only the
/// value.
struct OnPage {
    std::string_view option;
    std::string_view instead;
};
constexpr std::array<OnPage, 11> on_page = {{{"--without ", ""},
                                             {"--to ", ""},
                                             {"--dish", "\"{print.dishes}\""},
                                             {"--bag", "\"{print.bags}\""},
                                             {"--from", "\"{print.from}\""},
                                             {"--only-new", "\"{print.only_new}\""},
                                             {"--first-cell", "\"{print.first_cell}\""},
                                             {"--copies", "\"{print.copies}\""},
                                             {"--trial", "\"{print.trial}\""},
                                             {"--stock", "\"{print.stock}\""},
                                             {"--large-print", "\"{print.large_print}\""}}};

/// Whether an option begins at `at`: not a dash within a word.
bool is_option(std::string_view text, std::size_t at) {
    return at + 2 < text.size() && is_lower(text[at + 2]) &&
           (at == 0 || text[at - 1] == ' ' || text[at - 1] == '(');
}

/// A text with the keys of fields for options.
std::string with_page_words(std::string text) {
    for (const auto& [option, instead] : on_page) {
        for (auto at = text.find(option); at != std::string::npos;
             at = text.find(option, at + instead.size())) {
            const auto end = at + option.size();
            const bool is_whole = option.ends_with(' ') || end == text.size() ||
                                  !(text[end] == '-' || is_lower(text[end]));
            if (is_whole && is_option(text, at)) {
                text.replace(at, option.size(), instead);
            } else {
                at += option.size();
            }
        }
    }
    return text;
}

/// What helps nobody without a command line is left out as a whole.
std::string without_options(const std::string& hint) {
    auto text = with_page_words(hint);
    for (auto at = text.find("--"); at != std::string::npos; at = text.find("--", at + 2)) {
        if (is_option(text, at)) {
            return {};
        }
    }
    return text;
}

/// The parts of a text between `between` that `keep` leaves something of.
template <class Keep>
std::string parts_of(std::string_view text, std::string_view between, Keep keep) {
    std::string kept;
    for (std::size_t begin = 0; begin <= text.size();) {
        const auto end = std::min(text.find(between, begin), text.size());
        if (const std::string part = keep(text.substr(begin, end - begin)); !part.empty()) {
            kept += (kept.empty() ? std::string{} : std::string{between}) + part;
        }
        begin = end + between.size();
    }
    return kept;
}

std::string page_hint(std::string_view hint) {
    return without_options(parts_of(hint, "; ", without_command));
}

} // namespace

std::string page_text(const std::string& text, const KeyPath& key) {
    auto words = with_page_words(text);
    const auto& path = key.text();
    const auto as_key = " as " + path.substr(path.rfind('.') + 1);
    const std::string refused = " cannot be read";
    if (const auto at = words.find(refused + as_key + ": "); at != words.npos) {
        words.erase(at + refused.size(), as_key.size());
    }
    return words;
}

std::string page_said(const std::string& said) {
    return parts_of(said, "\n",
                    [](std::string_view line) { return parts_of(line, ". ", page_hint); });
}

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
