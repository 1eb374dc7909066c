#include "unicode/paper.h"

#include <array>
#include <unicode/uloc.h>
#include <unicode/ulocdata.h>

namespace thawslip::unicode {
namespace {

/// Without what a system adds for encoding and currency: "de_DE" of "de_DE.UTF-8@euro".
std::string bare(const std::string& locale) {
    return locale.substr(0, locale.find_first_of(".@"));
}

bool is_none(const std::string& locale) {
    return locale.empty() || locale == "C" || locale == "POSIX";
}

} // namespace

std::optional<Paper> paper_of(const std::string& locale) {
    const auto name = bare(locale);
    if (is_none(name) || name.find('_') == std::string::npos) {
        return std::nullopt;
    }
    std::int32_t height = 0;
    std::int32_t width = 0;
    UErrorCode error = U_ZERO_ERROR;
    ulocdata_getPaperSize(name.c_str(), &height, &width, &error);
    if (U_FAILURE(error)) {
        return std::nullopt;
    }
    constexpr std::int32_t a4_height = 297; // mm, ISO 216
    return height == a4_height ? Paper::A4 : Paper::Letter;
}

std::string language_of(const std::string& locale) {
    const auto name = bare(locale);
    std::array<char, ULOC_LANG_CAPACITY> language{};
    UErrorCode error = U_ZERO_ERROR;
    if (is_none(name)) {
        return {};
    }
    uloc_getLanguage(name.c_str(), language.data(), language.size(), &error);
    return U_FAILURE(error) ? std::string{} : std::string{language.data()};
}

} // namespace thawslip::unicode
