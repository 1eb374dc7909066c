#include "code/fold.h"
#include "code/lines.h"
#include "code/message.h"
#include "code/seal.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::code {
namespace {

/// Appends `word` and `text` as one more field of a line; nothing for an empty text.
void add_field(std::string& line, std::string_view word, std::string_view text) {
    if (!text.empty()) {
        line += line.empty() ? "" : mark;
        line += word;
        line += text;
    }
}

void add_line(std::string& text, std::string_view word, const std::string& line) {
    if (!line.empty()) {
        text += fmt::format("\n{}{}", word, line);
    }
}

/// `123-456-789` as `123/456/789`, lest a phone offers to dial it; other ids as they are printed.
std::string bag_text(std::string id) {
    if (looks_like_a_number_to_dial(id)) {
        std::ranges::replace(id, '-', '/');
    }
    return id;
}

std::string facts_line(const Message& message) {
    std::string line;
    if (message.servings) {
        add_field(line, "SERVES ", std::to_string(*message.servings));
    }
    add_field(line, "BAG ", bag_text(message.bag_id));
    if (message.made) {
        add_field(line, "MADE ", date_text(*message.made));
    }
    if (message.keep_until) {
        const bool set_by_cook = message.keep_until->basis == kitchen::DateBasis::SetByCook;
        add_field(line, set_by_cook ? "USE BY " : "BEST BY ", date_text(message.keep_until->date));
    }
    return line;
}

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

std::string when_text(const kitchen::When& when) {
    using Anchor = kitchen::When::Anchor;
    switch (when.anchor) {
    case Anchor::AtStart: return "AT START ";
    case Anchor::AfterStart: return fmt::format("AFTER {} ", duration_text(when.offset));
    case Anchor::Halfway: return "HALFWAY ";
    case Anchor::BeforeEnd: return fmt::format("LAST {} ", duration_text(when.offset));
    case Anchor::AtServing: return "TO SERVE ";
    }
    return {};
}

void add_additions(std::string& text, const std::vector<Addition>& additions) {
    const Addition* previous = nullptr;
    for (const Addition& addition : additions) {
        const bool same_time = previous != nullptr && previous->when == addition.when;
        std::string line = same_time ? "" : when_text(addition.when);
        line += "ADD " + addition.what;
        add_field(line, "", addition.bag);
        add_line(text, "", line);
        previous = &addition;
    }
}

std::string cook_line(const Cooking& cooking) {
    std::string line;
    add_field(line, "IN ", cooking.in);
    add_field(line, "AT ", cooking.setting);
    if (cooking.time) {
        add_field(line, "FOR ", time_text(*cooking.time));
    }
    if (cooking.until) {
        add_field(line, "TO ", target_text(*cooking.until));
    }
    return line;
}

std::string joined(const std::vector<std::string>& words) {
    std::string line;
    for (const std::string& each : words) {
        add_field(line, "", each);
    }
    return line;
}

} // namespace

std::string write(const Message& unfolded) {
    const Message message = folded(unfolded);
    std::string text = message.dish;
    add_line(text, "", facts_line(message));
    add_line(text, "", thaw_line(message));
    add_additions(text, message.additions);
    add_line(text, "COOK ", cook_line(message.cooking));
    add_line(text, "STEPS ", joined(message.steps));
    add_line(text, "CONTAINS ", joined(message.allergens));
    add_line(text, "NOTE ", message.note);
    add_line(text, "", message.extent == Extent::SeeCard ? "SEE CARD * END " : "END ");
    text += grammar_version;
    return text + check_characters(text);
}

} // namespace thawslip::code
