#include "wording/cook_sequence_words.h"

#include "kitchen/cooking/cook_sequence.h"
#include "wording/fields.h"
#include "wording/phrases.h"
#include "wording/print_fields.h"
#include "wording/side_words.h"
#include "wording/typography.h"

#include <algorithm>
#include <utility>

namespace thawslip::wording {
namespace {

using kitchen::PlannedPackage;

/// Words of a sentence that a value stands out in.
std::vector<Span> with_strong(const std::string& sentence, const std::string& value) {
    const auto at = sentence.find(value);
    std::vector<Span> spans;
    const auto add = [&spans](std::string text, Emphasis emphasis) {
        if (!text.empty()) {
            spans.push_back({std::move(text), emphasis});
        }
    };
    add(sentence.substr(0, at), Emphasis::Plain);
    add(value, Emphasis::Strong);
    add(sentence.substr(at + value.size()), Emphasis::Plain);
    return spans;
}

/// A box, amount and thing, and below them where that waits.
void add_addition(std::vector<Paragraph>& lines, const kitchen::Finish& finish,
                  const Style& style) {
    auto line = as_is(typeset_text(say_quantity(finish.add, style)), Emphasis::Strong);
    line.marker = Marker::TickBox;
    if (!finish.bag.empty()) {
        line.below.push_back(plain(finish.bag));
    }
    lines.push_back(std::move(line));
}

void add_step(std::vector<Paragraph>& lines, const PlannedPackage& planned, std::size_t step) {
    auto line = plain(planned.package.cook->steps[step]);
    line.marker = Marker::Number;
    line.number = static_cast<int>(step) + 1;
    lines.push_back(std::move(line));
}

/// The lines of one moment. What is done in one go stays together.
std::vector<Paragraph> lines_of(const kitchen::CookMoment& moment, const PlannedPackage& planned,
                                const Style& style) {
    std::vector<Paragraph> lines;
    for (const auto& act : moment.acts) {
        const auto first = lines.size();
        for (const auto addition : act.additions) {
            add_addition(lines, planned.finish[addition], style);
        }
        if (act.step) {
            add_step(lines, planned, *act.step);
        }
        for (auto i = first + 1; i < lines.size(); ++i) {
            lines[i].with_previous = true;
        }
    }
    return lines;
}

/// What it is cooked in, how hot and for how long: the first line of the start, and never alone.
void put_cooking_first(std::vector<Paragraph>& lines, const PlannedPackage& planned,
                       const Style& style) {
    if (!planned.package.cook) {
        return;
    }
    const auto cooking = typeset_text(capitalised(say_cooking(*planned.package.cook, style)));
    if (!lines.empty()) {
        lines.front().with_previous = true;
    }
    lines.insert(lines.begin(), as_is(cooking, Emphasis::Strong));
}

/// Where on the card it stands that the dish is done.
enum class DoneAt {
    End,           ///< nothing is added at serving
    BeforeServing, ///< that comes when it is done
    AfterServing,  ///< its steps cook on: it is measured behind them
};

DoneAt done_at(const std::vector<kitchen::CookMoment>& moments, const PlannedPackage& planned) {
    const auto& last = moments.back();
    if (last.when.anchor != kitchen::When::Anchor::AtServing) {
        return DoneAt::End;
    }
    return still_cooks(last, planned) ? DoneAt::AfterServing : DoneAt::BeforeServing;
}

/// How hot it is when it is done; never alone on a card.
void add_done(std::vector<Paragraph>& lines, const PlannedPackage& planned, DoneAt at,
              const Style& style) {
    const auto& cook = planned.package.cook;
    if (!cook || !cook->until) {
        return;
    }
    const auto target = typeset_text(say_target(*cook->until, style));
    const bool is_behind = at == DoneAt::AfterServing;
    Paragraph done;
    done.label = capitalised(style.say("cook-day-card.done"));
    done.spans = with_strong(
        style.say(is_behind ? "cook-day-card.done-before-serving" : "cook-day-card.done-at",
                  {target}),
        target);
    done.with_previous = !lines.empty();
    lines.push_back(std::move(done));
}

/// Takes those off the front that are started before a moment; before the first of all, those that
/// are started before the dish.
std::vector<kitchen::SideStart> take_before(std::vector<kitchen::SideStart>& sides,
                                            kitchen::When when, bool is_start,
                                            const PlannedPackage& planned) {
    const auto later = std::ranges::find_if_not(sides, [&](const kitchen::SideStart& side) {
        return is_start ? comes_before_dish(side, planned) : comes_before(side, when, planned);
    });
    std::vector<kitchen::SideStart> taken(sides.begin(), later);
    sides.erase(sides.begin(), later);
    return taken;
}

void add_sides(std::vector<Paragraph>& lines, const std::vector<kitchen::SideStart>& sides,
               const PlannedPackage& planned, const Style& style) {
    for (const auto& side : sides) {
        std::ranges::move(side_lines(side, planned, style), std::back_inserter(lines));
    }
}

/// What is added, a moment after the other, and between them what of these sides is started then.
std::vector<Paragraph> grouped(const PlannedPackage& planned, std::vector<kitchen::SideStart> sides,
                               const Style& style) {
    std::vector<Paragraph> lines;
    const auto add = [&](const std::vector<kitchen::SideStart>& started) {
        for (const auto& side : started) {
            lines.push_back(side_lines(side, planned, style).front());
        }
    };
    for (std::size_t i = 0; i < planned.finish.size(); ++i) {
        const auto& finish = planned.finish[i];
        const bool with_previous = goes_in_with_previous(planned.finish, i);
        if (!with_previous) {
            add(take_before(sides, finish.when, false, planned));
        }
        add_addition(lines, finish, style);
        lines.back().with_previous = with_previous;
        lines.back().label = with_previous ? "" : say_when_head(finish.when, style.language);
    }
    add(sides);
    return lines;
}

} // namespace

Field sequence_field(const PlannedPackage& planned, const Style& style) {
    Field field{field_name::sequence, {}, planned.package.where.key("cook")};
    auto sides = kitchen::side_starts(planned);
    bool is_start = true;
    const auto moments = cook_sequence(planned);
    const auto done = done_at(moments, planned);
    for (const auto& moment : moments) {
        if (done == DoneAt::BeforeServing && &moment == &moments.back()) {
            add_sides(field.paragraphs, std::exchange(sides, {}), planned, style);
            add_done(field.paragraphs, planned, done, style);
        }
        add_sides(field.paragraphs, take_before(sides, moment.when, is_start, planned), planned,
                  style);
        auto lines = lines_of(moment, planned, style);
        if (is_start) {
            put_cooking_first(lines, planned, style);
        }
        if (!lines.empty()) {
            lines.front().label = is_start ? style.say("cook-day-card.start")
                                           : say_when_head(moment.when, style.language);
        }
        field.paragraphs.insert(field.paragraphs.end(), lines.begin(), lines.end());
        is_start = false;
    }
    add_sides(field.paragraphs, sides, planned, style);
    if (done != DoneAt::BeforeServing) {
        add_done(field.paragraphs, planned, done, style);
    }
    return field;
}

Field until_field(const PlannedPackage& planned, const Style& style) {
    Field field{field_name::until, {}, planned.package.where.key("cook").key("until")};
    const auto& cook = planned.package.cook;
    if (cook && cook->until) {
        Paragraph done;
        done.label = style.say("cook-day-card.done-head");
        const auto target = with_no_break_spaces(typeset_text(say_target(*cook->until, style)));
        done.spans = with_strong(style.say("cook-day-card.done-where", {target}), target);
        for (auto& span : done.spans) { // a line may end before the place, and not in it
            const auto words = span.text.find_first_not_of(' ');
            span.text = span.text.substr(0, words) + with_no_break_spaces(span.text.substr(words));
        }
        field.paragraphs.push_back(std::move(done));
    }
    return field;
}

Field finish_grouped_field(const PlannedPackage& planned, const Style& style) {
    Field field{field_name::finish_grouped, {}, planned.package.where.key("finish")};
    field.paragraphs = grouped(planned, kitchen::side_starts(planned), style);
    if (auto sides = sides_field(planned, style); !sides.shorter.empty()) {
        field.shorter = {grouped(planned, {}, style)};
        std::ranges::move(sides.shorter.front(), std::back_inserter(field.shorter.front()));
    }
    return field;
}

} // namespace thawslip::wording
