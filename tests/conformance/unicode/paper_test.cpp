// Which paper a territory prints on. Unicode Consortium, "Unicode CLDR", supplemental data,
// measurementData, paperSize: US-Letter for BZ CA CL CO CR GT MX NI PA PH PR SV US VE, A4 for the
// rest of the world (release 42, 2022; from memory, and held against ICU's own copy of it here).

#include "unicode/paper.h"

#include <doctest/doctest.h>
#include <string>

using namespace thawslip::unicode;

TEST_CASE("paper is that of the locale's territory") {
    for (const std::string territory : {"US", "CA", "MX", "CL", "CO", "PH", "VE", "PR"}) {
        CAPTURE(territory);
        CHECK(paper_of("en_" + territory + ".UTF-8") == Paper::Letter);
    }
    for (const std::string territory : {"DE", "GB", "ES", "AT", "AU", "AR", "FR", "JP", "ZA"}) {
        CAPTURE(territory);
        CHECK(paper_of("en_" + territory) == Paper::A4);
    }
    CHECK(paper_of("de_DE.UTF-8@euro") == Paper::A4);
    CHECK(paper_of("es_MX") == Paper::Letter);
}

TEST_CASE("a locale without a territory says nothing of paper") {
    for (const std::string locale : {"", "C", "POSIX", "C.UTF-8", "en", "de.UTF-8"}) {
        CAPTURE(locale);
        CHECK_FALSE(paper_of(locale));
    }
}

TEST_CASE("a locale's language") {
    CHECK(language_of("de_AT.UTF-8") == "de");
    CHECK(language_of("es") == "es");
    CHECK(language_of("C.UTF-8").empty());
    CHECK(language_of("").empty());
}
