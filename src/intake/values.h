#pragma once

#include "kitchen/day.h"
#include "toml/table.h"

#include <optional>
#include <string>

namespace thawslip::intake {

// One reader for each kind of value that a day is written in. A value that cannot be read is
// reported where it is wrong, with what was expected, and counts as absent.

std::optional<kitchen::Quantity> read_quantity(toml::Table& table, const toml::Key& key);
std::optional<kitchen::Mass> read_mass(toml::Table& table, const toml::Key& key, double most_grams);
/// In litres; cubic feet are read too.
std::optional<double> read_litres(toml::Table& table, const toml::Key& key);
std::optional<kitchen::TimeRange> read_time(toml::Table& table, const toml::Key& key);
std::optional<kitchen::Temperature> read_temperature(toml::Table& table, const toml::Key& key);
std::optional<kitchen::When> read_when(toml::Table& table, const toml::Key& key);

} // namespace thawslip::intake
