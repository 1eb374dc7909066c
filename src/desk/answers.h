#pragma once

#include "http/message.h"
#include "json/json.h"
#include "service/messages.h"

#include <string>

namespace thawslip::desk {

http::Response answer_with(const json::Json& value, int status = 200);

/// What messages look like to the page: ROUTES.md, at its top.
json::Json messages_for_page(const service::Messages& messages);

/// A refusal in words of ours.
http::Response refusal(int status, const std::string& text);
/// A refusal by what a use case says.
http::Response refusal(const service::Messages& messages);

} // namespace thawslip::desk
