#include "intake/values.h"

#include "base/nearest.h"
#include "kitchen/temperature.h"
#include "kitchen/time_range.h"
#include "kitchen/when.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace thawslip::intake {
namespace {

using kitchen::Unit;

/// Longest of the texts that hold a value; what is longer was not meant as one.
constexpr std::size_t longest_value = 120;

/// A value's text as one line with its key, so that a fault can be placed inside it.
std::optional<toml::Text> value_text(toml::Table& table, const toml::Key& key) {
    const auto line = table.line(key, longest_value);
    return line ? std::optional{toml::Text{*line, table.path_of(key)}} : std::nullopt;
}

/// Reads a value by `parse`; a fault is placed at its offset, with the key's example as the hint.
template <class Parse>
auto read_by(toml::Table& table, const toml::Key& key, const Parse& parse)
    -> std::optional<std::decay_t<decltype(parse(std::string_view{}).value())>> {
    const auto text = value_text(table, key);
    if (!text) {
        return std::nullopt;
    }
    auto value = parse(std::string_view{text->value});
    if (value) {
        return std::move(value).value();
    }
    const auto& fault = value.fault();
    table.reader().error_inside(
        text->key, fault.offset,
        fmt::format("\"{}\" cannot be read as {}: {}", text->value, key.name, fault.message),
        {fmt::format("write, for example, {} = {}", key.name, key.example)});
    return std::nullopt;
}

std::optional<double> grams_in(Unit unit) {
    switch (unit) {
    case Unit::Milligram: return 0.001;
    case Unit::Gram: return 1.0;
    case Unit::Kilogram: return 1000.0;
    case Unit::Ounce: return 28.349523125; // exact: international pound, 1959
    case Unit::Pound: return 453.59237;
    case Unit::Count:
    case Unit::Millilitre:
    case Unit::Centilitre:
    case Unit::Decilitre:
    case Unit::Litre:
    case Unit::Teaspoon:
    case Unit::Tablespoon:
    case Unit::FluidOunce:
    case Unit::Cup:
    case Unit::Pint:
    case Unit::Quart:
    case Unit::Gallon: return std::nullopt;
    }
    return std::nullopt;
}

/// One exact amount in a unit, with nothing else: what a weight or a volume is.
bool is_plain_measure(const kitchen::Quantity& quantity) {
    return quantity.low && quantity.low == quantity.high && quantity.item.empty() &&
           quantity.qualifier.empty();
}

Result<kitchen::Mass, kitchen::TextFault> parse_mass(std::string_view text) {
    const auto quantity = kitchen::parse_quantity(text);
    if (!quantity) {
        return Failure{kitchen::TextFault{quantity.fault().offset, quantity.fault().message}};
    }
    const auto factor = grams_in(quantity.value().unit);
    if (!factor || !is_plain_measure(quantity.value())) {
        return Failure{kitchen::TextFault{0, "expected a number and g, kg, oz or lb"}};
    }
    return kitchen::Mass{quantity.value().low->value() * *factor};
}

Result<double, kitchen::TextFault> parse_litres(std::string_view text) {
    const auto quantity = kitchen::parse_quantity(text);
    const bool litres =
        quantity && is_plain_measure(quantity.value()) && quantity.value().unit == Unit::Litre;
    if (!litres) {
        return Failure{kitchen::TextFault{0, "expected a number of litres"}};
    }
    return quantity.value().low->value();
}

} // namespace

std::optional<kitchen::Quantity> read_quantity(toml::Table& table, const toml::Key& key) {
    auto quantity = read_by(table, key, kitchen::parse_quantity);
    if (quantity && quantity->item.empty()) {
        table.reader().error(
            table.path_of(key),
            fmt::format("\"{}\" says how much, but not of what", quantity->as_written),
            {fmt::format("write, for example, {} = {}", key.name, key.example)});
        return std::nullopt;
    }
    return quantity;
}

std::optional<kitchen::Mass> read_mass(toml::Table& table, const toml::Key& key,
                                       double most_grams) {
    const auto mass = read_by(table, key, parse_mass);
    if (mass && mass->grams > most_grams) {
        table.reader().error(table.path_of(key),
                             fmt::format("a bag of {:g} kg is too heavy: at most {:g} kg",
                                         mass->grams / 1000, most_grams / 1000));
        return std::nullopt;
    }
    return mass;
}

std::optional<double> read_litres(toml::Table& table, const toml::Key& key) {
    const auto litres = read_by(table, key, parse_litres);
    if (litres && (*litres < 5.0 || *litres > 5000.0)) {
        table.reader().error(
            table.path_of(key),
            fmt::format("a freezer of {:g} l cannot be: from 5 to 5000 l", *litres));
        return std::nullopt;
    }
    return litres;
}

std::optional<kitchen::TimeRange> read_time(toml::Table& table, const toml::Key& key) {
    return read_by(table, key, kitchen::parse_time_range);
}

std::optional<kitchen::Temperature> read_temperature(toml::Table& table, const toml::Key& key) {
    return read_by(table, key, kitchen::parse_temperature);
}

std::optional<kitchen::When> read_when(toml::Table& table, const toml::Key& key) {
    const auto text = value_text(table, key);
    if (!text) {
        return std::nullopt;
    }
    const auto when = kitchen::parse_when(text->value);
    if (when) {
        return when.value();
    }
    const auto forms = kitchen::when_forms();
    const auto near = nearest(text->value, forms);
    table.reader().error_inside(
        text->key, when.fault().offset,
        fmt::format("\"{}\" does not say when: {}", text->value, when.fault().message),
        {near ? fmt::format("did you mean \"{}\"?", *near) : "expected " + list_of(forms)});
    return std::nullopt;
}

kitchen::Vessel vessel_of(std::string_view words) {
    using kitchen::Vessel;
    struct Word {
        std::string_view word;
        Vessel vessel;
    };
    constexpr std::array<Word, 20> known = {{{"slow cooker", Vessel::SlowCooker},
                                             {"slow-cooker", Vessel::SlowCooker},
                                             {"pressure cooker", Vessel::PressureCooker},
                                             {"pressure-cooker", Vessel::PressureCooker},
                                             {"microwave", Vessel::Microwave},
                                             {"steamer", Vessel::Steamer},
                                             {"oven", Vessel::Oven},
                                             {"roasting tin", Vessel::Oven},
                                             {"grill", Vessel::Grill},
                                             {"broiler", Vessel::Grill},
                                             {"barbecue", Vessel::Grill},
                                             {"frying pan", Vessel::Pan},
                                             {"skillet", Vessel::Pan},
                                             {"saucepan", Vessel::Pot},
                                             {"stock pot", Vessel::Pot},
                                             {"casserole", Vessel::Pot},
                                             {"pan", Vessel::Pan},
                                             {"wok", Vessel::Pan},
                                             {"pot", Vessel::Pot},
                                             {"kettle", Vessel::Pot}}};
    std::string lower{words};
    std::ranges::transform(lower, lower.begin(), [](char c) {
        return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    });
    for (const auto& each : known) {
        if (lower.find(each.word) != std::string::npos) {
            return each.vessel;
        }
    }
    return Vessel::Other;
}

} // namespace thawslip::intake
