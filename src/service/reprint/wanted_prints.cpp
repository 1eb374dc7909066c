#include "service/reprint/wanted_prints.h"

#include "service/freezer/bags.h"
#include "service/freezer/gone_bags.h"

#include <algorithm>
#include <fmt/format.h>
#include <map>

namespace thawslip::service {
namespace {

bool is_kind(const archive::StoredPrint& print, ReprintKind kind) {
    return is_labels(print) == (kind == ReprintKind::Labels);
}

/// The newest print of a day of the kind wanted; of the other kind, on the usual stock, where
/// that was never printed.
archive::StoredPrint print_for(archive::Archive& archive, archive::DayKey day, ReprintKind kind) {
    auto prints = archive.prints_of(day);
    const auto found = std::ranges::find_if(
        prints, [kind](const archive::StoredPrint& print) { return is_kind(print, kind); });
    if (found != prints.end()) {
        return *found;
    }
    // A day that came from another archive may come without its prints.
    auto print = prints.empty() ? archive::StoredPrint{} : prints.front();
    print.setup.what = kind == ReprintKind::Labels ? "labels" : "cards";
    print.setup.stock.clear();
    print.setup.layout.clear();
    print.setup.look.clear();
    print.setup.files.clear();
    return print;
}

std::vector<WantedPrint> prints_with(archive::Archive& archive,
                                     const std::vector<archive::Bag>& bags, ReprintKind kind) {
    std::vector<WantedPrint> prints;
    std::map<archive::DayKey, std::size_t> by_day;
    for (const auto& bag : bags) {
        const auto [known, is_new] = by_day.emplace(bag.day, prints.size());
        if (is_new) {
            prints.push_back({print_for(archive, bag.day, kind), {}});
            // Of a print of many days this one is enough, and all that a bag's label needs.
            prints.back().print.days = {bag.day};
        }
        prints[known->second].bags.insert(bag.id);
    }
    return prints;
}

std::vector<WantedPrint> prints_on(archive::Archive& archive, kitchen::Date date,
                                   ReprintKind kind) {
    std::vector<WantedPrint> prints;
    for (auto& print : archive.prints_on(date)) {
        if (is_kind(print, kind)) {
            prints.push_back({std::move(print), {}, true});
        }
    }
    return prints;
}

} // namespace

Outcome<std::vector<WantedPrint>> find_prints(archive::Archive& archive,
                                              const ReprintQuestion& question) {
    Outcome<std::vector<WantedPrint>> outcome;
    if (question.printed.empty()) {
        const auto bags = bags_meant(archive, question.bags);
        outcome.messages = bags.messages;
        if (bags) {
            outcome.value = prints_with(archive, *bags.value, question.kind);
        }
        return outcome;
    }
    const auto date = kitchen::parse_iso(question.printed);
    if (!date) {
        outcome.messages.error(
            fmt::format("\"{}\" is no date; expected one like 2026-10-17", question.printed));
        return outcome;
    }
    auto prints = prints_on(archive, *date, question.kind);
    if (prints.empty()) {
        outcome.messages.error(
            fmt::format("nothing of that kind was printed on {}", question.printed));
    } else {
        outcome.value = std::move(prints);
    }
    return outcome;
}

} // namespace thawslip::service
