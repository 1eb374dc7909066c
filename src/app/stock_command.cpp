#include "app/choices.h"
#include "app/commands.h"

#include <algorithm>
#include <fmt/format.h>
#include <ostream>

namespace thawslip::app {

ExitStatus stock_list(Console console) {
    const auto stocks = shipped_stocks(find_data_folder());
    std::size_t widest = 0;
    for (const auto& stock : stocks) {
        widest = std::max(widest, stock.name.size());
    }
    for (const auto& stock : stocks) {
        console.out << fmt::format("{:<{}}  {}\n", stock.name, widest, stock.about);
    }
    return ExitStatus::Done;
}

} // namespace thawslip::app
