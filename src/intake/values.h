#pragma once

#include "kitchen/day.h"
#include "toml/file_table.h"

#include <optional>

namespace thawslip::intake {

// One reader for each kind of value that a day is written in. A value that cannot be read is
// reported where it is wrong, with what was expected, and counts as absent.

/// An amount and what it is of: at most 100 kg, 100 l or 10 000 pieces.
std::optional<kitchen::Quantity> read_quantity(toml::Table& table, const toml::Key& key);
std::optional<kitchen::Mass> read_mass(toml::Table& table, const toml::Key& key,
                                       toml::Range<double> grams);
std::optional<double> read_litres(toml::Table& table, const toml::Key& key,
                                  toml::Range<double> litres);
/// How large a bag or a tray is: "20 x 28 cm", "8 x 10 in", "20 x 15 x 5 cm". A unit at the end is
/// of all numbers before it.
std::optional<kitchen::Container> read_container(toml::Table& table, const toml::Key& key,
                                                 toml::Range<double> millimetres);
std::optional<kitchen::TimeRange> read_time(toml::Table& table, const toml::Key& key);
/// How long the middle stays at its target: minutes, hours or seconds.
std::optional<std::chrono::seconds> read_hold(toml::Table& table, const toml::Key& key);
std::optional<kitchen::Temperature> read_temperature(toml::Table& table, const toml::Key& key);
/// A temperature that the middle of a dish can be brought to: 20 to 130 °C.
std::optional<kitchen::Temperature> read_target(toml::Table& table, const toml::Key& key);
std::optional<kitchen::When> read_when(toml::Table& table, const toml::Key& key);

} // namespace thawslip::intake
