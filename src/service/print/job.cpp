#include "service/print/job.h"

#include "base/list.h"
#include "service/day/door_rows.h"
#include "wording/day_sheet.h"
#include "wording/shopping_sheet.h"

#include <algorithm>
#include <array>

namespace thawslip::service {
namespace {

struct Kind {
    What what;
    std::string_view kept_as;
    std::string_view title;
    std::string_view noun;
};

constexpr std::array<Kind, 10> all_kinds = {{
    {What::Labels, "labels", "Bag labels", "label"},
    {What::Cards, "cards", "Cook-day cards", "card"},
    {What::FinishingCards, "finishing cards", "Cook-day cards", "card"},
    {What::CookDayCards, "cook-day cards", "Cook-day cards", "card"},
    {What::Lists, "", "Day sheet and door list", "list"},
    {What::DaySheets, "", "Day sheet", "list"},
    {What::StationSheets, "", "Day sheet", "list"},
    {What::Shopping, "", "Shopping list", "list"},
    {What::DoorList, "", "Freezer door list", "list"},
    {What::PlanSheet, "", "Dinner plan", "page"},
}};

const Kind& kind_of(What what) {
    return *std::ranges::find(all_kinds, what, &Kind::what);
}

/// The stock of a kind where neither an option nor a setting names one.
std::string shipped_stock(const Kind& kind, const Settings& settings) {
    const bool is_a4 = settings.paper == "a4";
    if (kind.noun == "label") {
        return is_a4 ? "a4-2x4-99x68mm" : "letter-2x5-4x2in";
    }
    if (kind.noun == "card") {
        return is_a4 ? "a4-cards-105x148mm-cut" : "letter-cards-4.25x5.5in-cut";
    }
    return is_a4 ? "a4-full" : "letter-full";
}

/// In large print or two languages finishing cards need as much room as others; the cook's own
/// stock is what it is.
std::string roomy_stock(const Kind& kind, const Settings& settings) {
    const bool is_usual_card =
        kind.noun == "card" && settings_of(kind.what, settings).stock.empty();
    return !is_usual_card           ? usual_stock(kind.what, settings)
           : settings.paper == "a4" ? "a4-cards-a6-cut"
                                    : "letter-cards-6x4in-cut";
}

/// A job without prints so far.
Job empty_job(What what, const Settings& settings) {
    const auto& kind = kind_of(what);
    Job job;
    job.what = what;
    job.title = kind.title;
    job.noun = kind.noun;
    job.default_stock = usual_stock(what, settings);
    job.roomy_stock = roomy_stock(kind, settings);
    job.language = settings.language;
    return job;
}

std::uint32_t place(std::size_t index) {
    return static_cast<std::uint32_t>(index);
}

void add_for_each_bag(Job& job, PrintOf first, const kitchen::PlannedPackage& planned) {
    for (std::size_t bag = 0; bag < planned.bags.size(); ++bag) {
        first.bag = place(bag);
        job.prints.push_back(first);
    }
}

void add_cards(Job& job, PrintOf of, const kitchen::PlannedPackage& planned) {
    if (job.what != What::FinishingCards) {
        of.kind = wording::Kind::CookDayCard;
        job.prints.push_back(of);
    }
    const bool has_more = !planned.finish.empty() || !planned.package.sides.empty();
    if (job.what != What::CookDayCards && has_more) {
        of.kind = wording::Kind::FinishingCard;
        add_for_each_bag(job, of, planned);
    }
}

Job bag_job(What what, const Days& days, const Settings& settings) {
    auto job = empty_job(what, settings);
    for (std::size_t day = 0; day < days.plans.size(); ++day) {
        const auto& plan = days.plans[day];
        job.title += (day == 0 ? " " : ", ") + kitchen::to_iso(plan.made);
        for (std::size_t package = 0; package < plan.packages.size(); ++package) {
            const auto& planned = plan.packages[package];
            const PrintOf of{wording::Kind::BagLabel, place(day), place(package), 0};
            what == What::Labels ? add_for_each_bag(job, of, planned) : add_cards(job, of, planned);
        }
    }
    return job;
}

/// Adds a list to a job; `day` is the one whose description its faults are told of.
void add_list(Job& job, std::size_t day, wording::Print list) {
    job.prints.push_back({list.kind, place(day), place(job.lists.size()), 0});
    job.lists.push_back(std::move(list));
}

/// The plans with no other packages than those of chosen bags.
Days with_chosen_dishes(const Days& days, const Chosen& chosen) {
    Days part;
    part.plans = days.plans;
    const auto is_wanted = [&](const kitchen::Bag& bag) { return chosen.bags->contains(bag.id); };
    for (auto& plan : part.plans) {
        std::erase_if(plan.packages, [&](const kitchen::PlannedPackage& planned) {
            return chosen.bags && std::ranges::none_of(planned.bags, is_wanted);
        });
    }
    std::erase_if(part.plans,
                  [&](const kitchen::Plan& plan) { return chosen.bags && plan.packages.empty(); });
    return part;
}

/// The same with no other bags, and none that are gone.
Days with_bags_there(const Days& days, const Chosen& chosen) {
    auto part = with_chosen_dishes(days, chosen);
    for (auto& plan : part.plans) {
        for (auto& planned : plan.packages) {
            std::erase_if(planned.bags, [&](const kitchen::Bag& bag) {
                return chosen.gone.contains(bag.id) ||
                       (chosen.bags && !chosen.bags->contains(bag.id));
            });
        }
        std::erase_if(plan.packages,
                      [](const kitchen::PlannedPackage& planned) { return planned.bags.empty(); });
    }
    return part;
}

void add_door_list(Job& job, const Days& days, const Settings& settings) {
    const auto style = style_of(settings);
    const auto rows = door_rows(days, *style.allergens);
    if (!rows.empty()) {
        add_list(job, 0, wording::door_list(rows, style, settings.kitchen.today));
    }
}

void add_day_sheets(Job& job, const Days& days, wording::SheetPer per,
                    const wording::Style& style) {
    for (std::size_t day = 0; day < days.plans.size(); ++day) {
        for (auto& sheet : wording::day_sheets(days.plans[day], per, style)) {
            add_list(job, day, std::move(sheet));
        }
    }
}

/// One for all days together, where there is anything to buy.
void add_shopping(Job& job, const Days& days, const Settings& settings) {
    auto shopping = wording::shopping_sheet(days.plans, goods_of(settings), style_of(settings));
    if (!shopping.field("shopping")->paragraphs.empty()) {
        add_list(job, 0, std::move(shopping));
    }
}

Job list_job(What what, const Days& days, const Settings& settings, const Chosen& chosen) {
    auto job = empty_job(what, settings);
    job.chosen.copies = chosen.copies;
    const auto style = style_of(settings);
    if (chosen.bags && chosen.bags->empty()) {
        return job;
    }
    const auto dishes = with_chosen_dishes(days, chosen);
    if (!is_one_of(what, {What::Shopping, What::DoorList})) {
        const auto per =
            what == What::StationSheets ? wording::SheetPer::Station : wording::SheetPer::Day;
        add_day_sheets(job, dishes, per, style);
    }
    if (what != What::DoorList) {
        add_shopping(job, dishes, settings);
    }
    if (is_one_of(what, {What::Lists, What::DoorList})) {
        add_door_list(job, with_bags_there(days, chosen), settings);
    }
    return job;
}

} // namespace

const JobSettings& settings_of(What what, const Settings& settings) {
    switch (what) {
    case What::Labels: return settings.labels;
    case What::FinishingCards: return settings.finishing_cards;
    case What::Cards:
    case What::CookDayCards: return settings.cook_day_cards;
    case What::Lists:
    case What::DaySheets:
    case What::StationSheets:
    case What::Shopping:
    case What::DoorList:
    case What::PlanSheet: break;
    }
    return settings.lists;
}

bool are_cards_apart(const Settings& settings) {
    return settings.finishing_cards != settings.cook_day_cards;
}

std::string usual_stock(What what, const Settings& settings) {
    const auto& own = settings_of(what, settings).stock;
    return own.empty() ? shipped_stock(kind_of(what), settings) : own;
}

std::string_view kept_as(What what) {
    return kind_of(what).kept_as;
}

What what_kept_as(std::string_view name) {
    const auto found = std::ranges::find(all_kinds, name, &Kind::kept_as);
    return found == all_kinds.end() || name.empty() ? What::Cards : found->what;
}

Job job_of(What what, const Days& days, const Settings& settings, const Chosen& chosen) {
    if (kept_as(what).empty()) {
        return list_job(what, days, settings, chosen);
    }
    auto job = bag_job(what, days, settings);
    job.chosen = chosen;
    return job;
}

bool is_chosen(const PrintOf& of, const Job& job, const Days& days) {
    const auto& bags = job.chosen.bags;
    if (!bags) {
        return true;
    }
    const auto& planned = package_of(of, days);
    const auto is_wanted = [&bags](const kitchen::Bag& bag) { return bags->contains(bag.id); };
    return of.kind == wording::Kind::CookDayCard ? std::ranges::any_of(planned.bags, is_wanted)
                                                 : is_wanted(planned.bags[of.bag]);
}

std::size_t count_chosen(const Job& job, const Days& days) {
    const auto prints = std::ranges::count_if(
        job.prints, [&](const PrintOf& of) { return is_chosen(of, job, days); });
    return static_cast<std::size_t>(prints * job.chosen.copies);
}

Job door_list_job(std::span<const wording::DoorRow> rows, const Settings& settings, int copies) {
    auto job = empty_job(What::DoorList, settings);
    job.chosen.copies = copies;
    add_list(job, 0, wording::door_list(rows, style_of(settings), settings.kitchen.today));
    return job;
}

Job plan_sheet_job(std::vector<wording::Print> sheets, const Settings& settings) {
    auto job = empty_job(What::PlanSheet, settings);
    for (auto& sheet : sheets) {
        add_list(job, 0, std::move(sheet));
    }
    return job;
}

} // namespace thawslip::service
