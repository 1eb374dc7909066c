#include "unicode/boundaries.h"

#include "unicode/icu_error.h"

#include <memory>
#include <unicode/brkiter.h>
#include <unicode/utext.h>

namespace thawslip::unicode {
namespace {

struct CloseText {
    void operator()(UText* text) const { utext_close(text); }
};

using Maker = icu::BreakIterator* (*)(const icu::Locale&, UErrorCode&);

// ICU keeps the compiled rules, so that an iterator costs about 4 µs. That is less than the trouble
// of handing one from call to call.
std::vector<std::size_t> boundaries(std::string_view text, Maker make) {
    UErrorCode error = U_ZERO_ERROR;
    const std::unique_ptr<icu::BreakIterator> iterator{make(icu::Locale::getRoot(), error)};
    const std::unique_ptr<UText, CloseText> source{
        utext_openUTF8(nullptr, text.data(), static_cast<int64_t>(text.size()), &error)};
    require_success(error, "break rules and text"); // ICU does nothing once a call has failed
    iterator->setText(source.get(), error);
    require_success(error, "finding breaks");
    std::vector<std::size_t> found;
    for (auto at = iterator->next(); at != icu::BreakIterator::DONE; at = iterator->next()) {
        found.push_back(static_cast<std::size_t>(at));
    }
    return found;
}

} // namespace

std::vector<std::size_t> line_breaks(std::string_view text) {
    return boundaries(text, icu::BreakIterator::createLineInstance);
}

std::vector<std::size_t> grapheme_breaks(std::string_view text) {
    return boundaries(text, icu::BreakIterator::createCharacterInstance);
}

} // namespace thawslip::unicode
