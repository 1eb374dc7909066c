#include "service/dinner/plan_sheet.h"

#include "base/list.h"
#include "service/dinner/plan_parts.h"
#include "service/print/choices.h"
#include "wording/plan_order.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::service {
namespace {

/// As narrow as a lane may be: some six words a line at a comfortable size.
constexpr Length least_lane = Length::millimetres(52);

constexpr std::size_t most_pieces = 8;

/// How many lanes the sheets of a job are wide enough for; nothing where there is no such stock.
std::optional<std::size_t> lanes_in(const Job& job, const Look& look, const Surroundings& around) {
    OwnFiles own{look.kept};
    const auto stock =
        choose_stock(look.stock.empty() ? job.default_stock : look.stock, around, own);
    if (!stock) {
        return std::nullopt;
    }
    const double lanes = stock.value->stock->safe_at(0).size.width / least_lane;
    return static_cast<std::size_t>(std::max(lanes, 1.0));
}

/// One way to draw the plan: its sheets laid out, or what stands against it.
struct Attempt {
    Outcome<Printing> outcome;
    double scale = -1; ///< the smallest of its sheets; at 1 its words are comfortable

    bool is_comfortable() const { return scale >= 1; }
};

/// Of the last group: a layout may give the list a group of its own before it, and however small
/// that is, fewer lanes beside each other leave it no more room.
double smallest_scale(const layout::Fitting& fitting) {
    double smallest = 2;
    for (const auto& print : fitting.prints) {
        if (!print.sizing.scales.empty()) {
            smallest = std::min(smallest, print.sizing.scales.back().value);
        }
    }
    return smallest;
}

/// Whether a list of all that is to be done goes before the lanes of several dishes.
enum class InOrder { Listed, Unlisted };

/// Draws a plan in one way after the other.
class Drawer {
public:
    Drawer(const DinnerPlan& plan, const Look& look, const Settings& settings,
           const Surroundings& around, InOrder in_order)
        : plan_{plan}, lanes_{lanes_of(plan.line)}, look_{look}, settings_{settings},
          around_{around}, is_listed_{in_order == InOrder::Listed && lanes_.size() > 1} {}

    Outcome<Printing> draw() {
        const auto room = lanes_in(plan_sheet_job({}, settings_), look_, around_).value_or(1);
        Attempt best;
        for (auto lanes = std::min(room, lanes_.size()); lanes > 0 && !best.is_comfortable();
             --lanes) {
            take_better(best, attempt({lanes, 1}));
        }
        for (std::size_t pieces = 2; !best.outcome && pieces <= most_pieces; ++pieces) {
            take_better(best, attempt({1, pieces}));
        }
        return std::move(best.outcome);
    }

private:
    Attempt attempt(PlanSpread spread) const {
        auto sheets = mapped(plan_parts(lanes_, spread), [this](const wording::PlanPart& part) {
            return wording::plan_sheet(plan_.line, plan_.dishes, part, style_of(settings_));
        });
        if (is_listed_) {
            sheets.insert(sheets.begin(),
                          wording::plan_in_order(plan_.line, plan_.dishes, style_of(settings_)));
        }
        auto job = plan_sheet_job(std::move(sheets), settings_);
        Attempt made;
        auto laid_out = lay_out(job, {}, look_, settings_, around_);
        made.outcome.messages = std::move(laid_out.messages);
        if (laid_out) {
            made.scale = smallest_scale(laid_out.value->fitting);
            made.outcome.value =
                Printing{{}, std::move(job), std::move(*laid_out.value), look_, {}};
        }
        return made;
    }

    static void take_better(Attempt& best, Attempt other) {
        if (other.scale > best.scale || !best.outcome) {
            best = std::move(other);
        }
    }

    const DinnerPlan& plan_;
    std::vector<kitchen::Lane> lanes_;
    const Look& look_;
    const Settings& settings_;
    const Surroundings& around_;
    bool is_listed_;
};

Outcome<Printing> drawn(const DinnerPlan& plan, const Look& look, const Settings& settings,
                        const Surroundings& around, InOrder in_order) {
    if (plan.line.events.empty()) {
        Outcome<Printing> nothing;
        nothing.messages.error("this cannot be done, so no plan is drawn");
        return nothing;
    }
    return Drawer{plan, look, settings, around, in_order}.draw();
}

} // namespace

Outcome<Printing> plan_sheet(const DinnerPlan& plan, const Look& look, const Settings& settings,
                             const Surroundings& around) {
    return drawn(plan, look, settings, around, InOrder::Listed);
}

Outcome<Printing> plan_pictures(const DinnerPlan& plan, std::size_t beside,
                                const Settings& settings, const Surroundings& around) {
    constexpr std::size_t comfortable = 100; // millimetres a lane, by looking at them
    const auto lanes = std::clamp(plan.dishes.size(), std::size_t{1}, beside);
    Look look;
    look.stock = "screen.toml";
    look.kept = {
        {look.stock,
         fmt::format("cell = [\"{} mm\", \"200 mm\"]\nroll = true\nsafe_margin = \"4 mm\"\n",
                     comfortable * lanes)}};
    return drawn(plan, look, settings, around, InOrder::Unlisted);
}

} // namespace thawslip::service
