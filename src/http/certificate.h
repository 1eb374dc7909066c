#pragma once

#include "base/result.h"

#include <cstdint>
#include <string>

namespace thawslip::http {

/// How long a certificate holds.
inline constexpr std::int64_t certificate_days = 397;

/// Makes a key (ECDSA on P-256) and a certificate for it that it signs itself, for one IPv4 address
/// and servers alone (RFC 5280; RFC 5480; RFC 6125 for the address among the names).
/// \param now seconds since 1970 \returns both as PEM (RFC 7468), or in words why there are none
Result<std::string, std::string> make_certificate(const std::string& address, std::int64_t now);

/// Whether a certificate is for that address, and holds for another day at least.
bool certificate_serves(const std::string& pem, const std::string& address, std::int64_t now);

/// What browsers show of a certificate for comparison: its SHA-256, as "A1:B2:…"; empty where it is
/// none.
std::string fingerprint(const std::string& pem);

} // namespace thawslip::http
