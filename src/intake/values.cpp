#include "intake/values.h"

#include "base/nearest.h"
#include "kitchen/temperature.h"
#include "kitchen/text.h"
#include "kitchen/time_range.h"
#include "kitchen/units.h"
#include "kitchen/when.h"
#include "toml/faults.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace thawslip::intake {
namespace {

using kitchen::Unit;

/// Longest of the texts that hold a value; what is longer was not meant as one.
constexpr std::size_t longest_value = 120;

/// A value's text as one line, and where in the file's string it begins, so that a fault can be
/// placed inside it.
struct ValueText {
    std::string line;
    KeyPath key;
    std::size_t begin = 0;
};

std::optional<ValueText> value_text(toml::Table& table, const toml::Key& key) {
    const auto text = table.string(key);
    if (!text) {
        return std::nullopt;
    }
    const auto line = toml::printable_line(table.reader(), *text, longest_value);
    return line ? std::optional{ValueText{*line, text->key, text->value.find(*line)}}
                : std::nullopt;
}

std::string example_hint(const toml::Key& key) {
    return fmt::format("write, for example, {} = {}", key.name, key.example);
}

/// Reads a value by `parse`; a fault is placed at its offset, with the key's example as the hint.
template <class Parse>
auto read_by(toml::Table& table, const toml::Key& key, const Parse& parse)
    -> std::optional<std::decay_t<decltype(parse(std::string_view{}).value())>> {
    const auto text = value_text(table, key);
    if (!text) {
        return std::nullopt;
    }
    auto value = parse(std::string_view{text->line});
    if (value) {
        return std::move(value).value();
    }
    const auto& fault = value.fault();
    table.reader().error_inside(text->key, text->begin + fault.offset,
                                fmt::format("{} cannot be read as {}: {}", toml::quoted(text->line),
                                            key.name, fault.message),
                                {example_hint(key)});
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
        return Failure{quantity.fault()};
    }
    const auto unit = quantity.value().unit;
    if (dimension(unit) != kitchen::Dimension::Mass || !is_plain_measure(quantity.value())) {
        return Failure{kitchen::TextFault{0, "expected a number and g, kg, oz or lb"}};
    }
    // Weights are the same in every country's drawer.
    const auto grams = factor(unit, kitchen::Measures::Us);
    return kitchen::Mass{quantity.value().low->value() * grams.value()};
}

/// Litres, or cubic feet as freezers are sold in some countries: 1 ft = 304.8 mm exactly
/// (NIST Special Publication 811, 2008, appendix B).
Result<double, kitchen::TextFault> parse_volume(std::string_view text) {
    constexpr double litres_in_cubic_foot = 3.048 * 3.048 * 3.048;
    constexpr std::array<std::string_view, 6> cubic_feet = {"cu ft",      "cu. ft.",    "cu.ft.",
                                                            "cubic feet", "cubic foot", "ft³"};
    auto quantity = kitchen::parse_quantity(text);
    if (!quantity) {
        return Failure{quantity.fault()};
    }
    auto written = std::move(quantity).value();
    const bool feet =
        written.unit == Unit::Count &&
        std::ranges::find(cubic_feet, kitchen::lower(written.item)) != cubic_feet.end();
    if (feet) {
        written.item.clear();
    }
    if (!is_plain_measure(written) || (!feet && written.unit != Unit::Litre)) {
        return Failure{kitchen::TextFault{0, "expected a number of litres or cubic feet"}};
    }
    return written.low->value() * (feet ? litres_in_cubic_foot : 1.0);
}

} // namespace

std::optional<kitchen::Quantity> read_quantity(toml::Table& table, const toml::Key& key) {
    auto quantity = read_by(table, key, kitchen::parse_quantity);
    if (quantity && quantity->item.empty()) {
        table.reader().error(
            table.path_of(key),
            fmt::format("{} says how much, but not of what", toml::quoted(quantity->as_written)),
            {example_hint(key)});
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
    const auto litres = read_by(table, key, parse_volume);
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
    const auto when = kitchen::parse_when(text->line);
    if (when) {
        return when.value();
    }
    const auto forms = kitchen::when_forms();
    const auto near = nearest(text->line, forms);
    table.reader().error_inside(
        text->key, text->begin + when.fault().offset,
        fmt::format("{} does not say when: {}", toml::quoted(text->line), when.fault().message),
        {near ? fmt::format("did you mean \"{}\"?", *near) : "expected " + list_of(forms)});
    return std::nullopt;
}

} // namespace thawslip::intake
