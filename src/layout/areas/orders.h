#pragma once

#include <vector>

namespace thawslip::toml {
class Table;
}

namespace thawslip::layout {

/// What a layout file says under `shorten`: when an area takes each of its shorter forms, in one
/// order with all areas that shorten or drop. Orders are whole numbers that never fall; what is
/// wrong is reported. Empty where the key is absent.
std::vector<int> read_orders(toml::Table& table);

/// The order in which `form` (from 1 on) is taken: the last is for all that follow; 0: never.
int order_of(const std::vector<int>& orders, std::size_t form);

} // namespace thawslip::layout
