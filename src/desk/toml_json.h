#pragma once

#include "json/json.h"
#include "toml/value.h"

namespace thawslip::desk {

/// The values of a text as they stand: dates as ISO 8601, and null for what cannot be read.
json::Json to_json(const toml::Value& value);

} // namespace thawslip::desk
