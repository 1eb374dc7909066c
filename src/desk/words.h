#pragma once

#include "json/json.h"

#include <string>
#include <string_view>

namespace thawslip::desk {

/// The page's own words in a language, as they are said where food is declared by that list.
/// \param language one of wording::shipped_languages() \param table the one that is wanted; empty:
/// all
json::Json page_words(std::string_view language, std::string_view allergen_list,
                      const std::string& table = {});

/// What the page calls something that the program calls otherwise.
enum class Named { Food, Stock };

/// The name of a kind of food or of a stock, by what the program calls it, in a language other than
/// English; empty where it has none there.
std::string name_on_page(Named what, const std::string& called, std::string_view language,
                         std::string_view allergen_list);

} // namespace thawslip::desk
