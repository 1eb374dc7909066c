#include "service/archive/past_prints.h"

#include "base/list.h"
#include "service/print/printed_bags.h"

#include <algorithm>
#include <set>

namespace thawslip::service {
namespace {

/// The bags of a description; of one that was edited since, those of what became of it.
std::vector<archive::Bag> bags_described(archive::Archive& archive, const archive::StoredDay& day) {
    auto bags = archive.bags_of(day.key);
    return bags.empty() ? archive.bags_of(archive.revisions(day.lineage).back().key) : bags;
}

void add_day(PastPrint& past, archive::Archive& archive, archive::DayKey key,
             const std::optional<std::set<std::string>>& part) {
    const auto day = archive.day(key);
    past.days.push_back(day.made);
    for (const auto& bag : bags_described(archive, day)) {
        if (part && !part->contains(bag.id)) {
            continue;
        }
        past.bags.push_back(bag.id);
        add_once(past.dishes, bag.dish);
    }
}

PastPrint past_print(archive::Archive& archive, const archive::StoredPrint& print) {
    PastPrint past{print.last_at,
                   print.first_at,
                   print.times,
                   print.setup.what,
                   print.setup.stock,
                   {},
                   {},
                   {}};
    const auto part = part_of(print);
    for (const auto key : print.days) {
        add_day(past, archive, key, part);
    }
    return past;
}

} // namespace

std::vector<PastPrint> past_prints(archive::Archive& archive) {
    const auto dates = mapped<std::set<kitchen::Date>>(
        archive.days_printed(), [](const auto& printed) { return printed.first; });
    std::vector<PastPrint> prints;
    for (const auto date : dates) {
        for (const auto& print : archive.prints_on(date)) {
            if (print.last_at.starts_with(kitchen::to_iso(date))) { // else it comes again later
                prints.push_back(past_print(archive, print));
            }
        }
    }
    std::ranges::stable_sort(prints, std::ranges::greater{}, &PastPrint::at);
    return prints;
}

} // namespace thawslip::service
