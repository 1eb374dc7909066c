#include "service/print/job.h"

#include "service/day/door_rows.h"
#include "wording/day_sheet.h"

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

constexpr std::array<Kind, 8> all_kinds = {{
    {What::Labels, "labels", "Bag labels", "label"},
    {What::Cards, "cards", "Cook-day cards", "card"},
    {What::FinishingCards, "finishing cards", "Cook-day cards", "card"},
    {What::CookDayCards, "cook-day cards", "Cook-day cards", "card"},
    {What::Lists, "", "Day sheet and door list", "list"},
    {What::DaySheets, "", "Day sheet", "list"},
    {What::DoorList, "", "Freezer door list", "list"},
    {What::PlanSheet, "", "Dinner plan", "page"},
}};

const Kind& kind_of(What what) {
    return *std::ranges::find(all_kinds, what, &Kind::what);
}

std::string default_stock(const Kind& kind, const Settings& settings) {
    const bool is_a4 = settings.paper == "a4";
    if (kind.noun == "list" || kind.noun == "page") {
        return is_a4 ? "a4-full" : "letter-full";
    }
    if (kind.noun == "label") {
        return !settings.label_stock.empty() ? settings.label_stock
               : is_a4                       ? "a4-2x4-99x68mm"
                                             : "letter-2x5-4x2in";
    }
    return !settings.card_stock.empty() ? settings.card_stock
           : is_a4                      ? "a4-cards-105x148mm-cut"
                                        : "letter-cards-4.25x5.5in-cut";
}

/// In large print or two languages finishing cards need as much room as others; the cook's own
/// stock is what it is.
std::string roomy_stock(const Kind& kind, const Settings& settings) {
    const bool is_usual_card = kind.noun == "card" && settings.card_stock.empty();
    return !is_usual_card           ? default_stock(kind, settings)
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
    job.default_stock = default_stock(kind, settings);
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
    if (job.what != What::CookDayCards && !planned.finish.empty()) {
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

void add_day_sheets(Job& job, const Days& days, const wording::Style& style) {
    for (std::size_t day = 0; day < days.plans.size(); ++day) {
        add_list(job, day, wording::day_sheet(days.plans[day], style));
        auto shopping = wording::shopping_sheet(days.plans[day], style);
        if (!shopping.field("shopping")->paragraphs.empty()) {
            add_list(job, day, std::move(shopping));
        }
    }
}

Job list_job(What what, const Days& days, const Settings& settings) {
    auto job = empty_job(what, settings);
    const auto style = style_of(settings);
    if (what != What::DoorList) {
        add_day_sheets(job, days, style);
    }
    if (what != What::DaySheets) {
        add_list(job, 0, wording::door_list(door_rows(days), style, settings.kitchen.today));
    }
    return job;
}

} // namespace

std::string_view kept_as(What what) {
    return kind_of(what).kept_as;
}

What what_kept_as(std::string_view name) {
    const auto found = std::ranges::find(all_kinds, name, &Kind::kept_as);
    return found == all_kinds.end() || name.empty() ? What::Cards : found->what;
}

Job job_of(What what, const Days& days, const Settings& settings) {
    return kept_as(what).empty() ? list_job(what, days, settings) : bag_job(what, days, settings);
}

Job door_list_job(std::span<const wording::DoorRow> rows, const Settings& settings) {
    auto job = empty_job(What::DoorList, settings);
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
