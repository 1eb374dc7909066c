#pragma once

#include "base/diagnostic.h"
#include "kitchen/storage/storage.h"
#include "toml/document.h"

#include <string>

namespace thawslip::intake {

/// Reads a table of how long food keeps; see src/kitchen/storage.toml for its shape. What is
/// wrong is appended to `faults`, and rows that cannot be read are left out.
kitchen::StorageTable read_storage(const toml::Document& document, Diagnostics& faults);

/// The table that is compiled in, asked by `rule_set` first.
kitchen::StorageTable built_in_storage(std::string rule_set = "us");

} // namespace thawslip::intake
