#pragma once

#include "http/message.h"

#include <string>

namespace thawslip::http {

/// An answer of this folder's own, in the form that the page knows: src/desk/ROUTES.md.
/// \param words of ours, without quotes and backslashes
Response refusal(int status, const std::string& words);

/// The same, and that no further request is taken on this connection (RFC 9112, section 9.6).
Response last_refusal(int status, const std::string& words);

} // namespace thawslip::http
