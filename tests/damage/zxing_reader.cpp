#include "damage/readers.h"

#define ZX_USE_UTF8 1
#include <ZXing/ReadBarcode.h>
#include <algorithm>

namespace thawslip::damage {

bool zxing_reads(const Picture& picture, const std::string& text) {
    const ZXing::ImageView view{picture.pixels.data(), picture.width, picture.height,
                                ZXing::ImageFormat::Lum};
    const auto hints = ZXing::DecodeHints{}.setFormats(ZXing::BarcodeFormat::QRCode);
    const auto results = ZXing::ReadBarcodes(view, hints);
    return std::ranges::any_of(results, [&](const ZXing::Result& result) {
        return result.isValid() && result.text() == text;
    });
}

} // namespace thawslip::damage
