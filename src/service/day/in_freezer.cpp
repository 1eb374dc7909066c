#include "service/day/in_freezer.h"

#include "kitchen/texts/inflection.h"
#include "kitchen/texts/text.h"
#include "wording/room.h"

#include <algorithm>
#include <fmt/format.h>
#include <map>

namespace thawslip::service {
namespace {

/// A dish's name as far as two are told apart by it: "Lentil stews" is "lentil stew".
std::string dish_key(const std::string& dish) {
    std::string key;
    for (const auto& word : kitchen::words_of(dish)) {
        key += kitchen::singular(word) + " ";
    }
    return key;
}

/// A frozen bag, by what plans ask of it.
struct FrozenBag {
    std::string dish; ///< its key
    std::string kitchen;
    double litres = 0.0; ///< 0: not weighed
};

/// All that is frozen but the days' own bags, whose labels may have been printed before.
std::vector<FrozenBag> others_frozen(const Days& days, archive::Archive& archive) {
    const auto own = bag_ids(days);
    std::map<archive::DayKey, std::string> kitchens;
    std::vector<FrozenBag> frozen;
    for (const auto& bag : archive.bags(archive::Which::InFreezer)) {
        if (bag.state != archive::State::Frozen || own.contains(bag.id)) {
            continue;
        }
        auto kitchen = kitchens.find(bag.day);
        if (kitchen == kitchens.end()) {
            kitchen = kitchens.emplace(bag.day, archive.day(bag.day).kitchen).first;
        }
        frozen.push_back(
            {dish_key(bag.dish), kitchen->second,
             bag.weight ? kitchen::frozen_litres(*bag.weight, kitchen::Wetness::Either) : 0.0});
    }
    return frozen;
}

bool may_be_one_freezer(const std::string& a, const std::string& b) {
    return a.empty() || b.empty() || dish_key(a) == dish_key(b);
}

void note(kitchen::Plan& plan, const std::vector<FrozenBag>& frozen) {
    kitchen::FreezerHolds holds;
    std::map<std::string, int> bags;
    for (const auto& bag : frozen) {
        if (may_be_one_freezer(bag.kitchen, plan.kitchen)) {
            ++holds.bags;
            holds.litres += bag.litres;
            holds.unweighed += bag.litres == 0.0 ? 1 : 0;
            ++bags[bag.dish];
        }
    }
    plan.holds = holds;
    for (auto& planned : plan.packages) {
        const auto found = bags.find(dish_key(planned.package.dish));
        planned.in_freezer = found == bags.end() ? 0 : found->second;
    }
}

} // namespace

void note_in_freezer(Days& days, archive::Archive& archive) {
    const auto frozen = others_frozen(days, archive);
    for (auto& plan : days.plans) {
        note(plan, frozen);
    }
}

std::vector<std::string> room_troubles(const kitchen::Plan& plan, const wording::Style& style) {
    const double held = plan.holds ? plan.holds->litres : 0.0;
    const bool is_over =
        plan.freezer_litres &&
        kitchen::fill_of(*plan.freezer_litres, plan.room.litres, held) == kitchen::Fill::Over;
    if (!is_over) {
        return {};
    }
    return {fmt::format(
        "the day's bags take {}{}, and it holds {} in all: make room first, or pack "
        "less",
        wording::say_litres(plan.room.litres, style),
        held > 0.0 ? fmt::format(" beside {} that are in it", wording::say_litres(held, style))
                   : "",
        wording::say_litres(*plan.freezer_litres, style))};
}

} // namespace thawslip::service
