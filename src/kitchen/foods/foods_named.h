#pragma once

#include "kitchen/day.h"
#include "kitchen/foods/food_senses.h"
#include "kitchen/storage/storage.h"

#include <string>
#include <string_view>
#include <vector>

namespace thawslip::kitchen {

/// A food that the words of a package name, taken to be raw unless they say that it is cooked.
struct NamedFood {
    std::string words; ///< as they stand in the text, in small letters without accents
    FoodChoice kinds;
    FoodChoice may_be; ///< all that those words can mean, raw and cooked; empty: only `kinds`
    bool is_animal = false;
    bool said_raw = false;
    KeyPath where;
    bool is_uncooked_egg = false; ///< an egg, and nothing says that it is cooked
};

/// What is named by the dish and by the ingredients that go into the bag, in their order. What a
/// broth is made of does not count, nor what is denied ("without meat").
std::vector<NamedFood> foods_in_bag(const StorageTable& table, const Package& package);

/// The same, and the meat, fish and eggs that the steps name and that are not added on cook day.
std::vector<NamedFood> foods_named(const StorageTable& table, const Package& package);

/// Whether a text says that what it names is raw.
bool says_raw(const StorageTable& table, std::string_view text);

} // namespace thawslip::kitchen
