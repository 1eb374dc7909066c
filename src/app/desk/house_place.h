#pragma once

#include "base/result.h"
#include "http/listen.h"

#include <string>
#include <vector>

namespace thawslip::app {

/// Where phones ask unless a port is named: always the same, for a phone keeps its key by the port,
/// and above those that Linux gives to others (ip_local_port_range ends at 60999).
inline constexpr int usual_house_port = 61'722;

/// Reads "192.168.1.20" or "192.168.1.20:8123": where phones of the house may ask.
/// \param own this computer's addresses, of which the message names the right ones
/// \returns the place, or in words why it is none
Result<http::Place, std::string> house_place(const std::string& text,
                                             const std::vector<std::string>& own);

/// This computer's IPv4 addresses.
std::vector<std::string> own_addresses();

} // namespace thawslip::app
