#include "base/letters.h"
#include "code/grammars.h"
#include "code/message.h"
#include "code/seal.h"

#include <algorithm>
#include <fmt/format.h>
#include <utility>

namespace thawslip::code {
namespace {

/// What `write` wrote, out of what a scanner typed: capitals, one LF between lines, no blanks at
/// the ends of lines, no symbology identifier (`]Q1`, ISO/IEC 15424) in front.
std::string as_written(std::string_view typed) {
    if (typed.size() >= 3 && typed.starts_with("]Q") && is_digit(typed[2])) {
        typed.remove_prefix(3);
    }
    std::string text;
    const auto end_line = [&text] {
        while (text.ends_with(' ')) {
            text.pop_back();
        }
    };
    for (const char c : typed) {
        if (c == '\n' || c == '\r' || c == '\t') {
            end_line();
            if (!text.empty() && text.back() != '\n') {
                text += '\n';
            }
        } else if (c != ' ' || (!text.empty() && text.back() != '\n')) {
            text += to_upper(c);
        }
    }
    end_line();
    if (text.ends_with('\n')) {
        text.pop_back();
    }
    return text;
}

/// The version symbol of the closing line, `END` version check check check; nothing without one.
std::optional<char> version_of(std::string_view text) {
    constexpr std::size_t seal = 4; // version and check
    if (text.size() < seal) {
        return std::nullopt;
    }
    const std::string_view before = text.substr(0, text.size() - seal);
    const bool closes = before.ends_with("\nEND ") || before.ends_with("\nSEE CARD * END ");
    return closes ? std::optional{text[before.size()]} : std::nullopt;
}

Failure<ReadFault> fault(ReadFault::Kind kind, std::string message, std::string text = {}) {
    return {ReadFault{kind, std::move(message), std::move(text)}};
}

} // namespace

Result<Message, ReadFault> parse(std::string_view typed) {
    using Kind = ReadFault::Kind;
    const std::string text = as_written(typed);
    const auto version = version_of(text);
    if (!version) {
        return fault(Kind::Foreign, "this is not the text of a label: its last line must begin "
                                    "with \"END\" and a check of 4 characters");
    }
    const std::string_view checked = std::string_view{text}.substr(0, text.size() - 3);
    if (std::string_view{text}.substr(checked.size()) != check_characters(checked)) {
        return fault(Kind::Damaged, "the text is damaged: its check characters do not agree");
    }
    const auto known = std::ranges::find(grammars(), *version, &Grammar::version);
    if (known == grammars().end()) {
        return fault(Kind::LaterGrammar,
                     fmt::format("the text is sound, but written in version {} of the grammar, and "
                                 "this program reads up to version {}",
                                 *version, grammars().back().version),
                     text);
    }
    Message message = known->read(text);
    if (write(message, *known) != text) {
        return fault(Kind::Foreign, "the text is not one that a label carries");
    }
    return message;
}

} // namespace thawslip::code
