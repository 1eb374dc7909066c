#pragma once

#include <string>
#include <string_view>

namespace thawslip::wording {

/// A phrase as it is said where food is declared by that list: in the Americas with the words of
/// es-419.toml in place of those of es.toml. For phrases that stand in tables of their own.
std::string said_where(std::string phrase, std::string_view language,
                       std::string_view allergen_list);

} // namespace thawslip::wording
