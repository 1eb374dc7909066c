#pragma once

#include "archive/archive.h"
#include "service/days.h"

#include <optional>
#include <string>
#include <vector>

namespace thawslip::service {

/// What the labels of a package say that harms where it is wrong.
struct LabelFacts {
    archive::PackageRecord record;
    /// The allergens that are added on cook day, by name, sorted; nothing: the description, which
    /// alone has them, cannot be read any longer.
    std::optional<std::vector<std::string>> added;
};

LabelFacts label_facts(const kitchen::PlannedPackage& planned);

/// The same of a bag's newest description, as it was recorded.
LabelFacts label_facts(archive::Archive& archive, const archive::Bag& bag);

/// Whether labels that say `before` are wrong about `now`: as archive/relabelled.h says, or about
/// the allergens that are added. What is not known counts as the same.
bool is_relabelled(const LabelFacts& before, const LabelFacts& now);

/// Ids of the days' bags that the archive describes with other allergens that are added on cook
/// day, which it keeps in the words of the descriptions alone.
std::vector<std::string> bags_of_other_additions(archive::Archive& archive, const Days& days);

} // namespace thawslip::service
