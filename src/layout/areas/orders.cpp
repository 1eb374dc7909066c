#include "layout/areas/orders.h"

#include "toml/file_table.h"

#include <algorithm>
#include <cmath>

namespace thawslip::layout {

std::vector<int> read_orders(toml::Table& table) {
    const toml::Key key{"shorten", "[2, 5]"};
    std::vector<int> orders;
    for (const double order : table.reals(key, 6, {1.0, 99.0})) {
        if (order != std::floor(order)) {
            table.reader().error(table.path_of(key), "an order is a whole number",
                                 {"shorten = [2, 5]"});
        }
        orders.push_back(static_cast<int>(order));
    }
    if (!std::ranges::is_sorted(orders)) {
        table.reader().error(table.path_of(key), "the orders fall",
                             {"an area says a little less before it says much less"});
    }
    return orders;
}

int order_of(const std::vector<int>& orders, std::size_t form) {
    return orders.empty() ? 0 : orders[std::min(form, orders.size()) - 1];
}

} // namespace thawslip::layout
