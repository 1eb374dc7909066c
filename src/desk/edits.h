#pragma once

#include "json/json.h"
#include "toml/edit.h"

#include <string>
#include <vector>

namespace thawslip::desk {

/// What a page asks to be edited, as ROUTES.md says it under "edits". \throws BadRequest
std::vector<toml::Edit> edits_at(const json::Json& body);

/// Changes of a text as a script counts it, in UTF-16 code units. \pre `text` is UTF-8
json::Json changes_json(const std::vector<toml::Change>& changes, std::string text);

} // namespace thawslip::desk
