#pragma once

#include "base/result.h"
#include "code/read_picture.h"

#include <cstdint>
#include <span>
#include <string>

namespace thawslip::photo {

/// What is taken from a photograph at most. Pictures come from anywhere, so their headers are
/// looked at before any memory is asked for.
struct Limits {
    std::size_t bytes = std::size_t{64} << 20U; ///< of the file
    std::uint64_t pixels = 120'000'000;         ///< width × height as the file says
    int side = 65'500;                          ///< the most that JPEG can say
    std::uint64_t read_pixels = 12'000'000;     ///< larger ones are halved until they are below
};

/// Why a file gave no picture: words for a person, lower case, no full stop.
struct PhotoFault {
    std::string message;
};

/// Decodes a PNG (ISO/IEC 15948) or a JPEG (ISO/IEC 10918-1) file to grey. How the camera was held
/// does not matter: codes are read in any direction, so Exif orientation is not looked at.
Result<code::GreyPicture, PhotoFault> decode(std::span<const std::uint8_t> bytes,
                                             const Limits& limits = {});

} // namespace thawslip::photo
