#pragma once

#include "code/row_major.h"

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

namespace thawslip::code {

/// An 8-bit grey picture, 0 black, rows from the top without gaps.
struct GreyPicture {
    int width = 0;
    int height = 0;
    std::vector<std::uint8_t> pixels; ///< width × height

    /// Where a pixel stands among `pixels`.
    std::size_t index(int x, int y) const { return row_major(x, y, width); }
};

/// Of sixteen labels: what looks most like a symbol comes first, so that more are hardly needed.
inline constexpr int enough_modules = 60'000;

/// The texts of all QR codes that can be found in a picture, in the order of finding, none twice.
///
/// A picture is read by local thresholds and by one for all of it, and made smaller where it is
/// large: each may miss one code of several. Where none of these finds any, its light is made even;
/// then it is tried by `recovered` (recover/recover.h), unrolled where the label is bent around
/// something, and sharpened. Takes a photograph of a few megapixels some hundred milliseconds when
/// a code is sound, some seconds when there is none. A picture that is drawn to look like thousands
/// of finder patterns takes minutes: ZXing-C++ tries all threes of them. Who takes pictures from
/// strangers must bound the time.
///
/// \param modules how many are felt for in all
/// where the light is made even, and once more in all sharpened pictures together: see `recovered`
/// \returns nothing for an empty picture, and for any picture when built without a reader
std::vector<std::string> read_picture(const GreyPicture& picture, int modules = enough_modules);

/// The largest frame of a camera that is looked at, in pixels: 1920 × 1080.
inline constexpr int largest_frame = 1920 * 1080;

/// One quick look at a frame of a camera, of which there are many: what `read_picture` tries first,
/// and nothing more. A frame of 1280 × 720 takes about ten milliseconds. One with more than a
/// hundred of what looks like finder patterns is not looked at: it would take minutes.
/// \returns nothing for a frame that is empty or larger than `largest_frame`
std::vector<std::string> read_quickly(const GreyPicture& frame);

} // namespace thawslip::code
