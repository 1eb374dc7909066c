#pragma once

#include "base/result.h"

#include <string>
#include <string_view>

namespace thawslip::archive {

/// Where an archive on a server is, and which kitchen's it is.
struct Address {
    std::string uri;     ///< for libpq (PostgreSQL 15, 34.1.1.2, "Connection URIs")
    std::string kitchen; ///< its name at the server; empty: the only one of whoever asks
    /// The same for two addresses of one kitchen, whoever asks and however.
    std::string identity;
    std::string shown; ///< as messages show it: without anything that may be a password
};

/// Whether a place is an address of a server, and no file: "postgresql://…" or "postgres://…".
bool is_address(std::string_view place);

/// Without all that may be a password.
std::string shown_address(std::string_view address);

/// Reads "postgresql://[user@]host[:port]/database[?kitchen=NAME&…]". One that has a password in
/// it is refused: a settings file is copied along, and a command line is read by others.
/// \returns the address, or what is wrong with it
Result<Address, std::string> parse_address(std::string_view written);

} // namespace thawslip::archive
