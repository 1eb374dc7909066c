#pragma once

#include "kitchen/date.h"

#include <string>
#include <string_view>
#include <vector>

namespace thawslip::service {

/// A dish as a new day has it: the cook's own words; what is empty is left to be filled in.
struct NewDish {
    std::string name;
    std::string servings; ///< a number
    std::string bags;     ///< a number
    std::string food;
    std::string weight;
    std::string thickness;
};

/// What a new day starts from.
struct NewDay {
    kitchen::Date made{};
    std::string kitchen;
    std::vector<NewDish> dishes; ///< none: the sample day
};

/// The kinds of food that may be frozen, by the list of storage times that is asked first.
std::vector<std::string> freezable_kinds(const std::string& storage_list);

/// The text of a day to start from, in TOML with remarks in `language` ("en", "es", "de"), as that
/// is said where food is declared by the list. A day without dishes is a sample with one; else it
/// has a block for each dish, in which what the cook must still say is empty, so that `check` asks
/// for it, and what is optional is a remark.
/// \param kinds of food, for a remark
/// \pre `language` is one of wording::shipped_languages(), and the texts are UTF-8
std::string new_day_text(const NewDay& day, std::string_view language,
                         std::string_view allergen_list, const std::vector<std::string>& kinds);

} // namespace thawslip::service
