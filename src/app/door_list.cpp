#include "app/door_list.h"

#include "app/data_folder.h"
#include "base/shown.h"
#include "base/utf8.h"
#include "kitchen/figures.h"
#include "typeset/paragraph.h"

#include <fmt/format.h>
#include <ostream>
#include <set>

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
            row.thaw_lead = allowed_thaw(planned);
            row.raw = planned.raw;
            for (const auto& bag : planned.bags) {
                row.bags.push_back(bag.id);
            }
            rows.push_back(std::move(row));
        }
    }
    return rows;
}

namespace {

/// Replaces every `character` of `text` by a question mark. \returns whether there was one
bool replace(std::string& text, char32_t character) {
    std::string wanted;
    append_utf8(wanted, character);
    bool found = false;
    for (auto at = text.find(wanted); at != std::string::npos; at = text.find(wanted, at)) {
        text.replace(at, wanted.size(), "?");
        found = true;
    }
    return found;
}

} // namespace

void make_settable(std::vector<wording::DoorRow>& rows, Console console) {
    if (rows.empty()) {
        return;
    }
    const auto fonts = load_fonts(find_data_folder());
    std::set<std::string> told;
    for (auto& row : rows) {
        const auto dish = row.dish;
        row.dish = shown(dish);
        for (auto set = typeset::prepare({{row.dish, {}}}, fonts); !set;
             set = typeset::prepare({{row.dish, {}}}, fonts)) {
            if (!replace(row.dish, set.fault().character)) {
                row.dish = "?";
            }
        }
        if (row.dish != dish && told.insert(dish).second) {
            console.err << fmt::format(
                "caution: the name \"{}\" holds what no face has, and stands "
                "on the list as \"{}\"\n",
                dish, row.dish);
        }
    }
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
