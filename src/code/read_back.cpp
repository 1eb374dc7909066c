#include "code/picture.h"
#include "code/symbol.h"
#include "code/zxing.h"

namespace thawslip::code {

bool can_read_back() {
    return true;
}

std::optional<std::string> read_back(const Symbol& symbol) {
    constexpr int pixels_per_module = 2;
    const GreyPicture picture = picture_of(symbol, pixels_per_module);
    const ZXing::ImageView view{picture.pixels.data(), picture.width, picture.height,
                                ZXing::ImageFormat::Lum};
    const auto hints = ZXing::DecodeHints{}
                           .setFormats(ZXing::BarcodeFormat::QRCode)
                           .setIsPure(true)
                           .setBinarizer(ZXing::Binarizer::FixedThreshold);
    const ZXing::Result result = ZXing::ReadBarcode(view, hints);
    return result.isValid() ? std::optional{result.text()} : std::nullopt;
}

} // namespace thawslip::code
