#include "service/freezer/freezer_next.h"

#include "kitchen/figures.h"
#include "kitchen/timeline/timeline.h"
#include "service/dinner/timeline_dish.h"

#include <algorithm>

namespace thawslip::service {
namespace {

kitchen::LocalMinute meal_on(kitchen::Date day, std::chrono::minutes time) {
    return kitchen::LocalMinute{std::chrono::sys_days{day}.time_since_epoch() + time};
}

/// Whether a plan is one to follow: thawed as the label says and begun in time.
bool is_in_time(const kitchen::Timeline& line) {
    return can_be_done(line) &&
           std::ranges::find(line.remarks, kitchen::RemarkId::ThawTooLate,
                             &kitchen::TimelineRemark::id) == line.remarks.end();
}

/// A bag for a meal, where it can be thawed in time; where nobody can tell, the label can.
std::optional<Proposal> propose(const archive::Bag& bag, const kitchen::PlannedPackage* package,
                                kitchen::LocalMinute eat, const Now& now,
                                const kitchen::ThawSettings& thaw) {
    Proposal proposal{eat, bag};
    if (package == nullptr) {
        return proposal;
    }
    const auto line =
        kitchen::timeline({{timeline_dish(*package)}, eat, now.instant, now.clock, thaw});
    if (!is_in_time(line)) {
        return std::nullopt;
    }
    proposal.method = package->package.thaw.method;
    proposal.thaw_time = thaw_time(*package);
    proposal.cook_within = cook_within(*package);
    if (const auto& window = line.dishes.front().thaw) {
        proposal.thaw_start = on_clock(now.clock, window->at);
    }
    return proposal;
}

bool thaw_alike(const archive::Bag& a, const archive::Bag& b) {
    return a.made == b.made && a.dish == b.dish;
}

/// The first that can be thawed in time, which is taken out of `left`.
std::optional<Proposal>
take(std::vector<archive::Bag>& left,
     const std::function<std::optional<Proposal>(const archive::Bag&)>& of) {
    const archive::Bag* tried = nullptr;
    for (auto bag = left.begin(); bag != left.end(); ++bag) {
        if (tried != nullptr && thaw_alike(*tried, *bag)) {
            continue;
        }
        tried = &*bag;
        if (auto proposal = of(*bag)) {
            left.erase(bag);
            return proposal;
        }
    }
    return std::nullopt;
}

int drop_kept_until_before(std::vector<archive::Bag>& bags, kitchen::Date date) {
    return static_cast<int>(
        std::erase_if(bags, [date](const archive::Bag& bag) { return bag.keep_until < date; }));
}

} // namespace

Menu freezer_next(std::vector<archive::Bag> frozen, const PackageOf& package_of,
                  const NextQuestion& question, const Now& now, const kitchen::ThawSettings& thaw) {
    Menu menu;
    menu.past = drop_kept_until_before(frozen, now.today);
    for (int day = 1; day <= question.count && !frozen.empty(); ++day) {
        const auto date = kitchen::add_days(now.today, std::chrono::days{day});
        menu.too_many += drop_kept_until_before(frozen, date);
        const auto eat = meal_on(date, question.at);
        const auto proposal_of = [&](const archive::Bag& bag) {
            return propose(bag, package_of(bag), eat, now, thaw);
        };
        if (auto proposal = take(frozen, proposal_of)) {
            menu.proposals.push_back(std::move(*proposal));
        } else if (!frozen.empty()) {
            menu.without.push_back(eat);
        }
    }
    return menu;
}

} // namespace thawslip::service
