#include "intake/values.h"

#include "base/letters.h"
#include "base/list.h"
#include "base/nearest.h"
#include "base/printable.h"
#include "kitchen/measures/container_text.h"
#include "kitchen/measures/hold_time.h"
#include "kitchen/measures/temperature.h"
#include "kitchen/measures/time_range.h"
#include "kitchen/measures/units.h"
#include "kitchen/measures/when.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace thawslip::intake {
namespace {

using kitchen::Dimension;
using kitchen::TextFault;
using kitchen::Unit;

/// Longest of the texts that hold a value; what is longer was not meant as one.
constexpr std::size_t longest_value = 120;

/// A value's text as one line, where it stands, and what was cut off before it.
struct ValueText {
    std::string line;
    KeyPath key;
    std::size_t spaces_before = 0;
};

std::optional<ValueText> value_text(toml::Table& table, const toml::Key& key) {
    const auto text = table.string(key);
    if (!text) {
        return std::nullopt;
    }
    auto line = toml::printable_line(table.reader(), *text, longest_value);
    if (!line) {
        return std::nullopt;
    }
    const auto before = text->value.find(*line);
    return ValueText{std::move(*line), text->key, before};
}

std::string example_of(const toml::Key& key) {
    return fmt::format("write, for example, {} = {}", key.name, key.example);
}

/// A value and the text it was read from.
template <class T>
struct ReadValue {
    T value;
    ValueText text;
};

/// Reads a value by `parse`; a fault is placed at its offset, with `hint`, or else the key's
/// example, as the hint.
template <class Parse, class Hint>
auto read_by(toml::Table& table, const toml::Key& key, const Parse& parse, const Hint& hint)
    -> std::optional<ReadValue<std::decay_t<decltype(parse(std::string_view{}).value())>>> {
    auto text = value_text(table, key);
    if (!text) {
        return std::nullopt;
    }
    auto value = parse(std::string_view{text->line});
    if (value) {
        return ReadValue<std::decay_t<decltype(value.value())>>{std::move(value).value(),
                                                                std::move(*text)};
    }
    const auto& fault = value.fault();
    table.reader().error_inside(
        text->key, text->spaces_before + fault.offset,
        fmt::format("{} cannot be read as {}: {}", in_quotes(text->line), key.name, fault.message),
        {hint(text->line)});
    return std::nullopt;
}

template <class Parse>
auto read_by(toml::Table& table, const toml::Key& key, const Parse& parse) {
    return read_by(table, key, parse, [&key](const std::string&) { return example_of(key); });
}

void refuse_range(toml::Table& table, const toml::Key& key, const ValueText& text,
                  const std::string& range, toml::Hints hints = {}) {
    table.reader().error(
        text.key, fmt::format("{} must be {}, not {}", key.name, range, in_quotes(text.line)),
        std::move(hints));
}

/// One exact amount in a unit, with nothing else: what a weight or a volume is.
bool is_plain_measure(const kitchen::Quantity& quantity, Dimension dimension) {
    return quantity.low && quantity.low == quantity.high && quantity.item.empty() &&
           quantity.qualifier.empty() && kitchen::dimension(quantity.unit) == dimension;
}

/// In grams or millilitres; cups and spoons as in the United States, which is near enough for
/// judging whether a size is absurd.
double base_amount(kitchen::Amount amount, Unit unit) {
    return amount.value() * kitchen::factor(unit, kitchen::Measures::Us).value();
}

Result<kitchen::Mass, TextFault> parse_mass(std::string_view text) {
    const auto quantity = kitchen::parse_quantity(text);
    if (!quantity) {
        return Failure{quantity.fault()};
    }
    if (!is_plain_measure(quantity.value(), Dimension::Mass)) {
        const bool is_bare = quantity.value().unit == Unit::Count && quantity.value().item.empty();
        return Failure{is_bare ? TextFault{text.size(), "expected g, kg, oz or lb after the number"}
                               : TextFault{0, "expected a number and g, kg, oz or lb"}};
    }
    return kitchen::Mass{base_amount(*quantity.value().low, quantity.value().unit)};
}

/// Litres, or cubic feet as freezers are sold in some countries: 1 ft = 304.8 mm exactly
/// (NIST Special Publication 811, 2008, appendix B).
Result<double, TextFault> parse_volume(std::string_view text) {
    constexpr double litres_in_cubic_foot = 3.048 * 3.048 * 3.048;
    constexpr std::array<std::string_view, 6> cubic_feet = {"cu ft",      "cu. ft.",    "cu.ft.",
                                                            "cubic feet", "cubic foot", "ft³"};
    auto quantity = kitchen::parse_quantity(text);
    if (!quantity) {
        return Failure{quantity.fault()};
    }
    auto written = std::move(quantity).value();
    const bool feet = written.unit == Unit::Count && contains(cubic_feet, lower(written.item));
    if (feet) {
        written.item.clear();
    }
    const auto dimension = feet ? Dimension::Count : Dimension::Volume;
    if (!is_plain_measure(written, dimension) || (!feet && written.unit != Unit::Litre)) {
        return Failure{TextFault{0, "expected a number of litres or cubic feet"}};
    }
    return written.low->value() * (feet ? litres_in_cubic_foot : 1.0);
}

/// What nobody adds to one bag at home; empty where the amount is possible.
std::string most_of(const kitchen::Quantity& quantity) {
    constexpr double most_base = 100'000.0; // grams or millilitres
    constexpr double most_pieces = 10'000.0;
    if (!quantity.high) {
        return {};
    }
    const double amount = base_amount(*quantity.high, quantity.unit);
    switch (kitchen::dimension(quantity.unit)) {
    case Dimension::Count: return amount > most_pieces ? "at most 10000" : "";
    case Dimension::Mass: return amount > most_base ? "at most 100 kg" : "";
    case Dimension::Volume: return amount > most_base ? "at most 100 l" : "";
    }
    return {};
}

} // namespace

std::optional<kitchen::Quantity> read_quantity(toml::Table& table, const toml::Key& key) {
    auto read = read_by(table, key, kitchen::parse_quantity);
    if (!read) {
        return std::nullopt;
    }
    auto& [quantity, text] = *read;
    if (quantity.item.empty()) {
        table.reader().error(
            text.key,
            fmt::format("{} in {} says how much, but not of what", in_quotes(text.line), key.name),
            {example_of(key)});
        return std::nullopt;
    }
    if (const auto most = most_of(quantity); !most.empty()) {
        refuse_range(table, key, text, most);
        return std::nullopt;
    }
    return std::move(quantity);
}

std::optional<kitchen::Mass> read_mass(toml::Table& table, const toml::Key& key,
                                       toml::Range<double> grams) {
    const auto read = read_by(table, key, parse_mass);
    if (!read) {
        return std::nullopt;
    }
    if (read->value.grams < grams.least || read->value.grams > grams.most) {
        refuse_range(table, key, read->text,
                     fmt::format("from {:g} g to {:g} kg", grams.least, grams.most / 1000));
        return std::nullopt;
    }
    return read->value;
}

std::optional<double> read_litres(toml::Table& table, const toml::Key& key,
                                  toml::Range<double> litres) {
    const auto read = read_by(table, key, parse_volume);
    if (!read) {
        return std::nullopt;
    }
    if (read->value < litres.least || read->value > litres.most) {
        refuse_range(table, key, read->text,
                     fmt::format("from {:g} l to {:g} l", litres.least, litres.most));
        return std::nullopt;
    }
    return read->value;
}

std::optional<kitchen::Container> read_container(toml::Table& table, const toml::Key& key,
                                                 toml::Range<double> millimetres) {
    const auto read = read_by(table, key, kitchen::parse_container);
    if (!read) {
        return std::nullopt;
    }
    const auto& container = read->value;
    const auto fits = [&](Length side) {
        return side.in_millimetres() >= millimetres.least &&
               side.in_millimetres() <= millimetres.most;
    };
    if (!fits(container.width) || !fits(container.length) ||
        (container.height && *container.height > Length::millimetres(millimetres.most))) {
        refuse_range(
            table, key, read->text,
            fmt::format("from {:g} mm to {:g} mm a side", millimetres.least, millimetres.most));
        return std::nullopt;
    }
    return container;
}

std::optional<kitchen::TimeRange> read_time(toml::Table& table, const toml::Key& key) {
    const auto read = read_by(table, key, kitchen::parse_time_range);
    return read ? std::optional{read->value} : std::nullopt;
}

std::optional<std::chrono::seconds> read_hold(toml::Table& table, const toml::Key& key) {
    const auto read = read_by(table, key, kitchen::parse_hold);
    return read ? std::optional{read->value} : std::nullopt;
}

std::optional<kitchen::Temperature> read_temperature(toml::Table& table, const toml::Key& key) {
    const auto read = read_by(table, key, kitchen::parse_temperature);
    return read ? std::optional{read->value} : std::nullopt;
}

std::optional<kitchen::Temperature> read_target(toml::Table& table, const toml::Key& key) {
    constexpr toml::Range<double> celsius{20.0, 130.0};
    const auto read = read_by(table, key, kitchen::parse_temperature);
    if (!read) {
        return std::nullopt;
    }
    if (read->value.celsius < celsius.least || read->value.celsius > celsius.most) {
        refuse_range(
            table, key, read->text,
            fmt::format("from {:g} °C to {:g} °C in the middle", celsius.least, celsius.most),
            {"how hot the oven is stands in setting"});
        return std::nullopt;
    }
    return read->value;
}

std::optional<kitchen::When> read_when(toml::Table& table, const toml::Key& key) {
    const auto read = read_by(table, key, kitchen::parse_when, [](const std::string& text) {
        const auto forms = kitchen::when_forms();
        const auto near = nearest(text, forms);
        return near ? fmt::format("did you mean \"{}\"?", *near)
                    : "write, for example, " + list_of(forms);
    });
    return read ? std::optional{read->value} : std::nullopt;
}

} // namespace thawslip::intake
