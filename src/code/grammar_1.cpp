// The grammar of the first labels; GRAMMAR.md's second part. Released: it does not change.

#include "code/grammars.h"
#include "code/line_fields.h"

#include <array>
#include <utility>

namespace thawslip::code {
namespace {

constexpr std::array<std::pair<kitchen::ThawMethod, std::string_view>, 4> thaw_words = {{
    {kitchen::ThawMethod::Refrigerator, "THAW IN REFRIGERATOR"},
    {kitchen::ThawMethod::ColdWater, "THAW IN COLD WATER - COOK AT ONCE"},
    {kitchen::ThawMethod::Microwave, "THAW IN MICROWAVE - COOK AT ONCE"},
    {kitchen::ThawMethod::FromFrozen, "DO NOT THAW - COOK FROM FROZEN"},
}};

std::string thaw_line(const Message& message) {
    std::string line;
    for (const auto& [method, words] : thaw_words) {
        if (message.thaw == method) {
            line = words;
        }
    }
    add_field(line, "", message.thaw_note);
    return line;
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

std::string write_lines(const Message& message) {
    std::string text = message.dish;
    add_line(text, "", facts_line(message));
    add_line(text, "", thaw_line(message));
    add_additions(text, message.additions);
    add_line(text, "COOK ", cook_line(message.cooking));
    add_line(text, "STEPS ", with_marks(message.steps));
    add_line(text, "CONTAINS ", with_marks(message.allergens));
    add_line(text, "NOTE ", message.note);
    return text;
}

Message read_lines(std::string_view text) {
    return read_by_lines(text, read_line);
}

} // namespace

const Grammar grammar_1{'1', write_lines, read_lines};

} // namespace thawslip::code
