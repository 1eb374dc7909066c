#pragma once

#include "service/print/surroundings.h"

#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace thawslip::desk {

/// What comes with the program, read once: stocks, layouts and faces stay as they are while it
/// runs, and reading them takes longer than a label.
class Shelf {
public:
    /// The same surroundings, with what comes with the program from here. Refers to this shelf.
    service::Surroundings with(service::Surroundings around);

private:
    std::map<std::string, std::optional<layout::StockReading>> stock_;
    std::optional<layout::StockShelf> stocks_;
    std::map<std::set<wording::Kind>, std::vector<service::ShippedText>> layouts_;
    std::optional<typeset::FontSet> fonts_;
};

} // namespace thawslip::desk
