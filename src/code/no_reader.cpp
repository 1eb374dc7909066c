// Stands in for the reader where Thawslip is built without one (THAWSLIP_READER=OFF).
#include "code/read_picture.h"
#include "code/symbol.h"

namespace thawslip::code {

bool can_read_back() {
    return false;
}

std::optional<std::string> read_back(const Symbol& /*symbol*/) {
    return std::nullopt;
}

std::vector<std::string> read_quickly(const GreyPicture& /*frame*/) {
    return {};
}

std::vector<std::string> read_picture(const GreyPicture& /*picture*/, int /*modules*/) {
    return {};
}

} // namespace thawslip::code
