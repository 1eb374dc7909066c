#include "service/freezer/renamed_dish.h"

#include "base/list.h"
#include "service/freezer/bags.h"
#include "service/record/label_facts.h"

#include <algorithm>
#include <fmt/format.h>
#include <map>

namespace thawslip::service {
namespace {

using Bags = std::vector<archive::Bag>;

/// All bags of the package that a bag belongs to.
Bags package_of(archive::Archive& archive, const archive::Bag& of) {
    auto bags = archive.bags(archive::Which::All);
    std::erase_if(bags, [&of](const archive::Bag& bag) { return !are_of_one_package(bag, of); });
    return bags;
}

/// Bags of dishes that are called exactly so, where there are any: "lentil soup" and not "lentil
/// soup with dill".
void keep_exact(Bags& bags, const std::string& name) {
    const auto is_exact = [&name](const archive::Bag& bag) {
        return search_words({bag.dish}) == search_words({name});
    };
    if (std::ranges::any_of(bags, is_exact)) {
        std::erase_if(bags, [&](const archive::Bag& bag) { return !is_exact(bag); });
    }
}

/// The packages that a name means, each with its bags.
Outcome<std::vector<Bags>> packages_named(archive::Archive& archive, const std::string& name) {
    auto named = named_bags(archive, name, archive::Which::All);
    Outcome<std::vector<Bags>> outcome{{}, std::move(named.messages)};
    if (!named) {
        return outcome;
    }
    if (!named.value->by_id) {
        keep_exact(named.value->bags, name);
    }
    std::vector<Bags> packages;
    for (const auto& bag : named.value->bags) {
        const bool known = std::ranges::any_of(
            packages, [&bag](const Bags& bags) { return are_of_one_package(bags.front(), bag); });
        if (!known) {
            packages.push_back(package_of(archive, bag));
        }
    }
    outcome.value = std::move(packages);
    return outcome;
}

std::string dish_and_day(const archive::Bag& bag) {
    return fmt::format("\"{}\" made {}", bag.dish, kitchen::to_iso(bag.made));
}

std::string bag_and_dish(const Bags& bags) {
    return fmt::format("{} ({})", dish_and_day(bags.front()), bags.front().id);
}

/// Whether a package of the new name can be one of the old name: of the same day and size.
bool can_be_one(const Bags& before, const Bags& now) {
    const auto& a = before.front();
    const auto& b = now.front();
    return a.made == b.made && a.size == b.size && a.day != b.day;
}

using Pairs = std::vector<std::pair<const Bags*, const Bags*>>;

Pairs pairs_of(const std::vector<Bags>& before, const std::vector<Bags>& now) {
    Pairs pairs;
    for (const auto& one : before) {
        for (const auto& other : now) {
            if (can_be_one(one, other)) {
                pairs.emplace_back(&one, &other);
            }
        }
    }
    return pairs;
}

/// A package that could be two, or two that could be one: of which it is, nobody knows.
void refuse_doubtful(const Pairs& pairs, Messages& messages) {
    const auto is_doubtful = [&pairs](const auto& pair) {
        return std::ranges::count(pairs, pair.first, &Pairs::value_type::first) > 1 ||
               std::ranges::count(pairs, pair.second, &Pairs::value_type::second) > 1;
    };
    std::string fits;
    for (const auto& pair : pairs) {
        if (is_doubtful(pair)) {
            fits += (fits.empty() ? "" : "; ") + bag_and_dish(*pair.first) + " could be " +
                    bag_and_dish(*pair.second);
        }
    }
    if (!fits.empty()) {
        messages.error("these words fit several dishes: " + fits,
                       {"name one of each by the id of one of its bags: thawslip freezer renamed "
                        "OLD-ID NEW-ID"});
    }
}

void refuse(const archive::Bag& before, const archive::Bag& now, Messages& messages) {
    if (are_of_one_package(before, now)) {
        messages.error(fmt::format("{} is the same dish under both names", dish_and_day(before)));
        return;
    }
    if (before.day == now.day) {
        messages.error(fmt::format("{} and {} stand side by side in one description, so they are "
                                   "two dishes",
                                   dish_and_day(before), dish_and_day(now)));
        return;
    }
    if (before.made == now.made) {
        messages.error(fmt::format("{} and {} have no bags of one size in common",
                                   dish_and_day(before), dish_and_day(now)));
        return;
    }
    messages.error(fmt::format("{} and {} are of two days, so of two foods", dish_and_day(before),
                               dish_and_day(now)),
                   {"print the day again under its new name first: thawslip labels DAY.toml"});
}

void hold_food(archive::Archive& archive, const Bags& before, const Bags& now, Messages& messages) {
    const auto& a = before.front();
    const auto& b = now.front();
    if (is_raw(a) != is_raw(b)) {
        messages.error(fmt::format("{} is {} and {} is {}: these are two foods", dish_and_day(a),
                                   is_raw(a) ? "raw" : "not raw", dish_and_day(b),
                                   is_raw(b) ? "raw" : "not raw"));
    } else if (is_relabelled(label_facts(archive, a), label_facts(archive, b))) {
        messages.caution(
            fmt::format("the labels of {} name other allergens, another kind of food or a later "
                        "date to use it by than those of {}",
                        dish_and_day(a), dish_and_day(b)),
            {"take the old labels off, or put the new ones over them"});
    }
}

/// Bag 1 is bag 1.
void join(const Bags& before, const Bags& now, RenamedDish& renamed) {
    for (const auto& bag : before) {
        const auto found = std::ranges::find(now, bag.number, &archive::Bag::number);
        if (found == now.end()) {
            renamed.alone.push_back(bag);
        } else {
            renamed.joined.push_back({bag, *found});
        }
    }
}

} // namespace

Outcome<RenamedDish> rename_dish(archive::Archive& archive, const std::string& before,
                                 const std::string& now, const Moment& moment) {
    Outcome<RenamedDish> outcome;
    const auto olds = packages_named(archive, before);
    const auto news = packages_named(archive, now);
    outcome.messages.add(olds.messages);
    outcome.messages.add(news.messages);
    if (!olds || !news) {
        return outcome;
    }
    const auto pairs = pairs_of(*olds.value, *news.value);
    if (pairs.empty()) {
        refuse(olds.value->front().front(), news.value->front().front(), outcome.messages);
        return outcome;
    }
    refuse_doubtful(pairs, outcome.messages);
    RenamedDish renamed;
    for (const auto& [old_bags, new_bags] : pairs) {
        hold_food(archive, *old_bags, *new_bags, outcome.messages);
        join(*old_bags, *new_bags, renamed);
    }
    if (outcome.messages.have_errors()) {
        return outcome;
    }
    const auto ids = mapped(renamed.joined, [](const JoinedBag& bag) {
        return std::pair{bag.before.id, bag.now.id};
    });
    archive.join(ids, moment.at, moment.station);
    outcome.value = std::move(renamed);
    return outcome;
}

} // namespace thawslip::service
