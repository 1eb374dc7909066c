#include "kitchen/cooking/safe_minimum.h"

#include "base/list.h"
#include "kitchen/cooking/safe_minimum_rows.h"
#include "kitchen/foods/dish_words.h"
#include "kitchen/foods/meat_words.h"
#include "kitchen/measures/temperature.h"
#include "kitchen/texts/text.h"

#include <algorithm>
#include <array>
#include <tuple>

namespace thawslip::kitchen {
namespace {

using std::chrono::minutes;
using std::chrono::seconds;

constexpr std::array minimum_lists{MinimumList::Us, MinimumList::Canada, MinimumList::Uk};

/// Classes that a publisher has a row of its own for.
struct OwnRow {
    std::string_view food;
    Matter matter;
};
constexpr auto own_rows = std::to_array<OwnRow>({
    {"raw whole poultry", Matter::WholePoultry},
    {"raw game", Matter::Game},
    {"raw fresh ham", Matter::Pork},
    {"raw cured ham", Matter::Pork},
    {"cooked ham", Matter::CookedHam},
    {"bacon", Matter::Bacon},
    {"egg casserole", Matter::CookedDish}, // FoodSafety.gov: casseroles, meat and meatless
});

std::optional<Matter> matter_of_kind(FoodKind kind) {
    switch (kind) {
    case FoodKind::CookedDish: return Matter::CookedDish;
    case FoodKind::InfantFood:
    case FoodKind::Leftover: return Matter::Leftover;
    case FoodKind::ReadyToEat: return Matter::ReadyToEat;
    case FoodKind::EggDish: return Matter::EggDish;
    case FoodKind::RawEgg: return Matter::RawEgg;
    case FoodKind::RawGround: return Matter::RawGround;
    case FoodKind::RawPoultry: return Matter::RawPoultry;
    case FoodKind::RawCut: return Matter::RawCut;
    case FoodKind::RawFish: return Matter::RawFish;
    case FoodKind::RawShellfish: return Matter::RawShellfish;
    case FoodKind::Vegetable: return Matter::Vegetable;
    case FoodKind::Other: break;
    }
    return std::nullopt;
}

bool may_hide_meat(Matter matter) {
    using enum Matter;
    return is_one_of(matter, {RawGround, RawCut, EggDish, Bacon});
}

/// What has its own minimum where it is stuffed, or the stuffing; poultry's is as high.
bool may_be_stuffed(Matter matter) {
    using enum Matter;
    return is_one_of(matter, {RawGround, RawCut, Pork, BeefOrLamb, Game, RawFish, RawShellfish});
}

/// Poultry in a sausage or a quiche counts as poultry, venison in a mince as game.
Matter as_named(Matter matter, const MeatsNamed& named) {
    if (may_hide_meat(matter) && named.poultry) {
        return Matter::RawPoultry;
    }
    if ((matter == Matter::RawGround || matter == Matter::RawCut) && named.game) {
        return Matter::Game;
    }
    if (matter == Matter::RawCut && named.beef_or_lamb && !named.pork) {
        return Matter::BeefOrLamb;
    }
    return matter;
}

/// Classes that keep as mince does but are none: the publishers' row for mince only stands in.
constexpr std::string_view like_ground[] = {"raw stew meat", "raw offal"};

SafeMinimum as_mapped(SafeMinimum minimum, Matter matter, std::string_view food) {
    const bool stands_in =
        matter == Matter::RawGround && std::ranges::any_of(like_ground, [&](std::string_view each) {
            return same_but_for_case(each, food);
        });
    if (stands_in) {
        minimum.status = "mapping ours";
    }
    return minimum;
}

bool is_stricter(const SafeMinimum& a, const SafeMinimum& b) {
    return std::tie(a.celsius, a.time_counts, a.rest) > std::tie(b.celsius, b.time_counts, b.rest);
}

/// The row of the publisher that is asked, else the strictest of the others'.
std::optional<SafeMinimum> minimum_for(Matter matter, MinimumList asked) {
    if (const auto own = published_minimum(matter, asked)) {
        return own;
    }
    std::optional<SafeMinimum> strictest;
    for (const auto list : minimum_lists) {
        const auto row = published_minimum(matter, list);
        if (row && (!strictest || is_stricter(*row, *strictest))) {
            strictest = row;
        }
    }
    return strictest;
}

bool is_raw(Matter matter) {
    return matter >= Matter::RawEgg && matter <= Matter::Bacon;
}

/// The Food Code asks 165 °F of all raw animal food in the microwave, which heats unevenly.
SafeMinimum in_vessel(const SafeMinimum& minimum, const Package& package) {
    constexpr SafeMinimum microwave{
        Matter::RawGround,
        MinimumList::Us,
        74,
        165,
        minutes{0},
        false,
        "Raw animal food in the microwave, in all parts",
        "FDA Food Code 3-401.12, Microwave Cooking, as WAC 246-215-03405",
        "read"};
    const bool applies = package.cook && package.cook->vessel == Vessel::Microwave &&
                         is_raw(minimum.matter) && microwave.celsius > minimum.celsius;
    return applies ? microwave : minimum;
}

std::vector<SafeMinimum> beside(const SafeMinimum& counted, Matter matter) {
    std::vector<SafeMinimum> others;
    for (const auto list : minimum_lists) {
        const auto row = published_minimum(matter, list);
        if (row && (row->list != counted.list || row->source != counted.source)) {
            others.push_back(*row);
        }
    }
    return others;
}

struct Hold {
    double celsius;
    seconds time;
};
/// UK Food Standards Agency, Cooking your food (read in a copy). Its page also prints 60 °C for
/// 45 minutes; no home appliance is trusted with that here.
constexpr auto hold_times =
    std::to_array<Hold>({{80, seconds{6}}, {75, seconds{30}}, {70, minutes{2}}, {65, minutes{10}}});

} // namespace

MinimumList minimum_list(std::string_view rule_set) {
    if (rule_set == "canada" || rule_set == "newfoundland") {
        return MinimumList::Canada;
    }
    return rule_set == "uk" ? MinimumList::Uk : MinimumList::Us;
}

std::optional<SafeMinimum> published_minimum(Matter matter, MinimumList list) {
    const auto rows = minimum_rows();
    const auto found = std::ranges::find_if(
        rows, [&](const SafeMinimum& row) { return row.matter == matter && row.list == list; });
    return found == rows.end() ? std::nullopt : std::optional{*found};
}

std::optional<Matter> matter_of(const StorageTable& table, std::string_view food,
                                const Package& package) {
    const auto own = std::ranges::find_if(
        own_rows, [&](const OwnRow& row) { return same_but_for_case(row.food, food); });
    const auto matter =
        own == own_rows.end() ? matter_of_kind(kind_of(table, food)) : std::optional{own->matter};
    const auto named =
        matter && may_hide_meat(*matter) ? as_named(*matter, meats_in(package)) : matter;
    return named && may_be_stuffed(*named) && filled_in(package) ? Matter::Stuffed : named;
}

std::optional<CountedMinimum> counted_minimum(const StorageTable& table, const Package& package) {
    std::optional<SafeMinimum> highest;
    std::optional<Matter> of;
    for (const auto& food : package.food) {
        const auto matter = matter_of(table, food, package);
        const auto one = matter ? minimum_for(*matter, minimum_list(table.rule_set)) : std::nullopt;
        if (!one) {
            continue;
        }
        const auto here = in_vessel(as_mapped(*one, *matter, food), package);
        if (!highest || is_stricter(here, *highest)) {
            highest = here;
            of = matter;
        }
    }
    return highest ? std::optional{CountedMinimum{*highest, beside(*highest, *of)}} : std::nullopt;
}

std::optional<SafeMinimum> safe_minimum(const StorageTable& table, const Package& package) {
    const auto counted = counted_minimum(table, package);
    return counted ? std::optional{counted->counts} : std::nullopt;
}

bool reaches(double target_celsius, const SafeMinimum& minimum, std::optional<seconds> held) {
    constexpr double as_printed = 0.05; // agencies also print 165 °F as 73.9 °C, 145 °F as 62.8 °C
    const double exact = to_celsius(minimum.fahrenheit);
    const double least = std::min(exact - as_printed, static_cast<double>(minimum.celsius));
    if (!minimum.time_counts) {
        return target_celsius >= least;
    }
    const auto needed = needed_hold(target_celsius);
    // Without a time of the cook's own the print says how long; that is only for the usual 70 °C.
    return needed && (held ? *held >= *needed : target_celsius >= minimum.celsius);
}

std::optional<seconds> needed_hold(double celsius) {
    const auto found =
        std::ranges::find_if(hold_times, [&](const Hold& hold) { return celsius >= hold.celsius; });
    return found == hold_times.end() ? std::nullopt : std::optional{found->time};
}

} // namespace thawslip::kitchen
