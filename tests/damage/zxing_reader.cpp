#include "code/read_picture.h"
#include "damage/readers.h"

#include <algorithm>

namespace thawslip::damage {

bool zxing_reads(const Picture& picture, const std::string& text) {
    const auto texts = code::read_picture({picture.width, picture.height, picture.pixels});
    return std::ranges::find(texts, text) != texts.end();
}

} // namespace thawslip::damage
