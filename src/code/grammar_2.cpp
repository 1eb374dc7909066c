// The grammar that is written now; GRAMMAR.md describes it.

#include "code/grammars.h"
#include "code/line_fields.h"

#include <array>
#include <fmt/format.h>
#include <utility>

namespace thawslip::code {
namespace {

using kitchen::Placing;
using kitchen::ThawMethod;

/// What opens the thaw line, and what closes it where nobody may wait once it is thawed.
struct ThawWords {
    ThawMethod method;
    std::string_view words;
    std::string_view after;
};
constexpr std::string_view at_once = "COOK AT ONCE";
constexpr std::array<ThawWords, 4> thaw_words = {{
    {ThawMethod::Refrigerator, "THAW IN REFRIGERATOR", ""},
    {ThawMethod::ColdWater, "THAW IN COLD WATER MAX 21 C / 70 F", at_once},
    {ThawMethod::Microwave, "THAW IN MICROWAVE", at_once},
    {ThawMethod::FromFrozen, "DO NOT THAW - COOK FROM FROZEN", ""},
}};

constexpr std::array<std::pair<Placing, std::string_view>, 3> placing_words = {{
    {Placing::Rack, " ON A RACK"},
    {Placing::Tray, " ON A TRAY"},
    {Placing::Stacked, " IN A STACK"},
}};

constexpr std::string_view rule_by_weight = "24 H PER 2 KG - LOOK FROM 12 H"; ///< no time is known

std::string days_text(int days) {
    return fmt::format("{} {}", days, days == 1 ? "DAY" : "DAYS");
}

/// `LOOK FROM 31 H * ALLOW 46 H`; one field where both are the same.
void add_thaw_time(std::string& line, const Message& message) {
    if (const auto& time = message.thaw_time) {
        if (time->low != time->high) {
            add_field(line, "LOOK FROM ", duration_text(time->low));
        }
        add_field(line, "ALLOW ", duration_text(time->high));
    } else if (message.thaw == ThawMethod::Refrigerator) {
        add_field(line, "", rule_by_weight);
    }
}

std::string_view placing_text(std::optional<Placing> wanted) {
    for (const auto& [placing, words] : placing_words) {
        if (wanted == placing) {
            return words;
        }
    }
    return {};
}

std::string thaw_line(const Message& message) {
    std::string line;
    for (const auto& [method, words, after] : thaw_words) {
        if (message.thaw == method) {
            line = words;
            line += placing_text(message.placing);
            add_thaw_time(line, message);
            add_field(line, "", after);
        }
    }
    if (message.cook_within_days) {
        add_field(line, "COOK WITHIN ", days_text(*message.cook_within_days));
    }
    add_field(line, "NOTE ", message.thaw_note);
    return line;
}

std::string_view after_time(const Message& message) {
    return message.thaw == ThawMethod::FromFrozen ? " FROM FROZEN" : "";
}

std::string first_line(const Message& message) {
    std::string line = message.raw ? "RAW" : "";
    add_field(line, "", facts_line(message));
    return line;
}

std::string write_lines(const Message& message) {
    std::string text = message.dish;
    add_line(text, "", first_line(message));
    add_line(text, "", thaw_line(message));
    add_additions(text, message.additions);
    add_line(text, "COOK ", cook_line(message.cooking, after_time(message)));
    add_line(text, "CAUTION ", with_marks(message.cautions));
    add_line(text, "CONTAINS ", with_marks(message.allergens));
    add_line(text, "MAY CONTAIN ", with_marks(message.may_contain));
    add_line(text, "STEPS ", with_marks(message.steps));
    add_line(text, "NOTE ", message.note);
    return text;
}

void read_thaw_field(std::string_view field, Message& message) {
    if (take(field, "LOOK FROM ")) {
        const auto from = duration_of(field);
        message.thaw_time = from ? std::optional{kitchen::TimeRange{*from, *from}} : std::nullopt;
    } else if (take(field, "ALLOW ")) {
        if (const auto allow = duration_of(field)) {
            message.thaw_time =
                kitchen::TimeRange{message.thaw_time ? message.thaw_time->low : *allow, *allow};
        }
    } else if (take(field, "COOK WITHIN ")) {
        message.cook_within_days = whole_number(field.substr(0, field.find(' ')));
    } else if (take(field, "NOTE ")) {
        message.thaw_note = field;
    }
}

std::optional<Placing> placing_of(std::string_view text) {
    for (const auto& [placing, words] : placing_words) {
        if (text.ends_with(words)) {
            return placing;
        }
    }
    return std::nullopt;
}

bool read_thaw(std::string_view line, Message& message) {
    for (const auto& [method, words, after] : thaw_words) {
        if (line.starts_with(words)) {
            message.thaw = method;
            message.placing = placing_of(line.substr(0, line.find(mark)));
            for (const auto field : split(line, mark)) {
                read_thaw_field(field, message);
            }
            return true;
        }
    }
    return false;
}

void read_first_line(std::string_view line, Message& message) {
    message.raw = line == "RAW" || line.starts_with(fmt::format("RAW{}", mark));
    read_facts(line, message);
}

/// Lines that are a word and what belongs to it.
bool read_worded(std::string_view line, Message& message) {
    for (const auto& [word, list] : {std::pair{"CAUTION ", &Message::cautions},
                                     {"CONTAINS ", &Message::allergens},
                                     {"MAY CONTAIN ", &Message::may_contain},
                                     {"STEPS ", &Message::steps}}) {
        if (take(line, word)) {
            message.*list = words_of(line);
            return true;
        }
    }
    if (take(line, "NOTE ")) {
        message.note = line;
        return true;
    }
    return false;
}

void read_line(std::string_view line, Message& message) {
    if (take(line, "COOK ")) {
        read_cooking(line, message.cooking, after_time(message));
    } else if (!read_worded(line, message) && !read_thaw(line, message) &&
               !read_addition(line, message)) {
        read_first_line(line, message);
    }
}

Message read_lines(std::string_view text) {
    return read_by_lines(text, read_line);
}

} // namespace

const Grammar grammar_2{'2', write_lines, read_lines};

} // namespace thawslip::code
