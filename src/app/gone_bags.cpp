#include "app/gone_bags.h"

#include "app/archive_place.h"
#include "app/wanted_prints.h"

#include <algorithm>
#include <fmt/format.h>
#include <ostream>
#include <set>

namespace thawslip::app {
namespace {

std::set<std::string> ids_of(const Job& job, const Days& days) {
    std::set<std::string> ids;
    for (const auto& print : job.prints) {
        ids.insert(days.plans[print.day].packages[print.package].bags[print.bag].id);
    }
    return ids;
}

} // namespace

bool is_gone(const archive::Bag& bag) {
    return bag.state == archive::State::Eaten || bag.state == archive::State::Thrown;
}

void tell_gone(const std::vector<archive::Bag>& bags, Console console) {
    for (const auto& bag : bags) {
        if (is_gone(bag)) {
            console.err << fmt::format(
                "caution: bag {} of \"{}\" is noted as {} since {}, and its label is printed "
                "again: put it on no other bag; if the bag is there: thawslip freezer back {}\n",
                bag.id, bag.dish, word_of(bag.state), bag.changed.substr(0, 10), bag.id);
        }
    }
}

void tell_gone(const Job& job, const Days& days, const Settings& settings, Console console) {
    if (archive_file_if_known(settings).empty()) {
        return;
    }
    auto archive = existing_archive(settings, archive::Mode::Read);
    if (!archive) {
        return;
    }
    const auto printed = ids_of(job, days);
    auto bags = archive->bags(archive::Which::All);
    std::erase_if(bags, [&](const archive::Bag& bag) { return !printed.contains(bag.id); });
    tell_gone(bags, console);
}

std::string printed_since_gone(archive::Archive& archive, const archive::Bag& bag) {
    if (!is_gone(bag)) {
        return {};
    }
    std::string last;
    for (const auto& print : archive.prints_of(bag.day)) {
        if (is_labels(print) && print.last_at > bag.changed) {
            last = std::max(last, print.last_at.substr(0, 10));
        }
    }
    return last;
}

} // namespace thawslip::app
