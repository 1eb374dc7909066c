#pragma once

#include "kitchen/storage/storage.h"

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::kitchen {

/// Every kind of food, also those that are not to be frozen, in the table's order.
std::vector<std::string> all_kinds(const StorageTable& table);

/// The kinds that a word has to do with: what it may mean, the rawest first ("chicken": in pieces,
/// whole, ground, cooked), then those whose names or words hold it. Empty where none comes near.
std::vector<std::string> kinds_near(const StorageTable& table, std::string_view text);

/// The words of one language ("en", "es", "de") that may mean each kind, as its file writes them.
std::map<std::string, std::vector<std::string>> words_by_kind(const StorageTable& table,
                                                              std::string_view language);

} // namespace thawslip::kitchen
