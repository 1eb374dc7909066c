#include "service/freezer/freezer_next.h"

#include "base/list.h"
#include "kitchen/figures.h"
#include "kitchen/texts/lexicon.h"
#include "kitchen/timeline/timeline.h"
#include "service/dinner/timeline_dish.h"
#include "service/freezer/bags.h"
#include "service/freezer/packages_of_bags.h"

#include <algorithm>

namespace thawslip::service {
namespace {

kitchen::LocalMinute meal_on(kitchen::Date day, std::chrono::minutes time) {
    return kitchen::LocalMinute{std::chrono::sys_days{day}.time_since_epoch() + time};
}

/// Whether a plan is one to follow: thawed as the label says and begun in time.
bool is_in_time(const kitchen::Timeline& line) {
    return can_be_done(line) && line.dishes.front().outlook == kitchen::Outlook::InTime;
}

/// What a proposal says of a way to thaw that serves.
void describe(Proposal& proposal, const kitchen::PlannedPackage& way, const kitchen::Timeline& line,
              const Now& now) {
    proposal.method = way.package.thaw.method;
    proposal.thaw_time = thaw_time(way);
    proposal.cook_within = cook_within(way);
    proposal.way = way;
    if (const auto& window = line.dishes.front().thaw) {
        proposal.thaw_start = on_clock(now.clock, window->at);
    }
}

/// A package by a way to thaw that its label names.
const kitchen::PlannedPackage& by_way(const kitchen::PlannedPackage& package,
                                      kitchen::ThawMethod method) {
    const auto other =
        std::ranges::find_if(package.other_thaws, [method](const kitchen::PlannedPackage& way) {
            return way.package.thaw.method == method;
        });
    return other == package.other_thaws.end() ? package : *other;
}

/// A bag for a meal, by the first way on its label that thaws it in time; where nobody can tell,
/// the label can.
std::optional<Proposal> propose(const archive::Bag& bag, const kitchen::PlannedPackage* package,
                                kitchen::LocalMinute eat, const Now& now,
                                const kitchen::ThawSettings& thaw) {
    Proposal proposal{eat, {bag}};
    if (package == nullptr) {
        return proposal;
    }
    const auto request =
        kitchen::with_thaw_in_time({{timeline_dish(*package)}, eat, now.instant, now.clock, thaw});
    const auto line = kitchen::timeline(request);
    if (!is_in_time(line)) {
        return std::nullopt;
    }
    describe(proposal, by_way(*package, request.dishes.front().package.thaw.method), line, now);
    return proposal;
}

/// Whether a bag's date forbids to eat it on a day. One that a list gave is about quality; one that
/// the cook set is not passed over.
bool is_past(const archive::Bag& bag, kitchen::Date on, bool best_too) {
    const bool only_best = bag.basis == kitchen::DateBasis::StorageTable;
    return bag.keep_until < on && !(best_too && only_best);
}

int drop_past(std::vector<archive::Bag>& bags, kitchen::Date today, bool best_too) {
    return static_cast<int>(std::erase_if(
        bags, [&](const archive::Bag& bag) { return is_past(bag, today, best_too); }));
}

/// Takes out the bags that are not for the guest, and names their dishes.
std::vector<std::string> drop_avoided(std::vector<archive::Bag>& bags, const PackageOf& package_of,
                                      const std::vector<Avoided>& without) {
    std::vector<std::string> dishes;
    std::erase_if(bags, [&](const archive::Bag& bag) {
        const auto* package = without.empty() ? nullptr : package_of(bag);
        const bool is_for_guest =
            without.empty() || (package != nullptr && avoided_in(*package, without).empty());
        if (!is_for_guest) {
            add_once(dishes, bag.dish);
        }
        return !is_for_guest;
    });
    return dishes;
}

/// Dishes in order of their soonest dates, each with its bags: all raw, or none.
using Dishes = std::vector<std::vector<archive::Bag>>;

Dishes by_dish(const std::vector<archive::Bag>& bags) {
    Dishes dishes;
    for (const auto& bag : bags) {
        const auto known = std::ranges::find_if(dishes, [&bag](const auto& dish) {
            return dish.front().dish == bag.dish && is_raw(dish.front()) == is_raw(bag);
        });
        if (known == dishes.end()) {
            dishes.push_back({bag});
        } else {
            known->push_back(bag);
        }
    }
    return dishes;
}

int servings_of(const std::vector<archive::Bag>& bags) {
    int servings = 0;
    for (const auto& bag : bags) {
        servings += bag.servings;
    }
    return servings;
}

/// Takes out the dishes that `is_none` says are no dinner, and names them.
template <class IsNone>
std::vector<std::string> take_out(Dishes& dishes, const IsNone& is_none) {
    std::vector<std::string> names;
    std::erase_if(dishes, [&](const auto& bags) {
        const bool none = is_none(bags);
        if (none) {
            names.push_back(bags.front().dish);
        }
        return none;
    });
    return names;
}

/// One more bag of the same dish, where it is thawed in the same way: begun, and then cooked, when
/// the first must.
void add(Proposal& proposal, Proposal more) {
    if (more.method != proposal.method ||
        more.cook_within.has_value() != proposal.cook_within.has_value()) {
        return;
    }
    if (more.thaw_start && proposal.thaw_start) {
        proposal.thaw_start = std::min(*more.thaw_start, *proposal.thaw_start);
    }
    if (more.thaw_time && proposal.thaw_time) {
        proposal.thaw_time = {std::min(more.thaw_time->low, proposal.thaw_time->low),
                              std::max(more.thaw_time->high, proposal.thaw_time->high)};
    }
    proposal.cook_within = std::min(proposal.cook_within, more.cook_within);
    proposal.bags.push_back(std::move(more.bags.front()));
}

using Propose = std::function<std::optional<Proposal>(const archive::Bag&)>;

/// As many bags of a dish as the table needs; nothing where they cannot be thawed in time.
std::optional<Proposal> propose_dish(const std::vector<archive::Bag>& bags, int serves,
                                     kitchen::Date on, bool past_too, const Propose& propose_bag) {
    std::optional<Proposal> proposal;
    for (const auto& bag : bags) {
        if (proposal && proposal->servings() >= serves) {
            break;
        }
        if (is_past(bag, on, past_too)) {
            continue;
        }
        if (auto one = propose_bag(bag)) {
            proposal ? add(*proposal, std::move(*one)) : void(proposal = std::move(*one));
        }
    }
    return proposal && proposal->servings() >= serves ? proposal : std::nullopt;
}

/// Says of a meal that none of the dishes is proposed for whether it is for their dates, or for how
/// long they thaw.
void add_without(Menu& menu, const Dishes& dishes, kitchen::LocalMinute eat, bool past_too) {
    const kitchen::Date on{std::chrono::floor<std::chrono::days>(eat)};
    MealAfterDate after{eat, {}};
    for (auto bags : dishes) {
        const auto soonest = bags.front();
        std::erase_if(bags, [&](const auto& bag) { return is_past(bag, on, past_too); });
        if (servings_of(bags) < menu.serves) {
            after.bags.push_back(soonest);
        }
    }
    if (after.bags.size() < dishes.size()) {
        menu.without.push_back(eat);
    }
    if (!after.bags.empty()) {
        menu.after_date.push_back(std::move(after));
    }
}

bool is_for_children(std::string_view dish) {
    const auto words = kitchen::worded(dish);
    return kitchen::says(words, kitchen::Section::People, "child") ||
           kitchen::says(words, kitchen::Section::People, "infant");
}

/// Bags whose date comes before the last of the days, and that no day has room for.
int left_behind(const std::vector<archive::Bag>& frozen, const Menu& menu, kitchen::Date first,
                kitchen::Date last) {
    const auto is_proposed = [&menu](const archive::Bag& bag) {
        return std::ranges::any_of(menu.proposals, [&bag](const Proposal& proposal) {
            return std::ranges::find(proposal.bags, bag.id, &archive::Bag::id) !=
                   proposal.bags.end();
        });
    };
    return static_cast<int>(std::ranges::count_if(frozen, [&](const archive::Bag& bag) {
        return bag.keep_until >= first && bag.keep_until < last && !is_proposed(bag);
    }));
}

} // namespace

int Proposal::servings() const {
    return servings_of(bags);
}

int usual_table(const std::vector<archive::Bag>& bags) {
    const auto for_one = std::ranges::count(bags, 1, &archive::Bag::servings);
    return 2 * static_cast<std::size_t>(for_one) > bags.size() ? 1 : 2;
}

bool is_small_portion(const archive::Bag& bag) {
    constexpr double grams_a_serving = 150.0;
    return is_for_children(bag.dish) ||
           (bag.weight && bag.weight->grams < grams_a_serving * bag.servings);
}

Menu freezer_next(std::vector<archive::Bag> frozen, const PackageOf& package_of,
                  const NextQuestion& question, const Now& now, const kitchen::ThawSettings& thaw) {
    Menu menu;
    menu.past = drop_past(frozen, now.today, question.past_too);
    menu.avoided = drop_avoided(frozen, package_of, question.without);
    menu.serves = question.serves.value_or(usual_table(frozen));
    auto dishes = by_dish(frozen);
    menu.small = take_out(
        dishes, [](const auto& bags) { return std::ranges::all_of(bags, is_small_portion); });
    menu.too_few =
        take_out(dishes, [&menu](const auto& bags) { return servings_of(bags) < menu.serves; });
    const bool any = !dishes.empty();
    for (int day = 1; day <= question.count && any; ++day) {
        const auto date = kitchen::add_days(now.today, std::chrono::days{day});
        const auto eat = meal_on(date, question.at);
        const auto bag_for = [&](const archive::Bag& bag) {
            return propose(bag, package_of(bag), eat, now, thaw);
        };
        std::optional<Proposal> proposal;
        const auto taken = std::ranges::find_if(dishes, [&](const auto& bags) {
            proposal = propose_dish(bags, menu.serves, date, question.past_too, bag_for);
            return proposal.has_value();
        });
        if (proposal) {
            menu.proposals.push_back(std::move(*proposal));
            dishes.erase(taken);
        } else if (dishes.empty()) {
            ++menu.days_left;
        } else {
            add_without(menu, dishes, eat, question.past_too);
        }
    }
    menu.too_many = left_behind(frozen, menu, now.today,
                                kitchen::add_days(now.today, std::chrono::days{question.count}));
    return menu;
}

Menu freezer_next(archive::Archive& archive, const NextQuestion& question, const Now& now,
                  const kitchen::ThawSettings& thaw) {
    PackagesOfBags packages{archive};
    const auto package_of = [&packages](const archive::Bag& bag) { return packages.of(bag); };
    return freezer_next(archive.bags(archive::Which::InFreezer), package_of, question, now, thaw);
}

} // namespace thawslip::service
