#include "app/door_list.h"

#include <ostream>

namespace thawslip::app {

std::vector<wording::DoorRow> door_rows(const Days& days) {
    std::vector<wording::DoorRow> rows;
    for (const auto& plan : days.plans) {
        for (const auto& planned : plan.packages) {
            const auto& package = planned.package;
            wording::DoorRow row{planned.keep_until.date,
                                 planned.keep_until.basis,
                                 package.dish,
                                 package.servings,
                                 {},
                                 {}};
            row.thaw = package.thaw.method;
            row.thaw_lead = known_lead(planned.thaw_lead);
            for (const auto& bag : planned.bags) {
                row.bags.push_back(bag.id);
            }
            rows.push_back(std::move(row));
        }
    }
    return rows;
}

Job door_list_job(std::span<const wording::DoorRow> rows, const Settings& settings) {
    Job job;
    job.title = "Freezer door list";
    job.noun = "list";
    job.language = settings.language;
    job.default_stock = list_stock(settings);
    add_list(job, 0, wording::door_list(rows, style_of(settings)));
    return job;
}

ExitStatus print_door_list(std::span<const wording::DoorRow> rows, const PrintOptions& options,
                           const Settings& settings, Console console) {
    if (rows.empty()) {
        console.out << "nothing to print: there is no bag\n";
        return ExitStatus::Done;
    }
    return run_job(door_list_job(rows, settings), {}, options, settings, console);
}

void add_list(Job& job, std::size_t day, wording::Print list) {
    const auto place = static_cast<std::uint32_t>(job.lists.size());
    job.prints.push_back({list.kind, static_cast<std::uint32_t>(day), place, 0});
    job.lists.push_back(std::move(list));
}

std::string list_stock(const Settings& settings) {
    return settings.paper == "a4" ? "a4-full" : "letter-full";
}

} // namespace thawslip::app
