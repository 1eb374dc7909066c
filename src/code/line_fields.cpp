#include "code/line_fields.h"

#include "code/fold.h"

#include <algorithm>
#include <fmt/format.h>
#include <utility>

namespace thawslip::code {
namespace {

/// `123-456-789` as `123/456/789`, lest a phone offers to dial it; other ids as they are printed.
std::string bag_text(std::string id) {
    if (looks_like_a_number_to_dial(id)) {
        std::ranges::replace(id, '-', '/');
    }
    return id;
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

} // namespace

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

std::string with_marks(const std::vector<std::string>& words) {
    std::string line;
    for (const std::string& each : words) {
        add_field(line, "", each);
    }
    return line;
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

std::string cook_line(const Cooking& cooking, std::string_view after_time) {
    std::string line;
    add_field(line, "IN ", cooking.in);
    add_field(line, "AT ", cooking.setting);
    if (cooking.time) {
        add_field(line, "FOR ", time_text(*cooking.time) + std::string{after_time});
    }
    if (cooking.until) {
        add_field(line, "TO ", target_text(*cooking.until));
    }
    return line;
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

std::vector<std::string> words_of(std::string_view line) {
    const auto fields = split(line, mark);
    return {fields.begin(), fields.end()};
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

void read_cooking(std::string_view line, Cooking& cooking, std::string_view after_time) {
    for (std::string_view field : split(line, mark)) {
        if (take(field, "IN ")) {
            cooking.in = field;
        } else if (take(field, "AT ")) {
            cooking.setting = field;
        } else if (take(field, "FOR ")) {
            field.remove_suffix(field.ends_with(after_time) ? after_time.size() : 0);
            cooking.time = time_of(field);
        } else if (take(field, "TO ")) {
            cooking.until = target_of(field);
        }
    }
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

Extent read_extent(std::string_view last_line) {
    return last_line.starts_with("SEE CARD") ? Extent::SeeCard : Extent::Whole;
}

Message read_by_lines(std::string_view text, void (*read_line)(std::string_view, Message&)) {
    const auto lines = split(text, "\n");
    Message message;
    message.dish = lines.front();
    for (std::size_t i = 1; i + 1 < lines.size(); ++i) {
        read_line(lines[i], message);
    }
    message.extent = read_extent(lines.back());
    return message;
}

} // namespace thawslip::code
