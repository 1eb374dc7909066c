#pragma once

#include "archive/archive.h"
#include "service/messages.h"
#include "wording/door_list.h"

#include <string>
#include <vector>

namespace thawslip::service {

/// The bags meant by ids as people type them: small letters, O for 0, I or L for 1, dashes or
/// none. What is no id, or none that is known, is said with the nearest ids there are; then there
/// are no bags.
Outcome<std::vector<archive::Bag>> bags_by_id(archive::Archive& archive,
                                              const std::vector<std::string>& typed);

/// All bags that are meant by ids or words of dishes, as named_bags.h reads them.
Outcome<std::vector<archive::Bag>> bags_meant(archive::Archive& archive,
                                              const std::vector<std::string>& typed,
                                              archive::Which which = archive::Which::InFreezer);

/// Words as dishes are searched by: unicode::fold_for_search of those that are UTF-8.
std::string search_words(const std::vector<std::string>& words);

/// Whether what is in a bag is raw, by the kinds of food that the archive keeps.
bool is_raw(const archive::Bag& bag);

/// Whether bags were filled with one and the same and are of one size: what is said of how one
/// thaws, cooks and whom it serves holds for the other.
bool are_of_one_package(const archive::Bag& a, const archive::Bag& b);

/// Whether there is no such bag: eaten, discarded or never filled.
bool is_gone(const archive::Bag& bag);

/// What is in the freezer, as the door list takes it: a row for the bags of each package, the
/// soonest date first. What they contain is read from the descriptions of their days; of one that
/// cannot be read any longer it is not known.
/// \param list the allergens that what is added on cook day is held against
std::vector<wording::DoorRow> door_rows(archive::Archive& archive,
                                        const kitchen::AllergenList& list);

} // namespace thawslip::service
