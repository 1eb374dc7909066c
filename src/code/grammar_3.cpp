// The grammar of labels that name several ways to thaw: the one before, with a line for each other
// way. GRAMMAR.md describes it.

#include "base/split.h"
#include "code/grammars.h"
#include "code/line_fields.h"
#include "code/lines.h"

#include <algorithm>
#include <string>

namespace thawslip::code {
namespace {

constexpr std::string_view other = "OR ";
// Where there is a choice, nothing says that it must not thaw.
constexpr std::string_view frozen_alone = "DO NOT THAW - COOK FROM FROZEN";
constexpr std::string_view frozen = "COOK FROM FROZEN";
constexpr std::string_view takes = "FOR ";
constexpr std::string_view longer = "LONGER";

/// The second line of a text.
std::string second_line(const std::string& text) {
    const auto first = text.find('\n');
    return first == std::string::npos ? std::string{} : text.substr(first + 1);
}

/// A thaw line as the grammar before has it.
std::string line_before(const Message& thaw) {
    return second_line(grammar_2.write(thaw));
}

/// \param before in the words of one of the two \returns the same in those of the other
std::string reworded(std::string_view line, std::string_view before, std::string_view after) {
    const auto rest = line.substr(std::min(before.size(), line.size()));
    const bool is_it = line.starts_with(before) && (rest.empty() || rest.starts_with(mark));
    return is_it ? std::string{after} + std::string{rest} : std::string{line};
}

std::string with_choice(std::string_view line) {
    return reworded(line, frozen_alone, frozen);
}

std::string alone(std::string_view line) {
    return reworded(line, frozen, frozen_alone);
}

Message with_thaw_alone(const Message& message) {
    Message thaw;
    thaw.dish = message.dish;
    thaw.thaw = message.thaw;
    thaw.thaw_time = message.thaw_time;
    thaw.placing = message.placing;
    thaw.cook_within_days = message.cook_within_days;
    thaw.thaw_note = message.thaw_note;
    return thaw;
}

Message as_message(const OtherThaw& way) {
    Message message;
    message.dish = "DISH";
    message.thaw = way.thaw;
    message.thaw_time = way.thaw_time;
    message.placing = way.placing;
    message.cook_within_days = way.cook_within_days;
    return message;
}

/// ` * FOR 3 H` behind a way whose cooking takes another time than the text says, or longer.
std::string cooking_of(const OtherThaw& way) {
    const auto span =
        way.cook_time ? time_text(*way.cook_time) : std::string{way.cooks_longer ? longer : ""};
    return span.empty() ? span : std::string{mark} + std::string{takes} + span;
}

void read_cooking(std::string_view line, OtherThaw& way) {
    for (auto field : split(line, mark)) {
        if (take(field, takes)) {
            way.cook_time = time_of(field);
            way.cooks_longer = field == longer;
        }
    }
}

OtherThaw as_other(const Message& message) {
    return {message.thaw.value_or(kitchen::ThawMethod::FromFrozen), message.thaw_time,
            message.placing, message.cook_within_days};
}

std::string write_lines(const Message& message) {
    auto text = grammar_2.write(message);
    const auto thaw = line_before(with_thaw_alone(message));
    const auto at = text.find("\n" + thaw);
    if (thaw.empty() || at == std::string::npos) {
        return text;
    }
    auto lines = "\n" + with_choice(thaw);
    for (const auto& way : message.other_thaws) {
        lines +=
            "\n" + std::string{other} + with_choice(line_before(as_message(way))) + cooking_of(way);
    }
    return text.replace(at, thaw.size() + 1, lines);
}

/// Whether a line names another way; what it says without its first word.
bool take_other(std::string_view line, std::string& way) {
    if (!line.starts_with(other)) {
        return false;
    }
    way = alone(line.substr(other.size()));
    return way.starts_with("THAW IN ") || way.starts_with(frozen_alone);
}

Message read_lines(std::string_view text) {
    std::string rest;
    std::vector<OtherThaw> ways;
    bool is_first = true;
    while (!text.empty()) {
        const auto line = take_line(text);
        std::string way;
        if (!is_first && take_other(line, way)) {
            ways.push_back(as_other(grammar_2.read("DISH\n" + way + "\nEND 2")));
            read_cooking(way, ways.back());
            continue;
        }
        rest += (is_first ? "" : "\n") + (is_first ? std::string{line} : alone(line));
        is_first = false;
    }
    auto message = grammar_2.read(rest);
    message.other_thaws = std::move(ways);
    return message;
}

} // namespace

const Grammar grammar_3{'3', write_lines, read_lines};

} // namespace thawslip::code
