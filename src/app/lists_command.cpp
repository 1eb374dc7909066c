#include "app/archive_place.h"
#include "app/commands.h"
#include "app/day_files.h"
#include "app/door_list.h"
#include "app/report.h"
#include "app/report_cautions.h"
#include "app/settle.h"
#include "service/freezer/bags.h"
#include "wording/day_sheet.h"

namespace thawslip::app {
namespace {

/// The day sheet of each day and, where anything is to be bought, its shopping list.
void add_day_sheets(Job& job, const Days& days, const Settings& settings) {
    const auto style = style_of(settings);
    for (std::size_t day = 0; day < days.plans.size(); ++day) {
        add_list(job, day, wording::day_sheet(days.plans[day], style));
        auto shopping = wording::shopping_sheet(days.plans[day], style);
        if (!shopping.field("shopping")->paragraphs.empty()) {
            add_list(job, day, std::move(shopping));
        }
    }
}

} // namespace

Job list_job(const Days& days, ListKinds kinds, const Settings& settings) {
    Job job;
    job.title = "Day sheet";
    job.noun = "list";
    job.language = settings.language;
    job.default_stock = list_stock(settings);
    if (kinds != ListKinds::Door) {
        add_day_sheets(job, days, settings);
    }
    if (kinds != ListKinds::Day) {
        auto door = door_list_job(door_rows(days), settings);
        job.title = kinds == ListKinds::Door ? door.title : "Day sheet and door list";
        add_list(job, 0, std::move(door.lists.front()));
    }
    return job;
}

ExitStatus lists(const PrintOptions& options, ListKinds kinds, const Settings& settings,
                 Console console) {
    if (const auto refused = refuse_output(output_of(options), settings, console)) {
        return *refused; // before the archive is looked into
    }
    if (options.days.empty()) {
        auto archive = existing_archive(settings, archive::Mode::Read);
        auto rows = archive ? service::door_rows(*archive) : std::vector<wording::DoorRow>{};
        make_settable(rows, console);
        return print_door_list(rows, options, settings, console);
    }
    const auto planned = read_days(options.days, settings, Ids::Planned);
    const auto days = has_errors(planned.diagnostics)
                          ? std::optional{planned}
                          : settle(planned, options, settings, console, IdsFor::Lists);
    if (!days) {
        return ExitStatus::Refused;
    }
    print(console.err, days->diagnostics, days->documents);
    if (has_errors(days->diagnostics)) {
        return ExitStatus::Refused;
    }
    report_cautions(*days, settings, console.err);
    return run_job(list_job(*days, kinds, settings), *days, options, settings, console);
}

} // namespace thawslip::app
