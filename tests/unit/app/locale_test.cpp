// Which variable says where and how a cook speaks: The Open Group, POSIX.1-2017, Base
// Definitions, 8.2 "Internationalization Variables": LC_ALL, else the category's own, else LANG; an
// empty one says nothing. LC_PAPER is glibc's (locale(7)).

#include "app/locale.h"
#include "support/variable.h"

#include <doctest/doctest.h>

namespace locale_test {

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

struct Variables {
    Variable all;
    Variable paper;
    Variable messages;
    Variable lang;

    Variables(const char* all_says, const char* paper_says, const char* messages_says,
              const char* lang_says)
        : all{"LC_ALL", all_says}, paper{"LC_PAPER", paper_says},
          messages{"LC_MESSAGES", messages_says}, lang{"LANG", lang_says} {}
};

} // namespace

TEST_CASE("what says all goes before a category's own, and that before the rest") {
    {
        const Variables by{"de_DE", "en_US", "es_ES", "en_GB"};
        CHECK(app::paper_locale() == "de_DE");
        CHECK(app::message_locale() == "de_DE");
    }
    {
        const Variables by{"", "en_US", "es_ES", "en_GB"};
        CHECK(app::paper_locale() == "en_US");
        CHECK(app::message_locale() == "es_ES");
    }
    {
        const Variables by{"", "", "", "en_GB"};
        CHECK(app::paper_locale() == "en_GB");
        CHECK(app::message_locale() == "en_GB");
    }
    const Variables none{"", "", "", ""};
    CHECK(app::paper_locale().empty());
}

TEST_CASE("paper is the locale's where nobody said which, and what was said stays") {
    const Variables by{"", "en_US.UTF-8", "", ""};
    service::Settings settings;
    settings.paper_from = service::PaperFrom::Nobody;
    app::take_paper_of_locale(settings);
    CHECK(settings.paper == "letter");
    CHECK(settings.paper_from == service::PaperFrom::Locale);
    CHECK(settings.locale == "en_US");
    const Variable other{"LC_PAPER", "de_AT@euro"};
    app::take_paper_of_locale(settings);
    CHECK(settings.paper == "letter");
    settings.paper_from = service::PaperFrom::Nobody;
    app::take_paper_of_locale(settings);
    CHECK(settings.paper == "a4");
    CHECK(settings.locale == "de_AT");
}

TEST_CASE("the language is the locale's where there are words for it") {
    service::Settings settings;
    settings.language = "es";
    for (const auto& [locale, language] :
         {std::pair{"de_CH.UTF-8", "de"}, {"en_GB", "en"}, {"fi_FI.UTF-8", "es"}, {"C", "es"}}) {
        CAPTURE(locale);
        const Variables by{locale, "", "", ""};
        CHECK(app::language_of_locale(settings) == language);
    }
}

} // namespace locale_test
