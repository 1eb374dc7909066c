#include "service/days.h"

#include "base/list.h"
#include "intake/day_file.h"
#include "intake/storage_file.h"
#include "kitchen/unjudged_plan.h"

#include <fmt/format.h>
#include <map>
#include <utility>

namespace thawslip::service {
namespace {

void read_one(const DayText& day_text, const kitchen::StorageTable& table,
              const kitchen::KitchenSettings& settings, Days& days) {
    Diagnostics faults;
    auto document = toml::parse(day_text.text, day_text.name, faults);
    const bool is_printed = !day_text.batches.empty();
    const auto reading =
        intake::read_day(document, faults, is_printed ? intake::From::Archive : intake::From::Cook);
    Diagnostics refusals;
    auto plan = kitchen::plan(reading.day, table, refusals, settings, day_text.batches);
    intake::add_refusals(document, std::move(refusals), faults);
    if (reading.whole) {
        days.plans.push_back(std::move(plan));
    }
    days.diagnostics.insert(days.diagnostics.end(), faults.begin(), faults.end());
    days.documents.push_back(std::move(document));
    days.texts.push_back(day_text);
}

} // namespace

Days reread_day(const DayText& text, const Settings& settings, const kitchen::StorageTable& table) {
    Days days;
    Diagnostics faults;
    auto document = toml::parse(text.text, text.name, faults);
    const auto reading = intake::read_day(document, faults, intake::From::Archive);
    auto plan = kitchen::unjudged_plan(reading.day, table, faults, settings.kitchen);
    if (reading.whole) {
        days.plans.push_back(std::move(plan));
    }
    days.diagnostics = std::move(faults);
    days.documents.push_back(std::move(document));
    days.texts.push_back(text);
    return days;
}

namespace {

/// Whether two names are of one file. What has no lasting place is told by its ids.
bool are_one_file(const Days& days, std::size_t one, std::size_t other) {
    const auto& place = days.texts[one].place;
    return !place.empty() && place == days.texts[other].place;
}

void refuse_second_name(Days& days, std::size_t second) {
    Diagnostic twice{Severity::Error,
                     {days.documents[second].file()},
                     {},
                     "this file is named twice",
                     {"name it once"}};
    add_once(days.diagnostics, std::move(twice)); // not for each of its dishes
}

} // namespace

void refuse_shared_ids(Days& days) {
    std::map<std::string, std::size_t> seen;
    for (std::size_t d = 0; d < days.plans.size(); ++d) {
        for (const auto& planned : days.plans[d].packages) {
            const auto& first = planned.bags.front();
            const auto [known, is_new] = seen.emplace(first.id, d);
            if (!is_new && known->second != d && are_one_file(days, known->second, d)) {
                refuse_second_name(days, d);
            } else if (!is_new && known->second != d) {
                const auto key = planned.package.where.key("dish");
                days.diagnostics.push_back(
                    {Severity::Error,
                     days.documents[d].place(key),
                     key,
                     fmt::format("\"{}\", made the same day, stands in {} too: its bags would have "
                                 "the same ids",
                                 planned.package.dish, days.documents[known->second].file()),
                     {"print one file after the other, or give the dishes different names"}});
            }
        }
    }
}

Days plan_days(const std::vector<DayText>& texts, const Settings& settings, Ids ids) {
    const auto table = intake::built_in_storage(settings.storage_list);
    Days days;
    for (const auto& text : texts) {
        read_one(text, table, settings.kitchen, days);
    }
    if (ids == Ids::Final && !has_errors(days.diagnostics)) {
        refuse_shared_ids(days);
    }
    return days;
}

Days plan_days(const DayTexts& texts, const Settings& settings, Ids ids) {
    auto days = plan_days(texts.texts, settings, ids);
    days.diagnostics.insert(days.diagnostics.begin(), texts.unreadable.begin(),
                            texts.unreadable.end());
    return days;
}

std::vector<kitchen::PlannedPackage> packages_of(const Days& days, int of_each) {
    std::vector<kitchen::PlannedPackage> packages;
    for (const auto& plan : days.plans) {
        packages.insert(packages.end(), plan.packages.begin(), plan.packages.end());
    }
    for (auto& planned : packages) {
        std::erase_if(planned.bags,
                      [of_each](const kitchen::Bag& bag) { return bag.number > of_each; });
    }
    return packages;
}

std::set<std::string> bag_ids(const Days& days) {
    std::set<std::string> ids;
    for (const auto& planned : packages_of(days)) {
        for (const auto& bag : planned.bags) {
            ids.insert(bag.id);
        }
    }
    return ids;
}

} // namespace thawslip::service
