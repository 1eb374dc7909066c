#include "damage/readers.h"

#include <zbar.h>

namespace thawslip::damage {

bool zbar_reads(const Picture& picture, const std::string& text) {
    zbar::ImageScanner scanner;
    scanner.set_config(zbar::ZBAR_NONE, zbar::ZBAR_CFG_ENABLE, 0);
    scanner.set_config(zbar::ZBAR_QRCODE, zbar::ZBAR_CFG_ENABLE, 1);
    zbar::Image image{static_cast<unsigned>(picture.width), static_cast<unsigned>(picture.height),
                      "Y800", picture.pixels.data(), picture.pixels.size()};
    scanner.scan(image);
    bool found = false;
    for (auto symbol = image.symbol_begin(); symbol != image.symbol_end(); ++symbol) {
        found = found || symbol->get_data() == text;
    }
    image.set_data(nullptr, 0); // the pixels are not the image's to free
    return found;
}

} // namespace thawslip::damage
