#pragma once

#include "json/json.h"
#include "service/print/job.h"
#include "service/print/look.h"

#include <string_view>

namespace thawslip::desk {

/// What is to be printed, as a page says it under "what". \throws BadRequest
service::What what_at(const json::Json& object);

/// How it is to look, as a page says it under "look"; what is absent is as usual. Stocks and
/// layouts are named, for a page knows no files. \throws BadRequest
service::Look look_at(const json::Json& object);

} // namespace thawslip::desk
