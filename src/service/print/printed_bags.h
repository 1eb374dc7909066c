#pragma once

#include "archive/archive.h"
#include "service/days.h"
#include "service/print/job.h"
#include "service/record/label_facts.h"

#include <map>
#include <optional>
#include <set>
#include <string>

namespace thawslip::service {

/// Bags that prints have, by the newest of their ids, and what the last of them said.
using PrintedBags = std::map<std::string, LabelFacts>;

/// The bags of the same descriptions as `bags`, as prints of the kind of `what` have them: a bag
/// has its cards when it has both. Lists, which the archive does not keep, go by the labels.
PrintedBags printed_bags(archive::Archive& archive, What what, const std::set<std::string>& bags);

/// The ids of days' bags that prints of that kind have. Not those whose labels are wrong by now
/// (record/label_facts.h).
std::set<std::string> printed_already(archive::Archive& archive, What what, const Days& days);

/// The bags that a print of the archive was of; nothing: all of its days.
std::optional<std::set<std::string>> part_of(const archive::StoredPrint& print);

} // namespace thawslip::service
