#include "app/locale.h"

#include "unicode/paper.h"
#include "wording/language.h"

#include <algorithm>
#include <cstdlib>

namespace thawslip::app {
namespace {

std::string locale_by(const char* category) {
    for (const char* variable : {"LC_ALL", category, "LANG"}) {
        const char* value = std::getenv(variable);
        if (value != nullptr && *value != '\0') {
            return value;
        }
    }
    return {};
}

} // namespace

std::string paper_locale() {
    return locale_by("LC_PAPER");
}

std::string message_locale() {
    return locale_by("LC_MESSAGES");
}

void take_paper_of_locale(service::Settings& settings) {
    if (settings.paper_from != service::PaperFrom::Nobody) {
        return; // ICU reads its data for this: never in vain
    }
    const auto locale = paper_locale();
    if (const auto paper = unicode::paper_of(locale)) {
        settings.paper = *paper == unicode::Paper::A4 ? "a4" : "letter";
        settings.paper_from = service::PaperFrom::Locale;
        settings.locale = locale.substr(0, locale.find_first_of(".@"));
    }
}

std::string language_of_locale(const service::Settings& settings) {
    const auto language = unicode::language_of(message_locale());
    const auto known = wording::shipped_languages();
    return std::ranges::find(known, language) != known.end() ? language : settings.language;
}

} // namespace thawslip::app
