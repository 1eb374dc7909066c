#include "wording/plan_sheet.h"

#include "base/list.h"
#include "wording/fields.h"
#include "wording/freezing_plan.h"
#include "wording/list_parts.h"
#include "wording/phrases.h"
#include "wording/plan_words.h"
#include "wording/print_fields.h"
#include "wording/time_chart.h"
#include "wording/time_chart_scale.h"
#include "wording/timeline_words.h"
#include "wording/typography.h"

#include <algorithm>

namespace thawslip::wording {
namespace {

using kitchen::Instant;
using kitchen::TimelineEvent;

/// What the clock shows; with the day where it is another than that of the moment before.
std::string clock_label(kitchen::LocalMinute at, const std::optional<kitchen::LocalMinute>& before,
                        const Language& language) {
    const bool same_day = before && std::chrono::floor<std::chrono::days>(*before) ==
                                        std::chrono::floor<std::chrono::days>(at);
    return same_day ? say_time_of_day(at, language) : say_clock(at, language);
}

/// What is to be done at an event, with its box; below it what else there is to know, and to mind.
std::vector<Paragraph> moment_words(const TimelineEvent& event, const std::string& clock,
                                    const PlanSource& from) {
    const auto [summary, description] =
        say_event(from.line, from.dishes, event, from.style, DishNamed::ByLane);
    std::vector<Paragraph> words{labelled(with_no_break_spaces(clock), summary)};
    words.front().marker = Marker::TickBox;
    if (!description.empty()) {
        words.push_back(plain(description));
    }
    std::ranges::move(minded_at(event, description, from), std::back_inserter(words));
    return words;
}

std::string ids_of(const kitchen::TimelineDish& dish) {
    return joined(dish.bags, ", ", unbroken);
}

std::vector<Paragraph> head_of(const kitchen::Lane& lane, const PlanSource& from) {
    const auto& dish = from.dishes[lane.dish];
    const auto name = dish_name(lane.dish, from);
    std::vector<Paragraph> head{
        heading(lane.is_continued ? from.style.say("list.continued", {name}) : name)};
    head.push_back(as_is(from.style.say(
        "plan-sheet.bags", {say_bag_count(dish.bags.size(), from.style), ids_of(dish)})));
    if (lane.is_continued) {
        return head;
    }
    if (dish.keep_until) {
        head.push_back(as_is(say_keep_until(*dish.keep_until, from.style.language)));
    }
    std::ranges::move(notices_of(lane.dish, from), std::back_inserter(head));
    return head;
}

TimeChart::Lane lane_of(const kitchen::Lane& lane, Instant zero, const PlanSource& from) {
    TimeChart::Lane drawn{head_of(lane, from), {}, {}};
    for (const auto& span : lane.spans) {
        drawn.spans.push_back({fill_of(span.what), span.from - zero, span.to - zero});
    }
    std::optional<kitchen::LocalMinute> before;
    for (const auto& event : lane.events) {
        const auto at = from.clock(event.at);
        const auto clock = clock_label(at, before, from.style.language);
        drawn.moments.push_back({event.at - zero, moment_words(event, clock, from)});
        before = at;
    }
    return drawn;
}

TimeChart chart_of(const PlanPart& part, const PlanSource& from) {
    const auto stretches = stretches_of(part.lanes, from.line.clock);
    const Instant zero = stretches.empty() ? Instant{} : stretches.front().from;
    TimeChart chart{{},
                    chart_stretches(stretches, from.line.clock, from.style),
                    chart_keys(part.lanes, from.style)};
    for (const auto& lane : part.lanes) {
        chart.lanes.push_back(lane_of(lane, zero, from));
    }
    return chart;
}

/// The words of all lanes, one after the other.
Field lanes_field(const TimeChart& chart) {
    Field field{field_name::lanes, {}, KeyPath{"package"}};
    auto& all = field.paragraphs;
    for (const auto& lane : chart.lanes) {
        all.insert(all.end(), lane.head.begin(), lane.head.end());
        for (const auto& moment : lane.moments) {
            all.insert(all.end(), moment.words.begin(), moment.words.end());
        }
    }
    return field;
}

Field page_field(const PlanPart& part, const Style& style) {
    Field field{field_name::page, {}, {}};
    if (part.of > 1) {
        field.paragraphs.push_back(
            plain(style.say("list.page", {std::to_string(part.number), std::to_string(part.of)})));
    }
    return field;
}

} // namespace

Print new_plan(const kitchen::Timeline& line, const std::string& title, const Style& style) {
    Print print;
    print.kind = Kind::PlanSheet;
    print.dish = title;
    print.where = KeyPath{"day"};
    const auto eat = say_clock(on_clock(line.clock, line.eat), style.language);
    print.fields = {
        {field_name::title, {plain(title)}, {}},
        {field_name::date,
         {as_is(style.say("plan-sheet.eat", {with_no_break_spaces(eat)}), Emphasis::Strong)},
         {}},
        local_rules_field(style)};
    return print;
}

Print plan_sheet(const kitchen::Timeline& line, std::span<const kitchen::TimelineDish> dishes,
                 const PlanPart& part, const Style& style) {
    const PlanSource from{line, dishes, style};
    auto chart = chart_of(part, from);
    auto print = new_plan(line, style.say("plan-sheet.title"), style);
    print.fields.push_back(page_field(part, style));
    print.fields.push_back(remarks_field(from));
    print.fields.push_back(lanes_field(chart));
    print.chart = std::make_shared<const TimeChart>(std::move(chart));
    return print;
}

} // namespace thawslip::wording
