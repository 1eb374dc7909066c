#include "wording/plan_sheet.h"

#include "base/list.h"
#include "wording/fields.h"
#include "wording/freezing_plan.h"
#include "wording/late_dish.h"
#include "wording/phrases.h"
#include "wording/print_fields.h"
#include "wording/time_chart.h"
#include "wording/time_chart_scale.h"
#include "wording/timeline_words.h"
#include "wording/typography.h"

#include <algorithm>

namespace thawslip::wording {
namespace {

using kitchen::Instant;
using kitchen::RemarkId;
using kitchen::RemarkWeight;
using kitchen::TimelineEvent;
using kitchen::TimelineRemark;
using kitchen::TimelineStep;

/// What the words of one sheet are made from.
struct Source {
    const kitchen::Timeline& line;
    std::span<const kitchen::TimelineDish> dishes;
    const Style& style;

    kitchen::LocalMinute clock(Instant at) const { return on_clock(line.clock, at); }
};

/// "Caution: …" in strong words, where it is more than a note.
Paragraph said(const TimelineRemark& remark, const Source& from) {
    const auto text = say_remark(from.line, remark, from.style.language);
    return rule_of(remark.id).weight == RemarkWeight::Note
               ? plain(text)
               : labelled(from.style.say("label.caution"), text);
}

/// The steps at which remarks about a dish are to be minded; those that are not here, before all.
constexpr std::pair<RemarkId, TimelineStep> steps_minded[] = {
    {RemarkId::ThawSizeUnknown, TimelineStep::Thaw},
    {RemarkId::ThawThicknessUnknown, TimelineStep::Thaw},
    {RemarkId::ThawWeightUnknown, TimelineStep::Thaw},
    {RemarkId::ColdWaterRules, TimelineStep::Thaw},
    {RemarkId::ThawWindowTight, TimelineStep::Look},
    {RemarkId::ThawWindowTightToday, TimelineStep::Look},
    {RemarkId::CookAtOnce, TimelineStep::Start},
    {RemarkId::FrozenMiddle, TimelineStep::Start},
    {RemarkId::StartNow, TimelineStep::Start},
    {RemarkId::FinishBeforeStart, TimelineStep::Add},
    {RemarkId::FinishAfterReady, TimelineStep::Add},
    {RemarkId::SideLate, TimelineStep::Side},
};

/// Whether some event of the plan has the remark beside it.
bool has_moment(const TimelineRemark& remark, const kitchen::Timeline& line) {
    return std::ranges::any_of(
        line.events, [&remark](const TimelineEvent& event) { return is_minded_at(remark, event); });
}

/// What the clock shows; with the day where it is another than that of the moment before.
std::string clock_label(kitchen::LocalMinute at, const std::optional<kitchen::LocalMinute>& before,
                        const Language& language) {
    const bool same_day = before && std::chrono::floor<std::chrono::days>(*before) ==
                                        std::chrono::floor<std::chrono::days>(at);
    return same_day ? say_time_of_day(at, language) : say_clock(at, language);
}

/// What is to be done at an event, with its box; below it what else there is to know, and to mind.
std::vector<Paragraph> moment_words(const TimelineEvent& event, const std::string& clock,
                                    const Source& from) {
    const auto [summary, description] =
        say_event(from.line, from.dishes, event, from.style, DishNamed::ByLane);
    std::vector<Paragraph> words{labelled(with_no_break_spaces(clock), summary)};
    words.front().marker = Marker::TickBox;
    if (!description.empty()) {
        words.push_back(plain(description));
    }
    for (const auto& remark : from.line.remarks) {
        const bool is_said = description.find(say_remark(from.line, remark, from.style.language)) !=
                             std::string::npos;
        if (is_minded_at(remark, event) && !is_said) {
            words.push_back(said(remark, from));
        }
    }
    return words;
}

std::string ids_of(const kitchen::TimelineDish& dish) {
    return joined(dish.bags, ", ", unbroken);
}

/// A remark of a dish that has no moment of its own, with the ingredient where it is about one.
Paragraph said_at_head(const TimelineRemark& remark, const Source& from) {
    auto paragraph = said(remark, from);
    if (remark.finish) {
        const auto& finish = from.dishes[*remark.dish].package.finish[*remark.finish];
        paragraph.spans.insert(paragraph.spans.begin(),
                               {say_quantity(finish.add, from.style) + ": ", Emphasis::Plain});
    }
    return paragraph;
}

void add_late(std::vector<Paragraph>& head, const LateDish& late) {
    head.push_back(as_is(late.head, Emphasis::Strong));
    for (std::size_t i = 0; i < late.ways.size(); ++i) {
        head.push_back(plain(late.ways[i]));
        head.back().marker = Marker::Number;
        head.back().number = static_cast<int>(i) + 1;
    }
    for (const auto& text : late.further) {
        head.push_back(plain(text));
    }
}

std::vector<Paragraph> head_of(const kitchen::Lane& lane, const Source& from) {
    const auto& dish = from.dishes[lane.dish];
    const auto name = say_dish(say_sized(dish.package, from.style), dish.raw, from.style.language);
    std::vector<Paragraph> head{
        plain(lane.is_continued ? from.style.say("list.continued", {name}) : name)};
    head.front().role = Role::Heading;
    head.push_back(as_is(from.style.say(
        "plan-sheet.bags", {say_bag_count(dish.bags.size(), from.style), ids_of(dish)})));
    if (lane.is_continued) {
        return head;
    }
    if (dish.keep_until) {
        head.push_back(as_is(say_keep_until(*dish.keep_until, from.style.language)));
    }
    if (const auto late = say_late_dish(from.line, from.dishes, lane.dish, from.style)) {
        add_late(head, *late);
    }
    for (const auto& remark : from.line.remarks) {
        if (remark.dish == lane.dish && !is_of_late_dish(remark) &&
            !has_moment(remark, from.line)) {
            head.push_back(said_at_head(remark, from));
        }
    }
    return head;
}

TimeChart::Lane lane_of(const kitchen::Lane& lane, Instant zero, const Source& from) {
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

TimeChart chart_of(const PlanPart& part, const Source& from) {
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

Field remarks_field(const Source& from) {
    Field field{field_name::remarks, {}, {}};
    for (const auto& remark : from.line.remarks) {
        if (!remark.dish) {
            field.paragraphs.push_back(said(remark, from));
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

bool is_minded_at(const TimelineRemark& remark, const TimelineEvent& event) {
    const bool its_step =
        std::ranges::find(steps_minded, std::pair{remark.id, event.what}) != std::end(steps_minded);
    return remark.dish == event.dish && its_step &&
           (!remark.finish || remark.finish == event.finish) &&
           (!remark.side || remark.side == event.side);
}

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
    const Source from{line, dishes, style};
    auto chart = chart_of(part, from);
    auto print = new_plan(line, style.say("plan-sheet.title"), style);
    print.fields.push_back(page_field(part, style));
    print.fields.push_back(remarks_field(from));
    print.fields.push_back(lanes_field(chart));
    print.chart = std::make_shared<const TimeChart>(std::move(chart));
    return print;
}

} // namespace thawslip::wording
