#pragma once

#include <string_view>

namespace thawslip::archive {

/// Whether `now` is surely the name of the same dish as `before`, with a slip of the keyboard
/// mended: "Squahs stew", "Squash stew"; "brocoli soup", "broccoli soup"; "Creme", "crème".
///
/// Being a letter off is not enough: "beef pot" and "beet pot", "chicken" and "chickpea", "sole"
/// and "sloe" are other foods. So letter case, accents and signs may differ, and in one word of
/// four letters or more, either two neighbouring letters may be swapped or a letter stand single
/// instead of doubled; its first letter stays, and so does any allergen that the word names.
///
/// \param before, now folded as PackageRecord::words
bool is_mended_name(std::string_view before, std::string_view now);

} // namespace thawslip::archive
