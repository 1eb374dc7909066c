#pragma once

#include <string>

namespace thawslip::archive {

/// The SQL by which whoever keeps a PostgreSQL server makes archives possible in a database, or
/// leads an older schema forward: roles, tables, rights. All or nothing, and running it again
/// changes nothing; two who run it at once wait for each other. For psql(1), as a superuser, for it
/// makes roles.
std::string server_sql();

} // namespace thawslip::archive
