#pragma once

#include "app/commands.h"
#include "archive/archive.h"

#include <optional>
#include <string>
#include <vector>

namespace thawslip::app {

/// The bags meant by ids as people type them. What is no id, or none that is known, is said on
/// `console.err` with the nearest ids there are; then nothing is returned.
std::optional<std::vector<archive::Bag>>
bags_by_id(archive::Archive& archive, const std::vector<std::string>& typed, Console console);

/// The bags meant by ids, or by words of the dish where the first word is none.
std::optional<std::vector<archive::Bag>>
bags_meant(archive::Archive& archive, const std::vector<std::string>& typed, Console console);

} // namespace thawslip::app
