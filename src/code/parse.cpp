#include "code/ascii.h"
#include "code/lines.h"
#include "code/message.h"
#include "code/seal.h"

#include <algorithm>
#include <fmt/format.h>
#include <utility>

namespace thawslip::code {
namespace {

using Lines = std::vector<std::string_view>;

std::vector<std::string_view> split(std::string_view text, std::string_view at) {
    std::vector<std::string_view> parts;
    while (true) {
        const std::size_t end = text.find(at);
        parts.push_back(text.substr(0, end));
        if (end == std::string_view::npos) {
            return parts;
        }
        text.remove_prefix(end + at.size());
    }
}

bool take(std::string_view& text, std::string_view word) {
    const bool found = text.starts_with(word);
    text.remove_prefix(found ? word.size() : 0);
    return found;
}

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

void read_facts(std::string_view line, Message& message) {
    for (std::string_view field : split(line, mark)) {
        if (take(field, "SERVES ")) {
            message.servings = whole_number(field);
        } else if (take(field, "BAG ")) {
            message.bag_id = field;
            std::ranges::replace(message.bag_id, '/', '-');
        } else if (take(field, "MADE ")) {
            message.made = date_of(field);
        } else if (const bool by_cook = field.starts_with("USE BY ");
                   by_cook || field.starts_with("BEST BY ")) {
            const auto date = date_of(field.substr(by_cook ? 7 : 8));
            const auto basis =
                by_cook ? kitchen::DateBasis::SetByCook : kitchen::DateBasis::StorageTable;
            message.keep_until = date ? std::optional{KeepUntil{*date, basis}} : std::nullopt;
        }
    }
}

bool read_thaw(std::string_view line, Message& message) {
    for (const auto& [method, words] : thaw_words) {
        if (take(line, words)) {
            message.thaw = method;
            message.thaw_note = take(line, mark) ? line : "";
            return true;
        }
    }
    return false;
}

/// Takes the words before `ADD ` off `line`; nothing where they are not a time.
std::optional<kitchen::When> take_when(std::string_view& line, const kitchen::When* previous) {
    using Anchor = kitchen::When::Anchor;
    if (line.starts_with("ADD ")) {
        return previous != nullptr ? std::optional{*previous} : std::nullopt;
    }
    for (const auto& [words, anchor] : {std::pair{std::string_view{"AT START "}, Anchor::AtStart},
                                        {"HALFWAY ", Anchor::Halfway},
                                        {"TO SERVE ", Anchor::AtServing}}) {
        if (take(line, words)) {
            return kitchen::When{anchor, std::chrono::minutes{0}};
        }
    }
    const bool after = take(line, "AFTER ");
    const std::size_t add = line.find(" ADD ");
    if ((!after && !take(line, "LAST ")) || add == std::string_view::npos) {
        return std::nullopt;
    }
    const std::size_t end = line.find(" ADD ");
    const auto offset = duration_of(line.substr(0, end));
    line.remove_prefix(end + 1);
    return offset ? std::optional{kitchen::When{after ? Anchor::AfterStart : Anchor::BeforeEnd,
                                                *offset}}
                  : std::nullopt;
}

bool read_addition(std::string_view line, Message& message) {
    const auto& so_far = message.additions;
    const auto when = take_when(line, so_far.empty() ? nullptr : &so_far.back().when);
    if (!when || !take(line, "ADD ")) {
        return false;
    }
    const std::size_t end = line.find(mark);
    const std::string_view bag =
        end == std::string_view::npos ? std::string_view{} : line.substr(end + mark.size());
    message.additions.push_back({*when, std::string{line.substr(0, end)}, std::string{bag}});
    return true;
}

void read_cooking(std::string_view line, Cooking& cooking) {
    for (std::string_view field : split(line, mark)) {
        if (take(field, "IN ")) {
            cooking.in = field;
        } else if (take(field, "AT ")) {
            cooking.setting = field;
        } else if (take(field, "FOR ")) {
            cooking.time = time_of(field);
        } else if (take(field, "TO ")) {
            cooking.until = target_of(field);
        }
    }
}

std::vector<std::string> words_of(std::string_view line) {
    const auto fields = split(line, mark);
    return {fields.begin(), fields.end()};
}

void read_line(std::string_view line, Message& message) {
    if (take(line, "COOK ")) {
        read_cooking(line, message.cooking);
    } else if (take(line, "STEPS ")) {
        message.steps = words_of(line);
    } else if (take(line, "CONTAINS ")) {
        message.allergens = words_of(line);
    } else if (take(line, "NOTE ")) {
        message.note = line;
    } else if (!read_thaw(line, message) && !read_addition(line, message)) {
        read_facts(line, message);
    }
}

/// Reads what it understands and passes over the rest: `parse` compares the whole afterwards.
Message read_lines(std::string_view text) {
    const Lines lines = split(text, "\n");
    Message message;
    message.dish = lines.front();
    for (std::size_t i = 1; i + 1 < lines.size(); ++i) {
        read_line(lines[i], message);
    }
    message.extent = lines.back().starts_with("SEE CARD") ? Extent::SeeCard : Extent::Whole;
    return message;
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

Failure<ReadFault> fault(ReadFault::Kind kind, std::string message) {
    return {ReadFault{kind, std::move(message)}};
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
    if (*version != grammar_version) {
        return fault(Kind::LaterGrammar,
                     fmt::format("the text is written in version {} of the grammar, and this "
                                 "program reads version {}",
                                 *version, grammar_version));
    }
    Message message = read_lines(text);
    if (write(message) != text) {
        return fault(Kind::Foreign, "the text is not one that a label carries");
    }
    return message;
}

} // namespace thawslip::code
