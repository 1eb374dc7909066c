#include "pages.h"

#define ZX_USE_UTF8 1
#include <ZXing/ReadBarcode.h>
#include <algorithm>

namespace thawslip::test_support {

Outcome run_thawslip(const std::string& arguments) {
    // Whoever runs the tests may have settings of their own, and an archive: theirs is not
    // written to, and no case reads what another has printed.
    const ScratchFolder data;
    return run(
        "export XDG_CONFIG_HOME=/nonexistent XDG_DATA_HOME=" + shell_word(data.path().string()) +
        "; " + std::string{THAWSLIP_PROGRAM} + " " + arguments);
}

std::string words_in(const std::string& pdf) {
    std::string text;
    for (const auto& page : read_pages(pdf)) {
        for (const auto& word : page.words) {
            text += word.text + " ";
        }
    }
    return text;
}

std::string read_code(const Raster& raster, const Rect& cell, int dots_per_inch) {
    const auto pixel = [dots_per_inch](Length length) {
        return static_cast<int>(length.in_inches() * dots_per_inch);
    };
    const int left = std::max(pixel(cell.left()), 0);
    const int top = std::max(pixel(cell.top()), 0);
    const int width = std::min(pixel(cell.size.width), raster.width - left);
    const int height = std::min(pixel(cell.size.height), raster.height - top);
    const ZXing::ImageView page{raster.pixels.data(), raster.width, raster.height,
                                ZXing::ImageFormat::Lum};
    ZXing::DecodeHints hints;
    hints.setFormats(ZXing::BarcodeFormat::QRCode);
    const auto result = ZXing::ReadBarcode(page.cropped(left, top, width, height), hints);
    return result.isValid() ? result.text() : std::string{};
}

} // namespace thawslip::test_support
