#include "kitchen/thaw_pairing.h"

#include "kitchen/number_text.h"
#include "kitchen/phrases.h"
#include "kitchen/temperature.h"
#include "kitchen/text.h"

#include <algorithm>
#include <array>
#include <optional>

namespace thawslip::kitchen {
namespace {

using enum Passage;

constexpr std::string_view slow_cookers =
    "USDA FSIS, Slow Cookers and Food Safety (read in a copy)";
constexpr std::string_view big_thaw =
    "USDA FSIS, The Big Thaw: Safe Defrosting Methods, 2013 (read in a copy)";
constexpr std::string_view microwave =
    "USDA FSIS, The Big Thaw: Safe Defrosting Methods, 2013 (read in a copy); FDA Food Code "
    "3-501.13(C): from the microwave straight to conventional cooking, without interruption";
constexpr std::string_view low_heat =
    "USDA: cook meat and poultry at 325 °F at least (read); FDA Food Code 3-501.13";
constexpr std::string_view practice = "common practice, no source";

constexpr auto water = ThawMethod::ColdWater;
constexpr auto waves = ThawMethod::Microwave;
constexpr auto fridge = ThawMethod::Refrigerator;
constexpr auto frozen = ThawMethod::FromFrozen;

constexpr Pairing table[] = {
    {fridge, Heat::SlowCooker, KeptCold, slow_cookers},
    {fridge, Heat::Low, KeptCold, slow_cookers},
    {fridge, Heat::Oven, Free, big_thaw},
    {fridge, Heat::Pan, Free, big_thaw},
    {fridge, Heat::Pot, Free, big_thaw},
    {fridge, Heat::Microwave, Free, big_thaw},
    {fridge, Heat::PressureCooker, Free, big_thaw},
    {fridge, Heat::Grill, Free, big_thaw},
    {fridge, Heat::Steamer, Free, big_thaw},
    {fridge, Heat::Other, Free, big_thaw},
    {fridge, Heat::Nowhere, Free, big_thaw},

    {water, Heat::SlowCooker, AtOnceHigh, slow_cookers},
    {water, Heat::Low, AtOnceHot, low_heat},
    {water, Heat::Oven, AtOnce, big_thaw},
    {water, Heat::Pan, AtOnce, big_thaw},
    {water, Heat::Pot, AtOnce, big_thaw},
    {water, Heat::Microwave, AtOnce, big_thaw},
    {water, Heat::PressureCooker, AtOnce, big_thaw},
    {water, Heat::Grill, AtOnce, big_thaw},
    {water, Heat::Steamer, AtOnce, big_thaw},
    {water, Heat::Other, AtOnce, big_thaw},
    {water, Heat::Nowhere, AtOnce, big_thaw},

    {waves, Heat::SlowCooker, Refused, microwave},
    {waves, Heat::Low, Refused, microwave},
    {waves, Heat::Oven, AtOnce, microwave},
    {waves, Heat::Pan, AtOnce, microwave},
    {waves, Heat::Pot, AtOnce, microwave},
    {waves, Heat::Microwave, AtOnce, microwave},
    {waves, Heat::PressureCooker, AtOnce, microwave},
    {waves, Heat::Grill, AtOnce, microwave},
    {waves, Heat::Steamer, AtOnce, microwave},
    {waves, Heat::Other, AtOnce, microwave},
    {waves, Heat::Nowhere, AtOnce, microwave},

    {frozen, Heat::SlowCooker, Refused, slow_cookers},
    {frozen, Heat::Low, Refused, low_heat},
    {frozen, Heat::Oven, Free, big_thaw},
    {frozen, Heat::Pan, Free, big_thaw},
    {frozen, Heat::Pot, Free, big_thaw},
    {frozen, Heat::Microwave, Free, "USDA FSIS, Leftovers and Food Safety (read in a copy)"},
    {frozen, Heat::PressureCooker, FrozenByBook, practice},
    {frozen, Heat::Grill, FrozenUneven, practice},
    {frozen, Heat::Steamer, Free, practice},
    {frozen, Heat::Other, Free, big_thaw},
    {frozen, Heat::Nowhere, Free, big_thaw},
};

constexpr auto heats = static_cast<std::size_t>(last_heat) + 1;

constexpr std::size_t place_of(ThawMethod method, Heat heat) {
    return static_cast<std::size_t>(method) * heats + static_cast<std::size_t>(heat);
}

constexpr bool is_complete() {
    std::size_t place = 0;
    for (const auto& row : table) {
        if (place_of(row.method, row.heat) != place++) {
            return false;
        }
    }
    return place == 4 * heats;
}
static_assert(is_complete(), "one row for every pair, in the order of the enums");

/// Words of a setting or a vessel that mean gentle heat, whatever gives it: English, Spanish,
/// German. Common practice, no source.
bool says_low_heat(const Cook& cook) {
    static const PhraseBook book{{"sous vide",        "water bath",       "immersion circulator",
                                  "low temperature",  "keep warm",        "warming drawer",
                                  "slow cook",        "slow cooking",     "yogurt",
                                  "baja temperatura", "bano de agua",     "mantener caliente",
                                  "coccion lenta",    "niedertemperatur", "niedergaren",
                                  "wasserbad",        "warmhalten",       "warmhaltestufe",
                                  "schongaren",       "langsam garen"}};
    return !book.find(words_of(cook.in)).empty() || !book.find(words_of(cook.setting)).empty();
}

bool is_only_warm(const Cook& cook) {
    constexpr std::array<std::string_view, 5> words{"warm", "keep", "warming", "caliente",
                                                    "templado"};
    const auto said = words_of(cook.setting);
    return !said.empty() && std::ranges::all_of(said, [&](const std::string& word) {
        return std::ranges::find(words, word) != words.end();
    });
}

/// The first temperature in a setting: of "160 °C, lid on", 160 °C.
std::optional<double> celsius_in(std::string_view setting) {
    for (auto end = setting.size(); end != std::string_view::npos && end > 0;
         end = setting.find_last_of(", ;(", end - 1)) {
        if (const auto temperature = parse_temperature(setting.substr(0, end))) {
            return temperature.value().celsius;
        }
    }
    return std::nullopt;
}

/// The number after "gas mark"; marks below 3 are below 160 °C (common practice, no source).
std::optional<double> gas_mark_in(std::string_view setting) {
    const auto small = lower(setting);
    const auto at = small.find("mark");
    if (at == std::string::npos || small.find("gas") == std::string::npos) {
        return std::nullopt;
    }
    const auto number = read_amount(small, skip_spaces(small, at + 4));
    return number ? std::optional{static_cast<double>(number.value().amount.numerator) /
                                  static_cast<double>(number.value().amount.denominator)}
                  : std::nullopt;
}

/// USDA asks 325 °F of the oven at least, which dials in Celsius mark as 160.
bool is_low_oven(const Cook& cook) {
    constexpr double least_celsius = 160.0;
    constexpr double least_mark = 3.0;
    const auto celsius = celsius_in(cook.setting);
    const auto mark = gas_mark_in(cook.setting);
    return (celsius && *celsius < least_celsius) || (mark && *mark < least_mark);
}

bool has_a_dial(Heat heat) {
    return heat == Heat::Oven || heat == Heat::Grill || heat == Heat::Other;
}

Heat heat_of_vessel(Vessel vessel) {
    switch (vessel) {
    case Vessel::SlowCooker:
    case Vessel::Warmer: return Heat::SlowCooker;
    case Vessel::Oven: return Heat::Oven;
    case Vessel::Pan: return Heat::Pan;
    case Vessel::Pot: return Heat::Pot;
    case Vessel::Microwave: return Heat::Microwave;
    case Vessel::PressureCooker: return Heat::PressureCooker;
    case Vessel::Grill: return Heat::Grill;
    case Vessel::Steamer: return Heat::Steamer;
    case Vessel::Other: break;
    }
    return Heat::Other;
}

} // namespace

Heat heat_of(const Package& package) {
    if (!package.cook) {
        return Heat::Nowhere;
    }
    const auto& cook = *package.cook;
    const auto heat = heat_of_vessel(cook.vessel);
    if (heat == Heat::SlowCooker) {
        return heat;
    }
    const bool low =
        says_low_heat(cook) || is_only_warm(cook) || (has_a_dial(heat) && is_low_oven(cook));
    return low ? Heat::Low : heat;
}

const Pairing& pairing(ThawMethod method, Heat heat) {
    return table[place_of(method, heat)];
}

} // namespace thawslip::kitchen
