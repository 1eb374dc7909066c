#pragma once

#include <string>

namespace thawslip::desk {

/// A link as a QR code to be held before a phone, as SVG (SVG 2): dark on white with its quiet
/// zone, whatever the page's colours are. Empty where it is too long for one. \pre the link is
/// printable ASCII
std::string pairing_picture(const std::string& link);

} // namespace thawslip::desk
