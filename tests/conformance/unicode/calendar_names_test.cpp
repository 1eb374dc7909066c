// Names of months and weekdays against those of ICU (Unicode CLDR).

#include "wording/language.h"

#include <doctest/doctest.h>
#include <string>
#include <unicode/dtfmtsym.h>
#include <unicode/locid.h>
#include <unicode/unistr.h>

namespace {

/// Whether `name`, without a full stop at its end, is how `whole` begins, and long enough to be
/// told from the others.
bool shortens(std::string name, const icu::UnicodeString& whole) {
    if (name.ends_with('.')) {
        name.pop_back();
    }
    const auto mine = icu::UnicodeString::fromUTF8(name);
    // "Sept." and the like: the whole name in small letters, as Spanish writes it.
    return mine.length() >= 2 &&
           icu::UnicodeString{whole}.toLower().startsWith(icu::UnicodeString{mine}.toLower());
}

} // namespace

TEST_CASE("months and weekdays have the names that their languages give them, in their order") {
    for (const auto& code : thawslip::wording::shipped_languages()) {
        CAPTURE(code);
        const auto& language = thawslip::wording::shipped_language(code);
        UErrorCode error = U_ZERO_ERROR;
        const icu::DateFormatSymbols symbols{icu::Locale{code.c_str()}, error};
        REQUIRE(U_SUCCESS(error));
        int count = 0;
        const auto* months =
            symbols.getMonths(count, icu::DateFormatSymbols::FORMAT, icu::DateFormatSymbols::WIDE);
        REQUIRE(count == 12);
        for (int month = 1; month <= 12; ++month) {
            CAPTURE(month);
            CHECK(shortens(language.say("month." + std::to_string(month)), months[month - 1]));
        }
        const auto* days = symbols.getWeekdays(count, icu::DateFormatSymbols::FORMAT,
                                               icu::DateFormatSymbols::WIDE);
        REQUIRE(count == 8); // from 1, Sunday; ours from 1, Monday (ISO 8601)
        for (int day = 1; day <= 7; ++day) {
            CAPTURE(day);
            CHECK(shortens(language.say("weekday." + std::to_string(day)), days[day % 7 + 1]));
        }
    }
}
