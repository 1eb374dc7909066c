#pragma once

#include <cstdint>

namespace thawslip::archive {

/// The schema on a server that this program speaks to; archive/server_sql.h makes it.
std::int64_t server_schema();

} // namespace thawslip::archive
