#include "kitchen/timeline/timeline.h"

#include "kitchen/timeline/cook_window.h"
#include "kitchen/timeline/faster_thaw.h"
#include "kitchen/timeline/shared_appliance.h"
#include "kitchen/timeline/thaw_window.h"

#include <algorithm>
#include <tuple>
#include <utility>

namespace thawslip::kitchen {

namespace {

using std::chrono::days;
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
        if (is_past_date(dish)) {
            const auto& keep = *request_.dishes[dish].keep_until;
            const bool must_not = keep.basis == DateBasis::SetByCook;
            remark({.id = must_not ? RemarkId::PastUseBy : RemarkId::PastBest,
                    .dish = dish,
                    .values = {keep.date}});
            if (must_not) {
                line_.dishes[dish].outlook = Outlook::TooLate;
                return;
            }
        }
        if (const auto& missed = request_.dishes[dish].missed)
            remark({.id = RemarkId::OtherThaw, .dish = dish, .values = {*missed}});
        if (package.thaw.method == ThawMethod::FromFrozen && package.cook &&
            package.cook->vessel == Vessel::SlowCooker) {
            line_.dishes[dish].outlook = Outlook::TooLate;
            remark({.id = RemarkId::FrozenInSlowCooker, .dish = dish});
            return;
        }
        plan_cooking(dish);
        plan_thawing(dish);
        tell_of_bags(dish);
        find_outlook(dish);
        if (line_.dishes[dish].outlook != Outlook::TooLate)
            add_events(dish);
    }

    Timeline finished() && {
        std::ranges::sort(line_.events, {}, [this](const TimelineEvent& event) {
            return std::tuple{event.at,   is_at_serving(event), event.what,
                              event.dish, event.finish,         event.side};
        });
        for (auto& shared : shared_appliances(request_, line_.dishes))
            remark(std::move(shared));
        tell_clock_changes();
        return std::move(line_);
    }

private:
    void remark(TimelineRemark said) { line_.remarks.push_back(std::move(said)); }
    void event(TimelineEvent happens) { line_.events.push_back(happens); }

    /// What is added to a dish that is done, and measured before.
    bool is_at_serving(const TimelineEvent& event) const {
        return event.finish &&
               request_.dishes[event.dish].package.finish[*event.finish].when.anchor ==
                   When::Anchor::AtServing;
    }

    /// The date on its label lies before the meal.
    bool is_past_date(std::size_t dish) const {
        const auto& keep = request_.dishes[dish].keep_until;
        return keep &&
               keep->date < Date{std::chrono::floor<days>(on_clock(line_.clock, line_.eat))};
    }

    void plan_cooking(std::size_t dish) {
        const Package& package = request_.dishes[dish].package;
        const auto range = usable_cook_time(request_.dishes[dish]);
        if (range)
            line_.dishes[dish].cook = cook_window(*range, line_.eat, request_.now);
        else if (package.cook)
            remark({.id = is_from_frozen(dish) ? RemarkId::FrozenCookTimeUnknown
                                               : RemarkId::CookTimeUnknown,
                    .dish = dish});
    }

    bool is_thaw_late(const DishTimeline& planned) const {
        return planned.thaw && planned.thaw->no_later < request_.now;
    }

    /// What is said first is what can still be done, then what no longer can.
    void find_outlook(std::size_t dish) {
        auto& planned = line_.dishes[dish];
        const bool start_late =
            planned.cook ? planned.cook->no_later < request_.now : line_.eat < request_.now;
        if (is_thaw_late(planned)) {
            planned.outlook = start_late ? Outlook::TooLate : Outlook::OnlyIfThawed;
            offer_faster_ways(dish);
        } else if (start_late) {
            planned.outlook = Outlook::TooLate;
        }
        tell_of_start(dish, start_late);
    }

    /// Of several bags: what their times are, where they are not those of one.
    void tell_of_bags(std::size_t dish) {
        const auto& asked = request_.dishes[dish];
        if (asked.bags.size() < 2 || !asked.package.cook)
            return;
        const bool each = asked.package.cook->vessel == Vessel::Microwave ||
                          asked.package.thaw.method == ThawMethod::Microwave;
        remark({.id = each ? RemarkId::SeveralInMicrowave : RemarkId::SeveralBags, .dish = dish});
    }

    bool is_from_frozen(std::size_t dish) const {
        return request_.dishes[dish].package.thaw.method == ThawMethod::FromFrozen;
    }

    void tell_of_start(std::size_t dish, bool start_late) {
        const auto& planned = line_.dishes[dish];
        if (!planned.cook || planned.outlook == Outlook::FasterWay)
            return;
        const auto takes = middle_of(*usable_cook_time(request_.dishes[dish]));
        const auto& window = *planned.cook;
        if (start_late)
            remark(
                {.id = is_from_frozen(dish) ? RemarkId::FrozenStartTooLate : RemarkId::StartTooLate,
                 .dish = dish,
                 .values = {window.no_later, with_sides(dish, request_.now + takes)}});
        else if (window.at != line_.eat - takes)
            remark({.id = RemarkId::StartNow,
                    .dish = dish,
                    .values = {line_.eat - takes, window.no_later}});
    }

    void add_events(std::size_t dish) {
        const auto& planned = line_.dishes[dish];
        const auto& ways = planned.ways;
        if (planned.outlook == Outlook::FasterWay && ways.front().method != ThawMethod::FromFrozen)
            event({ways.front().begin, TimelineStep::Thaw, dish});
        if (planned.outlook == Outlook::InTime && planned.thaw)
            add_thawing(*planned.thaw, planned, dish);
        if (planned.cook)
            event({planned.cook->at, TimelineStep::Start, dish});
        plan_finishing(dish);
        plan_sides(dish);
        event({line_.eat, TimelineStep::Ready, dish});
    }

    /// When a side has to be ready: as the cook says, or at the table where that is not known.
    static Instant ready_for(const Side& side, const std::optional<CookWindow>& cook, Instant eat) {
        const FinishTime time = finish_time(side.ready, cook, eat);
        return std::min(time.at.value_or(eat), eat);
    }

    /// From when all of it can be eaten, where the dish alone is ready at `eat`: a side that is not
    /// begun yet may take longer.
    Instant with_sides(std::size_t dish, Instant eat) const {
        const auto range = usable_cook_time(request_.dishes[dish]);
        const auto cook =
            range ? std::optional{cook_window(*range, eat, request_.now)} : std::nullopt;
        minutes wait{0};
        for (const auto& side : request_.dishes[dish].package.sides)
            wait = std::max(wait, request_.now + side.takes.high - ready_for(side, cook, eat));
        return eat + wait;
    }

    void plan_sides(std::size_t dish) {
        const auto& sides = request_.dishes[dish].package.sides;
        auto& planned = line_.dishes[dish];
        for (std::size_t i = 0; i < sides.size(); ++i) {
            const auto takes = sides[i].takes.high; // the table is not to wait for it
            const Instant ready = ready_for(sides[i], planned.cook, line_.eat);
            const Instant at = std::max(ready - takes, request_.now);
            planned.sides.push_back({at, at + takes, i});
            event({at, TimelineStep::Side, dish, {}, i});
            if (at + takes > ready)
                remark({RemarkId::SideLate, dish, {}, {ready - takes, at + takes}, i});
        }
    }

    void add_thawing(const ThawWindow& window, const DishTimeline& planned, std::size_t dish) {
        event({window.at, TimelineStep::Thaw, dish});
        const Instant look = earliest_waking(window.at + window.lead.soonest, request_.clock);
        if (is_tight(window) && look < (planned.cook ? planned.cook->at : line_.eat))
            event({look, TimelineStep::Look, dish});
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
        const auto lead = asked.thaw_lead
                              ? Result<ThawLead, HeatFault>{*asked.thaw_lead}
                              : thaw_lead(package.thaw.method, package.thickness, package.weight,
                                          settings_for(package, asked.wetness, request_.thaw));
        if (!lead) {
            remark({.id = RemarkId::ThawNotReckoned, .dish = dish});
            return;
        }
        auto& planned = line_.dishes[dish];
        const Instant start = planned.cook ? planned.cook->at : line_.eat;
        auto all = lead.value();
        if (all.method == ThawMethod::Microwave)
            all.lead = all.soonest = in_turn(asked, all.lead);
        const auto window = thaw_window(all, start, asked.keeps_thawed, request_);
        planned.thaw = window;
        tell_of_lead(dish, window.lead);
        if (is_tight(window) && !is_thaw_late(planned))
            remark(tight(asked, window.at + window.lead.soonest, dish));
    }

    /// As the label says it: within its days, or on the day; and by when, if it is thawed at the
    /// soonest.
    static TimelineRemark tight(const TimelineDish& asked, Instant soonest, std::size_t dish) {
        if (asked.keeps_thawed < days{1})
            return {.id = RemarkId::ThawWindowTightToday, .dish = dish};
        return {.id = RemarkId::ThawWindowTight,
                .dish = dish,
                .values = {asked.keeps_thawed, soonest, soonest + asked.keeps_thawed}};
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
        for (auto& caution : cautions_of(lead.method, dish))
            remark(std::move(caution));
    }

    /// What is left when the planned moment for thawing is past.
    void offer_faster_ways(std::size_t dish) {
        auto& planned = line_.dishes[dish];
        const TimelineDish& asked = request_.dishes[dish];
        auto found = faster_ways(asked, settings_for(asked.package, asked.wetness, request_.thaw),
                                 line_.eat, request_.now);
        for (const auto& way : found.ways)
            remark(remark_of(way, dish));
        tell_if_thawed(dish);
        if (found.ways.empty())
            remark({RemarkId::NoWayInTime, dish, {}, {soonest_ready(dish, found)}});
        remark({.id = RemarkId::ThawTooLate, .dish = dish, .values = {planned.thaw->no_later}});
        if (found.ways.empty())
            return;
        planned.outlook = Outlook::FasterWay;
        planned.ways = std::move(found.ways);
        if (planned.cook)
            planned.cook = planned.ways.front().cook;
    }

    /// A bag that was thawed in time is cooked as planned, whoever asks on the day itself.
    void tell_if_thawed(std::size_t dish) {
        const auto& planned = line_.dishes[dish];
        if (!planned.cook || planned.cook->no_later < request_.now)
            return;
        const auto& [at, last] = std::pair{planned.cook->at, planned.cook->no_later};
        if (at == last) { // to the minute that the clock shows
            remark({.id = RemarkId::IfThawedAt, .dish = dish, .values = {at}});
        } else {
            remark({.id = RemarkId::IfThawed, .dish = dish, .values = {at, last}});
        }
    }

    /// By the quickest way there is, the planned one among them.
    Instant soonest_ready(std::size_t dish, const FasterWays& found) const {
        const auto range = usable_cook_time(request_.dishes[dish]).value_or(TimeRange{});
        const auto as_planned =
            request_.now + line_.dishes[dish].thaw->lead.lead + middle_of(range);
        return with_sides(dish, std::min(found.soonest_ready.value_or(as_planned), as_planned));
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

namespace {

RemarkId thaw_remark(ThawMethod method) {
    switch (method) {
    case ThawMethod::Refrigerator: return RemarkId::ThawOnRack;
    case ThawMethod::ColdWater: return RemarkId::ThawByWater;
    case ThawMethod::Microwave: break;
    case ThawMethod::FromFrozen: return RemarkId::CookFromFrozen;
    }
    return RemarkId::ThawByMicrowave;
}

} // namespace

TimelineRemark remark_of(const FasterWay& way, std::size_t dish) {
    if (way.method == ThawMethod::FromFrozen)
        return {RemarkId::CookFromFrozen, dish, {}, {way.start, way.takes}};
    return {thaw_remark(way.method), dish, {}, {way.begin, way.start}};
}

std::vector<TimelineRemark> cautions_of(ThawMethod method, std::size_t dish) {
    std::vector<TimelineRemark> cautions;
    if (method == ThawMethod::ColdWater)
        cautions.push_back({.id = RemarkId::ColdWaterRules, .dish = dish});
    if (method == ThawMethod::ColdWater || method == ThawMethod::Microwave)
        cautions.push_back({.id = RemarkId::CookAtOnce, .dish = dish});
    if (method == ThawMethod::FromFrozen)
        cautions.push_back({.id = RemarkId::FrozenMiddle, .dish = dish});
    return cautions;
}

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
