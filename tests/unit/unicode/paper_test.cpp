// Which paper and which language a system's locale speaks of.

#include "unicode/paper.h"

#include <doctest/doctest.h>

using namespace thawslip::unicode;

TEST_CASE("the paper is that of the locale's country, and of none where no country is named") {
    // Unicode CLDR, supplemental data, measurementData: paperSize "US-Letter" for BZ CA CL CO CR GT
    // MX NI PA PH PR SV US VE, "A4" for the world.
    for (const auto* locale : {"de_DE", "en_GB", "en_GB.UTF-8", "de_DE.UTF-8@euro", "de_DE@euro",
                               "fr_FR.ISO8859-1", "es_ES", "sr_RS@latin"}) {
        CAPTURE(locale);
        CHECK(paper_of(locale) == Paper::A4);
    }
    for (const auto* locale : {"en_US", "en_US.UTF-8", "fr_CA", "es_MX.UTF-8", "en_PH@x"}) {
        CAPTURE(locale);
        CHECK(paper_of(locale) == Paper::Letter);
    }
    for (const auto* locale : {"", "C", "POSIX", "C.UTF-8", "C@x", "de", "en.UTF-8", "en@en_US"}) {
        CAPTURE(locale);
        CHECK_FALSE(paper_of(locale));
    }
}

TEST_CASE("the language is the locale's first part, and none where the system has none") {
    CHECK(language_of("de_DE.UTF-8@euro") == "de");
    CHECK(language_of("es") == "es");
    CHECK(language_of("en_US") == "en");
    CHECK(language_of("de.UTF-8") == "de");
    CHECK(language_of("fil_PH") == "fil");
    for (const auto* locale : {"", "C", "POSIX", "C.UTF-8", "POSIX@x"}) {
        CAPTURE(locale);
        CHECK(language_of(locale).empty());
    }
}
