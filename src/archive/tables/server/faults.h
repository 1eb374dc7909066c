#pragma once

#include "archive/fault.h"

#include <string>
#include <string_view>

namespace thawslip::archive {

/// What a server refused, in our words. \param state its SQLSTATE (PostgreSQL 15, Appendix A,
/// "PostgreSQL Error Codes") \param detail its own words
ArchiveFault server_fault(std::string_view state, const std::string& place,
                          std::string_view detail);

/// What kept the server from being reached. libpq gives connection errors no SQLSTATE, so the
/// words decide whether the server answered (and refused) or is away.
ArchiveFault connection_fault(const std::string& place, std::string_view detail);

/// The server is away, or went away.
ArchiveFault away(const std::string& place, std::string_view why);

} // namespace thawslip::archive
