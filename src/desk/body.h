#pragma once

#include "http/message.h"
#include "json/value.h"

#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

namespace thawslip::desk {

/// A request that our page never sends: answered with 400 and these words.
struct BadRequest : std::runtime_error {
    using std::runtime_error::runtime_error;
};

/// The JSON of a request's body, an object. \throws BadRequest
json::Json body_of(const http::Request& request);

// A member of an object. What is absent or null is nothing (or `otherwise`); what is of another
// type throws BadRequest.
std::optional<std::string> text_at(const json::Json& object, const char* key);
std::optional<int> number_at(const json::Json& object, const char* key);
bool flag_at(const json::Json& object, const char* key, bool otherwise = false);
std::vector<std::string> texts_at(const json::Json& object, const char* key);

/// The same of a member that must be there.
std::string needed_text(const json::Json& object, const char* key);
int needed_number(const json::Json& object, const char* key);

} // namespace thawslip::desk
