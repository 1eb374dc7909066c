#include "app/gone_bags.h"

#include "app/archive_place.h"
#include "service/freezer/gone_bags.h"

#include <algorithm>
#include <ostream>
#include <set>

namespace thawslip::app {
namespace {

std::set<std::string> ids_of(const service::Job& job, const Days& days) {
    std::set<std::string> ids;
    for (const auto& print : job.prints) {
        if (!is_chosen(print, job, days)) {
            continue;
        }
        ids.insert(days.plans[print.day].packages[print.package].bags[print.bag].id);
    }
    return ids;
}

} // namespace

void report_gone(const service::Job& job, const Days& days, const Settings& settings,
                 Console console) {
    if (archive_file_if_known(settings).empty()) {
        return;
    }
    auto archive = existing_archive(settings, archive::Mode::Read);
    if (!archive) {
        return;
    }
    const auto printed = ids_of(job, days);
    auto bags = archive->bags(archive::Which::All);
    std::erase_if(bags, [&](const archive::Bag& bag) {
        return !printed.contains(bag.id) || service::is_unprinted(*archive, bag);
    });
    console.err << to_text(service::cautions_of_gone(bags));
}

} // namespace thawslip::app
