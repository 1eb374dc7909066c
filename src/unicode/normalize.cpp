#include "unicode/normalize.h"

#include "unicode/icu_error.h"

#include <unicode/bytestream.h>
#include <unicode/normalizer2.h>

namespace thawslip::unicode {

std::string to_nfc(std::string_view text) {
    UErrorCode error = U_ZERO_ERROR;
    const auto* nfc = icu::Normalizer2::getNFCInstance(error);
    require_success(error, "normalization data");
    std::string composed;
    icu::StringByteSink<std::string> sink{&composed, static_cast<int32_t>(text.size())};
    nfc->normalizeUTF8(0, {text.data(), static_cast<int32_t>(text.size())}, sink, nullptr, error);
    require_success(error, "normalizing");
    return composed;
}

} // namespace thawslip::unicode
