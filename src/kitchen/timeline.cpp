#include "kitchen/timeline.h"

#include "kitchen/cook_window.h"
#include "kitchen/faster_thaw.h"
#include "kitchen/thaw_window.h"

#include <algorithm>
#include <tuple>
#include <utility>

namespace thawslip::kitchen {

namespace {

using std::chrono::minutes;

/// Fills one timeline, dish by dish.
class Planner {
public:
    explicit Planner(const TimelineRequest& request) : request_{request} {
        line_.clock = request.clock;
        const ClockReading eat = read_clock(request.clock, request.eat);
        line_.eat = eat.instant;
        if (line_.eat < request.now)
            remark({.id = RemarkId::EatIsPast, .values = {line_.eat}});
        if (eat.shown == Shown::Never)
            remark({.id = RemarkId::EatSkipped, .values = {line_.eat}});
        if (eat.shown == Shown::Twice)
            remark({.id = RemarkId::EatRepeated, .values = {line_.eat}});
    }

    void add_dish(std::size_t dish) {
        line_.dishes.emplace_back();
        const Package& package = request_.dishes[dish].package;
        if (package.thaw.method == ThawMethod::FromFrozen && package.cook &&
            package.cook->vessel == Vessel::SlowCooker) {
            remark({.id = RemarkId::FrozenInSlowCooker, .dish = dish});
            return;
        }
        plan_cooking(dish);
        plan_finishing(dish);
        plan_thawing(dish);
        event({line_.eat, TimelineStep::Ready, dish});
    }

    Timeline finished() && {
        std::sort(line_.events.begin(), line_.events.end(), [](const auto& a, const auto& b) {
            return std::tie(a.at, a.what, a.dish, a.finish) <
                   std::tie(b.at, b.what, b.dish, b.finish);
        });
        tell_clock_changes();
        return std::move(line_);
    }

private:
    void remark(TimelineRemark said) { line_.remarks.push_back(std::move(said)); }
    void event(TimelineEvent happens) { line_.events.push_back(happens); }

    void plan_cooking(std::size_t dish) {
        const Package& package = request_.dishes[dish].package;
        const auto range = usable_cook_time(package);
        if (!range) {
            if (package.cook)
                remark({.id = RemarkId::CookTimeUnknown, .dish = dish});
            return;
        }
        const CookWindow window = cook_window(*range, line_.eat, request_.now);
        const Instant planned = line_.eat - middle_of(*range);
        if (window.at != planned)
            remark({.id = RemarkId::StartNow, .dish = dish, .values = {planned, window.no_later}});
        if (window.no_later < request_.now)
            remark({.id = RemarkId::StartTooLate,
                    .dish = dish,
                    .values = {window.no_later, request_.now + middle_of(*range)}});
        event({window.at, TimelineStep::Start, dish});
        line_.dishes[dish].cook = window;
    }

    void plan_finishing(std::size_t dish) {
        const auto& finish = request_.dishes[dish].package.finish;
        const auto& cook = line_.dishes[dish].cook;
        for (std::size_t i = 0; i < finish.size(); ++i) {
            const FinishTime time = finish_time(finish[i].when, cook, line_.eat);
            if (time.at)
                event({*time.at, TimelineStep::Add, dish, i});
            if (!time.remark)
                continue;
            TimelineRemark said{.id = *time.remark, .dish = dish, .finish = i};
            if (time.at)
                said.values = {finish[i].when.offset, cook->takes};
            remark(std::move(said));
        }
    }

    void plan_thawing(std::size_t dish) {
        const TimelineDish& asked = request_.dishes[dish];
        const Package& package = asked.package;
        if (package.thaw.method == ThawMethod::FromFrozen)
            return;
        const auto lead =
            thaw_lead(package.thaw.method, package.thickness, package.weight, request_.thaw);
        if (!lead) {
            remark({.id = RemarkId::ThawNotReckoned, .dish = dish});
            return;
        }
        auto& planned = line_.dishes[dish];
        const Instant start = planned.cook ? planned.cook->at : line_.eat;
        const auto window = thaw_window(lead.value(), start, asked.keeps_thawed, request_);
        planned.thaw = window;
        event({window.at, TimelineStep::Thaw, dish});
        tell_of_lead(dish, window.lead);
        if (is_tight(window))
            remark({.id = RemarkId::ThawWindowTight, .dish = dish, .values = {asked.keeps_thawed}});
        if (window.no_later < request_.now)
            tell_faster_ways(dish, window);
    }

    void tell_of_lead(std::size_t dish, const ThawLead& lead) {
        switch (lead.missing) {
        case MissingSize::None: break;
        case MissingSize::Thickness:
            remark({RemarkId::ThawThicknessUnknown, dish, {}, {lead.lead}});
            break;
        case MissingSize::Weight:
            remark({RemarkId::ThawWeightUnknown, dish, {}, {lead.lead}});
            break;
        case MissingSize::Both: remark({RemarkId::ThawSizeUnknown, dish, {}, {lead.lead}}); break;
        }
        if (lead.method == ThawMethod::ColdWater)
            remark({.id = RemarkId::ColdWaterRules, .dish = dish});
        if (lead.method != ThawMethod::Refrigerator)
            remark({.id = RemarkId::CookAtOnce, .dish = dish});
    }

    /// What is left when the planned moment for thawing is past.
    void tell_faster_ways(std::size_t dish, const ThawWindow& late) {
        remark({.id = RemarkId::ThawTooLate, .dish = dish, .values = {late.no_later}});
        const auto found =
            faster_ways(request_.dishes[dish].package, request_.thaw, line_.eat, request_.now);
        for (const auto& way : found.ways) {
            if (way.method == ThawMethod::FromFrozen)
                remark({RemarkId::CookFromFrozen, dish, {}, {way.start, way.takes}});
            else
                remark({way.method == ThawMethod::ColdWater ? RemarkId::ThawByWater
                                                            : RemarkId::ThawByMicrowave,
                        dish,
                        {},
                        {way.begin, way.start}});
        }
        if (found.ways.empty() && found.soonest_ready)
            remark({RemarkId::NoWayInTime, dish, {}, {*found.soonest_ready}});
    }

    /// The changes between the first thing to be done and eating.
    void tell_clock_changes() {
        if (line_.events.empty())
            return;
        const Instant first = line_.events.front().at;
        minutes before = line_.clock.offset;
        for (const auto& change : line_.clock.changes) {
            const minutes shift = change.offset - before;
            before = change.offset;
            if (change.at <= first || change.at > line_.eat || shift == minutes{0})
                continue;
            if (shift > minutes{0})
                remark({.id = RemarkId::ClockForward, .values = {change.at, shift}});
            else
                remark({.id = RemarkId::ClockBack, .values = {change.at, -shift}});
        }
    }

    const TimelineRequest& request_;
    Timeline line_;
};

} // namespace

bool can_be_done(const Timeline& line) {
    return std::ranges::none_of(line.remarks, [](const TimelineRemark& remark) {
        return rule_of(remark.id).weight == RemarkWeight::CannotBeDone;
    });
}

Timeline timeline(const TimelineRequest& request) {
    Planner planner{request};
    for (std::size_t dish = 0; dish < request.dishes.size(); ++dish)
        planner.add_dish(dish);
    return std::move(planner).finished();
}

} // namespace thawslip::kitchen
