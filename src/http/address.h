#pragma once

#include <string>

struct sockaddr;

namespace thawslip::http {

/// Whether an IPv4 address belongs to a house's own network, which no router leads further: RFC
/// 1918 (1996), section 3, and RFC 3927 (2005), section 2.1, where no router gives addresses.
/// \param address "192.168.1.20"; what is no address is not private
bool is_private_address(const std::string& address);

/// An IPv4 address as text; empty where it is none.
std::string text_of(const sockaddr* address);

} // namespace thawslip::http
