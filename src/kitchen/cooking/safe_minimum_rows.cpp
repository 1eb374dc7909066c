#include "kitchen/cooking/safe_minimum_rows.h"

// Safe minimum temperatures, one row for what a publisher's table has a row for:
//   read             the publisher's own page, or the text of the rule, was opened
//   read in a copy   a page that reproduces or quotes the publisher was opened
//   mapping ours     the publisher has no row for this; the nearest, never a laxer one, stands in

namespace thawslip::kitchen {
namespace {

using enum Matter;
using enum MinimumList;
using std::chrono::minutes;

constexpr std::string_view read = "read";
constexpr std::string_view copy = "read in a copy";
constexpr std::string_view ours = "mapping ours";

constexpr std::string_view us_source =
    "FoodSafety.gov, Cook to a Safe Minimum Internal Temperature";
constexpr std::string_view food_code =
    "FDA Food Code 3-401.11, Raw Animal Foods, as Minnesota Rules 4626.0340";
constexpr std::string_view canada_source =
    "Health Canada, Safe internal cooking temperatures, 2012 and later";
constexpr std::string_view uk_source = "UK Food Standards Agency, Cooking your food";

constexpr SafeMinimum us_row(Matter matter, int celsius, int fahrenheit, std::string_view row,
                             std::string_view status = read, int rest = 0) {
    return {matter, Us, celsius, fahrenheit, minutes{rest}, false, row, us_source, status};
}

constexpr SafeMinimum canada_row(Matter matter, int celsius, int fahrenheit, std::string_view row,
                                 std::string_view status = copy) {
    return {matter, Canada, celsius, fahrenheit, minutes{0}, false, row, canada_source, status};
}

/// One temperature and time for all that must be cooked through; see `needed_hold`.
constexpr SafeMinimum uk_row(Matter matter, std::string_view row, std::string_view status = copy) {
    return {matter, Uk, 70, 158, minutes{0}, true, row, uk_source, status};
}

constexpr std::string_view uk_food = "Standard advice: 70 °C for 2 minutes";
constexpr std::string_view uk_meat = "Pork, poultry and minced meat: cooked all the way through";

constexpr SafeMinimum rows[] = {
    us_row(CookedDish, 74, 165, "Casseroles"),
    canada_row(CookedDish, 74, 165, "Leftovers", ours),
    uk_row(CookedDish, uk_food),

    us_row(Leftover, 74, 165, "Leftovers"),
    canada_row(Leftover, 74, 165, "Leftovers"),
    uk_row(Leftover, uk_food),

    // Cooked by its maker, but packed again at home: it may have caught something since.
    us_row(ReadyToEat, 74, 165, "Leftovers", ours),
    canada_row(ReadyToEat, 74, 165, "Hot dogs"),
    uk_row(ReadyToEat, uk_food, ours),

    us_row(CookedHam, 74, 165, "Precooked ham, to reheat (60 °C, 140 °F from an inspected plant)"),
    canada_row(CookedHam, 74, 165, "Others: stuffing, leftovers", ours),
    uk_row(CookedHam, uk_food, ours),

    us_row(EggDish, 71, 160, "Egg dishes"),
    canada_row(EggDish, 74, 165, "Egg dishes"),
    uk_row(EggDish, uk_food),

    us_row(RawEgg, 71, 160, "Egg dishes", ours),
    canada_row(RawEgg, 74, 165, "Egg dishes", ours),
    uk_row(RawEgg, uk_food),

    us_row(RawGround, 71, 160, "Ground meat and sausage"),
    canada_row(RawGround, 71, 160, "Ground meat and meat mixtures"),
    uk_row(RawGround, uk_meat),

    us_row(RawPoultry, 74, 165, "All poultry, ground too"),
    canada_row(RawPoultry, 74, 165, "Poultry, pieces and ground"),
    uk_row(RawPoultry, uk_meat),

    us_row(WholePoultry, 74, 165, "All poultry"),
    canada_row(WholePoultry, 82, 180, "Poultry, whole"),
    uk_row(WholePoultry, uk_meat),

    us_row(RawCut, 63, 145, "Steaks, chops, roasts", read, 3),
    canada_row(RawCut, 71, 160, "Pork, pieces and whole cuts", ours),
    uk_row(RawCut, uk_meat, ours),

    us_row(Pork, 63, 145, "Pork: steaks, chops, roasts, ham", read, 3),
    canada_row(Pork, 71, 160, "Pork, pieces and whole cuts"),
    uk_row(Pork, uk_meat),

    // The UK agency prints no temperature for whole cuts of beef and lamb, which may be pink.
    us_row(BeefOrLamb, 63, 145, "Beef, veal, lamb: steaks, chops, roasts", read, 3),
    canada_row(BeefOrLamb, 63, 145, "Beef, veal and lamb, medium-rare"),

    {Game, Us, 71, 160, minutes{0}, false, "Ground meats and other cuts of game",
     "USDA FSIS, Game from Farm to Table, 2011", copy},
    canada_row(Game, 74, 165, "Game"),
    uk_row(Game, uk_food, ours),

    us_row(RawFish, 63, 145, "Fish with fins"),
    canada_row(RawFish, 70, 158, "Fish"),
    uk_row(RawFish, uk_food),

    // FoodSafety.gov judges them by the eye: see the caution "shellfish".
    {RawShellfish, Us, 63, 145, minutes{0}, false, "Fish and shellfish", food_code, read},
    canada_row(RawShellfish, 74, 165, "Shellfish"),
    uk_row(RawShellfish, uk_food),

    {Stuffed, Us, 74, 165, minutes{0}, false,
     "Stuffed fish, meat, pasta and poultry, and stuffing that holds them", food_code, read},
    canada_row(Stuffed, 74, 165, "Others: stuffing, leftovers"),
    uk_row(Stuffed, uk_food, ours),

    // Thin slices are judged by the eye: see the caution "bacon".
    us_row(Bacon, 63, 145, "Ham, raw", ours, 3),
    canada_row(Bacon, 71, 160, "Pork, pieces and whole cuts", ours),
    uk_row(Bacon, uk_meat, ours),

    // Listeria has come with frozen vegetables; only the UK agency's general advice fits them.
    uk_row(Vegetable, uk_food),
};

} // namespace

std::span<const SafeMinimum> minimum_rows() {
    return rows;
}

} // namespace thawslip::kitchen
