#include "wording/plan_words.h"

#include "wording/late_dish.h"
#include "wording/phrases.h"
#include "wording/print_fields.h"
#include "wording/timeline_words.h"

#include <algorithm>
#include <utility>

namespace thawslip::wording {
namespace {

using kitchen::RemarkId;
using kitchen::RemarkWeight;
using kitchen::TimelineEvent;
using kitchen::TimelineRemark;
using kitchen::TimelineStep;

/// "Caution: …" in strong words, where it is more than a note.
Paragraph said(const TimelineRemark& remark, const PlanSource& from) {
    const auto text = say_remark(from.line, from.dishes, remark, from.style);
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

/// A remark of a dish that has no moment of its own, with the ingredient where it is about one.
Paragraph said_at_head(const TimelineRemark& remark, const PlanSource& from) {
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

} // namespace

bool is_minded_at(const TimelineRemark& remark, const TimelineEvent& event) {
    const bool its_step =
        std::ranges::find(steps_minded, std::pair{remark.id, event.what}) != std::end(steps_minded);
    return remark.dish == event.dish && its_step &&
           (!remark.finish || remark.finish == event.finish) &&
           (!remark.side || remark.side == event.side);
}

std::vector<Paragraph> minded_at(const TimelineEvent& event, const std::string& description,
                                 const PlanSource& from) {
    std::vector<Paragraph> all;
    for (const auto& remark : from.line.remarks) {
        const auto is_said = [&] {
            const auto text = say_remark(from.line, from.dishes, remark, from.style);
            return description.find(text) != std::string::npos;
        };
        if (is_minded_at(remark, event) && !is_said()) {
            all.push_back(said(remark, from));
        }
    }
    return all;
}

std::vector<Paragraph> notices_of(std::size_t dish, const PlanSource& from) {
    std::vector<Paragraph> notices;
    if (const auto late = say_late_dish(from.line, from.dishes, dish, from.style)) {
        add_late(notices, *late);
    }
    for (const auto& remark : from.line.remarks) {
        if (remark.dish == dish && !is_of_late_dish(remark) && !has_moment(remark, from.line)) {
            notices.push_back(said_at_head(remark, from));
        }
    }
    return notices;
}

Field remarks_field(const PlanSource& from) {
    Field field{field_name::remarks, {}, {}};
    for (const auto& remark : from.line.remarks) {
        if (!remark.dish) {
            field.paragraphs.push_back(said(remark, from));
        }
    }
    return field;
}

std::string dish_name(std::size_t dish, const PlanSource& from) {
    return say_sized_dish(from.dishes[dish].package, from.dishes[dish].raw, from.style);
}

} // namespace thawslip::wording
