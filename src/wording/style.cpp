#include "wording/style.h"

#include "base/list.h"
#include "kitchen/measures/temperature.h"
#include "kitchen/measures/temperature_text.h"
#include "kitchen/measures/unit_text.h"

#include <algorithm>
#include <vector>

namespace thawslip::wording {
namespace {

kitchen::UnitName name_of(const Language& language, std::string_view one,
                          std::string_view several) {
    return {language.say(one), language.say(several)};
}

/// The key of an allergen or its kind in the tables, where a space is a dash: "tree-nuts".
std::string table_key(std::string_view group, std::string_view name) {
    auto key = std::string{group} + std::string{name};
    std::ranges::replace(key, ' ', '-');
    return key;
}

/// A kind by its name in the language, which English needs no table for.
std::string say_kind(const std::string& kind, const Style& style) {
    const auto key = table_key("allergen-kind.", kind);
    return style.language.has(key) ? style.say(key) : kind;
}

/// A name, and behind it in brackets the kinds that have to be named.
struct SaidAllergen {
    std::string name;
    std::vector<std::string> kinds;
};

SaidAllergen named_as_said(const kitchen::NamedAllergen& named, const Style& style) {
    const auto [allergen, kind] = as_listed(named, *style.allergens);
    if (goes_by_kind(named, *style.allergens)) {
        return {say_kind(kind, style), {}};
    }
    SaidAllergen said{style.say(table_key("allergen.", key(allergen))), {}};
    if (!kind.empty()) {
        said.kinds.push_back(say_kind(kind, style));
    }
    return said;
}

std::string say_named(const SaidAllergen& said, const Style& style) {
    return said.kinds.empty()
               ? said.name
               : style.say("allergen.with-kind", {said.name, joined(said.kinds, ", ")});
}

/// Kinds of one name stand in one bracket. "Tree nuts" alone says more than its kinds do, and
/// stays.
void add_said(std::vector<SaidAllergen>& all, const SaidAllergen& more) {
    const auto same = std::ranges::find_if(all, [&](const SaidAllergen& one) {
        return one.name == more.name && one.kinds.empty() == more.kinds.empty();
    });
    if (same == all.end()) {
        all.push_back(more);
        return;
    }
    for (const auto& kind : more.kinds) {
        add_once(same->kinds, kind);
    }
}

} // namespace

Style style_for(const Language& language, const kitchen::KitchenSettings& settings) {
    kitchen::UnitStyle units{settings.units, settings.measures, language.say("decimal").front()};
    units.names = {{kitchen::Unit::Teaspoon, name_of(language, "unit.tsp", "unit.tsps")},
                   {kitchen::Unit::Tablespoon, name_of(language, "unit.tbsp", "unit.tbsps")},
                   {kitchen::Unit::Cup, name_of(language, "unit.cup", "unit.cups")}};
    return {language, std::move(units), settings.allergens};
}

std::string say_quantity(const kitchen::Quantity& quantity, const Style& style) {
    return kitchen::to_text(quantity, style.units);
}

std::string say_weight(kitchen::Mass weight, const Style& style) {
    return kitchen::to_text(weight, style.units);
}

std::string say_target(kitchen::Temperature target, const Style& style) {
    return kitchen::to_text(target, kitchen::TemperatureUse::SafeMinimum, style.units);
}

std::string say_setting(std::string_view setting, const Style& style) {
    for (auto end = setting.size(); end != std::string_view::npos && end > 0;
         end = setting.find_last_of(", ", end - 1)) {
        const auto rest = setting.substr(end);
        if (rest.find_first_of("0123456789") != std::string_view::npos) {
            break; // maybe a second temperature: both systems, or one after the other
        }
        if (const auto temperature = kitchen::parse_temperature(setting.substr(0, end))) {
            return kitchen::to_text(temperature.value(), kitchen::TemperatureUse::Oven,
                                    style.units) +
                   std::string{rest};
        }
    }
    return std::string{setting};
}

std::string say_allergen(const kitchen::NamedAllergen& named, const Style& style) {
    return say_named(named_as_said(named, style), style);
}

std::string say_contains(const std::vector<kitchen::DeclaredAllergen>& all, const Style& style) {
    std::vector<SaidAllergen> said;
    for (const auto& declared : all) {
        for (const auto& named : declared.meant) {
            add_said(said, named_as_said(named, style));
        }
        if (declared.meant.empty()) {
            add_said(said, {declared.as_written, {}});
        }
    }
    return joined(said, ", ", [&](const SaidAllergen& one) { return say_named(one, style); });
}

} // namespace thawslip::wording
