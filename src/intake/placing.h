#pragma once

#include "toml/file_table.h"

#include <span>

namespace thawslip::intake {

/// The words for how a bag lies, in the order of kitchen::Placing.
std::span<const toml::Word> placing_words();

} // namespace thawslip::intake
