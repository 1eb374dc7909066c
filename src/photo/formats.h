#pragma once

#include "photo/photo.h"

// One decoder a format; `decode` tells them apart.
namespace thawslip::photo {

Result<code::GreyPicture, PhotoFault> decode_jpeg(std::span<const std::uint8_t> bytes,
                                                  const Limits& limits);
Result<code::GreyPicture, PhotoFault> decode_png(std::span<const std::uint8_t> bytes,
                                                 const Limits& limits);

/// Why a picture of this size is refused; empty for one that may be read.
std::string refusal(std::uint64_t width, std::uint64_t height, const Limits& limits);

} // namespace thawslip::photo
