#include "kitchen/plan.h"

#include "base/fill.h"
#include "kitchen/bag_id.h"
#include "kitchen/cautions/cautions.h"
#include "kitchen/cooking/cook_time.h"
#include "kitchen/cooking/other_thaw.h"
#include "kitchen/foods/food_taken.h"
#include "kitchen/foods/foods_named.h"
#include "kitchen/foods/parts_ahead.h"
#include "kitchen/heat/freezing_lead.h"
#include "kitchen/refuse.h"
#include "kitchen/storage/chilled_wait.h"
#include "kitchen/timeline/cook_window.h"
#include "kitchen/timeline/finish_order.h"
#include "kitchen/unjudged_plan.h"

#include <algorithm>
#include <fmt/format.h>
#include <map>
#include <set>

namespace thawslip::kitchen {
namespace {

std::optional<KeepUntil> keep_until(const Package& package, Date made, const StorageTable& table,
                                    Diagnostics& faults) {
    const bool known = knows_food(package, table, faults);
    if (package.use_by) {
        if (*package.use_by < made) {
            refuse(faults, package.where.key("use_by"),
                   fmt::format("use_by {} lies before the day it was made, {}",
                               to_iso(*package.use_by), to_iso(made)));
            return std::nullopt;
        }
        return known ? std::optional{KeepUntil{*package.use_by, DateBasis::SetByCook, {}}}
                     : std::nullopt;
    }
    const auto row = known ? shortest_lived(table, package.food) : std::nullopt;
    if (!row) {
        return std::nullopt;
    }
    return KeepUntil{low_end(*row, made), DateBasis::StorageTable, row};
}

/// Refuses what would never go in because the dish is done before.
bool finish_fits(const Package& package, Diagnostics& faults) {
    if (!package.cook || !package.cook->time) {
        return true;
    }
    bool all = true;
    for (const auto& finish : package.finish) {
        if (finish.when.offset > package.cook->time->high) {
            refuse(faults, finish.where.key("when"),
                   fmt::format("{} minutes is longer than the dish cooks, {} minutes",
                               finish.when.offset.count(), package.cook->time->high.count()));
            all = false;
        }
    }
    return all;
}

int size_name(const Package& package) {
    return package.size ? package.size->name : 0;
}

std::vector<Bag> bags_of(const Package& package, Date made, const Batch& batch,
                         std::set<std::string>& taken) {
    std::vector<Bag> bags;
    for (int number = 1; number <= package.bags; ++number) {
        bags.push_back(
            {fresh_bag_id({package.dish, made, number, batch}, taken), number, package.bags});
    }
    return bags;
}

/// Reports the cautions of level Refuse and takes them out; whether there were none.
bool pass(std::vector<Caution>& given, Diagnostics& faults) {
    const auto rules = caution_rules();
    const auto is_refusal = [](const Caution& caution) {
        return caution.level == CautionLevel::Refuse;
    };
    for (const auto& caution : given) {
        if (is_refusal(caution)) {
            const auto& [message, hint] = find_rule(rules, caution.id)->refusal;
            refuse(faults, caution.where, fill(message, caution.values),
                   hint.empty() ? std::vector<std::string>{}
                                : std::vector{fill(hint, caution.values)});
        }
    }
    return std::erase_if(given, is_refusal) == 0;
}

std::optional<ThawLead> lead_of(const Package& package, const ThawSettings& settings) {
    const auto lead = thaw_lead(package.thaw.method, package.thickness, package.weight, settings);
    return lead ? std::optional{lead.value()} : std::nullopt;
}

/// What is eaten frozen has no other way out of the freezer, whatever is written.
Package kept_frozen(Package package, const StorageTable& table) {
    if (is_eaten_frozen(table, package)) {
        package.thaw.method = ThawMethod::FromFrozen;
        package.thaw.others.clear();
    }
    return package;
}

/// Whether a plan has cautions.
enum class Judged { Yes, No };

/// What a package is planned by.
struct Planning {
    Date packing_day;
    const StorageTable& table;
    const KitchenSettings& settings;
    std::optional<Date> prepared = std::nullopt;
    Judged judged = Judged::Yes;
};

/// Whether something in it may have been cooked before: not known, or neither raw, nor made to be
/// eaten as it is, nor of a kind that does not spoil.
bool is_cooked_before(const Package& package, const StorageTable& table) {
    return package.food.empty() || std::ranges::any_of(package.food, [&](const std::string& food) {
               const auto kind = kind_of(table, food);
               return kind != FoodKind::Other && kind != FoodKind::ReadyToEat && !is_raw(kind);
           });
}

std::optional<CoolingAdvice> cooling_of(const Package& package, const StorageTable& table,
                                        const ThawSettings& settings) {
    if (!is_cooked_before(package, table)) {
        return std::nullopt;
    }
    // Hot food would warm what is raw, and keep it warm: common practice, no source.
    return any_raw(table, package.food)
               ? CoolingAdvice{.way = CoolingWay::FilledCold}
               : cooling_advice(package.thickness, package.weight, settings);
}

/// Whether something in the bag is raw: by its kinds; where no word names a kind, as the dish says.
bool is_raw_as_said(const Package& package, const StorageTable& table) {
    return any_raw(table, package.food) ||
           (package.food_basis == FoodBasis::Nothing && says_raw(table, package.dish));
}

/// The finishing ingredients in order, by how long it cooks and stays hot after that. Where it may
/// also be cooked from frozen, for another time, moments keep the words that hold for both.
std::vector<Finish> finish_in_order(const Package& package,
                                    std::optional<std::chrono::seconds> hold) {
    const auto is_frozen = [](ThawMethod method) { return method == ThawMethod::FromFrozen; };
    const bool is_one_time =
        std::ranges::all_of(package.thaw.others, [&](const OtherMethod& other) {
            return is_frozen(other.method) == is_frozen(package.thaw.method);
        });
    const auto written = package.cook ? package.cook->time : std::nullopt;
    const auto cooking = written ? std::optional{with_hold(*written, hold)} : std::nullopt;
    return in_order(package.finish, cooking,
                    is_one_time ? Moments::NamedAlike : Moments::AsWritten);
}

/// Everything but the ids, by the first method alone; nothing when the package is refused.
std::optional<PlannedPackage> plan_first(const Package& written, const Planning& by,
                                         Diagnostics& faults) {
    const auto& [packing_day, table, settings, prepared, judged] = by;
    const auto package = with_time_as_cooked(written, table);
    const auto made = package.made.value_or(packing_day);
    const auto keep = keep_until(package, made, table, faults);
    const bool fits = finish_fits(package, faults);
    if (!keep) {
        return std::nullopt;
    }
    const Scene scene{package, made, *keep, table, settings, packing_day, prepared};
    auto given = judged == Judged::Yes ? cautions(scene) : std::vector<Caution>{};
    if (!pass(given, faults) || !fits) {
        return std::nullopt;
    }
    const auto hold = holding(scene);
    const auto wetness = wetness_of(table, package);
    const auto thaw = settings_for(package, wetness, settings.thaw);
    return PlannedPackage{.package = package,
                          .made = made,
                          .keep_until = *keep,
                          .batch = {},
                          .bags = {},
                          .finish = finish_in_order(package, hold),
                          .cautions = std::move(given),
                          .allergens = read_allergens(package.contains),
                          .may_contain = read_allergens(package.may_contain),
                          .after_thawing = keeps_thawed(package, packing_day, table, settings.thaw),
                          .thaw_lead = lead_of(package, thaw),
                          .wetness = wetness,
                          .cooling = cooling_of(package, table, thaw),
                          .freezing = freezing_lead(package.thickness, package.weight, thaw),
                          .minimum = counted_minimum(table, package),

                          .raw = is_raw_as_said(package, table),
                          .served = served(package, table),
                          .hold = hold,
                          .counts_from_frozen = may_count_from_frozen(package, table)};
}

/// What is refused already is not said again.
void add_new(Diagnostics more, Diagnostics& faults) {
    for (auto& fault : more) {
        if (std::ranges::find(faults, fault) == faults.end()) {
            faults.push_back(std::move(fault));
        }
    }
}

/// What stands against another method alone stands where that is named.
Diagnostics placed_at(const OtherMethod& other, Diagnostics refused, const Diagnostics& before) {
    for (auto& fault : refused) {
        if (std::ranges::find(before, fault) == before.end()) {
            fault.key = other.where;
        }
    }
    return refused;
}

/// Everything but the ids, by each method that the cook names; nothing when one is refused.
std::optional<PlannedPackage> plan_package(const Package& written, const Planning& by,
                                           Diagnostics& faults) {
    Diagnostics found;
    auto planned = plan_first(written, by, found);
    for (const auto& other : written.thaw.others) {
        Diagnostics of_other;
        auto way = plan_first(thawed_by(written, other, by.table), by, of_other);
        add_new(placed_at(other, std::move(of_other), found), found);
        if (planned && way) {
            add_cautions_of(other.method, way->cautions, planned->cautions);
            planned->other_thaws.push_back(std::move(*way));
        } else {
            planned.reset();
        }
    }
    add_new(std::move(found), faults); // sizes of a dish are alike in most of what they say
    return planned;
}

FreezerLoad load_of(double litres, const std::vector<PlannedPackage>& packages,
                    const Planning& by) {
    std::vector<BagToFreeze> bags;
    for (std::size_t dish = 0; dish < packages.size(); ++dish) {
        const auto& package = packages[dish].package;
        const auto may_wait = may_wait_chilled(package, by.packing_day, by.table, by.settings.thaw);
        for (const auto& bag : packages[dish].bags) {
            bags.push_back({bag.id, package.weight, dish, may_wait, packages[dish].raw});
        }
    }
    return freezer_load(litres, bags);
}

/// Sets how long each bag waits; the longest wait.
std::chrono::days set_waits(std::vector<Bag>& bags,
                            const std::map<std::string, std::chrono::days>& waits) {
    std::chrono::days longest{0};
    for (auto& bag : bags) {
        const auto found = waits.find(bag.id);
        bag.waits = found == waits.end() ? std::chrono::days{0} : found->second;
        longest = std::max(longest, bag.waits);
    }
    return longest;
}

/// What the cook is asked is about what was written, which a wait does not change.
void keep_questions(std::vector<Caution>& again, const std::vector<Caution>& before) {
    const auto is_question = [](const Caution& caution) {
        return caution.level == CautionLevel::Report;
    };
    std::erase_if(again, is_question);
    std::ranges::copy_if(before, std::back_inserter(again), is_question);
    std::ranges::stable_sort(again, std::ranges::greater{}, &Caution::level);
}

/// Counts the days that bags wait for the freezer among those before freezing, and plans again
/// what depends on them. The date needs no change: it counts from the day it was made.
void count_waits(Plan& plan, const Planning& by, Diagnostics& faults) {
    const auto waits = waits_of(*plan.freezer_load);
    for (auto& planned : plan.packages) {
        const auto longest = set_waits(planned.bags, waits);
        if (longest == std::chrono::days{0}) {
            continue;
        }
        auto package = planned.package;
        const auto chilled = days_chilled(package, by.packing_day) + longest;
        package.days_refrigerated = static_cast<int>(chilled.count());
        if (auto again = plan_package(package, by, faults)) {
            again->batch = std::move(planned.batch);
            again->number = planned.number;
            again->bags = std::move(planned.bags);
            keep_questions(again->cautions, planned.cautions);
            planned = std::move(*again);
        }
    }
}

} // namespace

std::vector<DishBags> by_dish(const Plan& plan, const std::vector<std::string>& bags) {
    const std::set<std::string_view> wanted(bags.begin(), bags.end());
    std::vector<DishBags> dishes;
    for (const auto& planned : plan.packages) {
        DishBags dish{&planned, {}};
        for (const auto& bag : planned.bags) {
            if (wanted.contains(bag.id)) {
                dish.bags.push_back(bag.id);
            }
        }
        if (!dish.bags.empty()) {
            dishes.push_back(std::move(dish));
        }
    }
    return dishes;
}

std::vector<std::span<const PlannedPackage>> dishes_of(const Plan& plan) {
    std::vector<std::span<const PlannedPackage>> dishes;
    const std::span all{plan.packages};
    for (std::size_t first = 0; first < all.size();) {
        auto next = first + 1;
        while (next < all.size() && all[next].number == all[first].number) {
            ++next;
        }
        dishes.push_back(all.subspan(first, next - first));
        first = next;
    }
    return dishes;
}

namespace {

Plan plan_day(const Day& written, const StorageTable& table, Diagnostics& faults,
              const KitchenSettings& settings, const std::vector<Batch>& batches, Judged judged) {
    Day day = written;
    for (auto& package : day.packages) {
        package = kept_frozen(with_days_ahead(with_kinds(package, table), day, table), table);
    }
    Plan result{.kitchen = day.kitchen,
                .made = day.made,
                .prepared = day.prepared,
                .packages = {},
                .cautions = {},
                .freezer_litres = day.freezer_litres};
    if (judged == Judged::Yes) {
        result.cautions = day_cautions(day, table, settings);
    }
    const Planning by{day.made, table, settings, day.prepared, judged};
    std::set<std::string> taken;
    int dish = 0;
    for (std::size_t i = 0; i < day.packages.size(); ++i) {
        const auto& package = day.packages[i];
        const auto made = package.made.value_or(day.made);
        const auto batch = i < batches.size() ? batches[i]
                                              : Batch{.kitchen_number = settings.number,
                                                      .kitchen = day.kitchen,
                                                      .size = size_name(package)};
        dish += goes_on(package) ? 0 : 1;
        // Ids are dealt out to refused packages too, so that mending one changes no other's.
        auto bags = bags_of(package, made, batch, taken);
        if (auto planned = plan_package(package, by, faults)) {
            planned->batch = batch;
            planned->number = dish;
            planned->bags = std::move(bags);
            result.room += room_of(planned->package, planned->wetness);
            result.packages.push_back(std::move(*planned));
        }
    }
    if (day.freezer_litres) {
        result.freezer_load = load_of(*day.freezer_litres, result.packages, by);
        count_waits(result, by, faults);
    }
    return result;
}

} // namespace

Plan plan(const Day& day, const StorageTable& table, Diagnostics& faults,
          const KitchenSettings& settings, const std::vector<Batch>& batches) {
    return plan_day(day, table, faults, settings, batches, Judged::Yes);
}

Plan unjudged_plan(const Day& day, const StorageTable& table, Diagnostics& faults,
                   const KitchenSettings& settings) {
    return plan_day(day, table, faults, settings, {}, Judged::No);
}

} // namespace thawslip::kitchen
