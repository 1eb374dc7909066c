// Languages and units, as the program prints them.

#include "pages.h"

#include <doctest/doctest.h>

using namespace thawslip::test_support;

namespace {

const std::string day = shell_word(std::string{THAWSLIP_SOURCE_DIR} + "/samples/orchard-day.toml");

std::string printed(const std::string& arguments) {
    const ScratchFolder folder;
    const auto pdf = folder / "print.pdf";
    const auto outcome = run_thawslip(arguments + " --no-archive -o " + shell_word(pdf));
    INFO(outcome.err);
    REQUIRE(outcome.status == 0);
    return words_in(pdf);
}

} // namespace

TEST_CASE("cards in two languages say all that is Thawslip's own in both, on either card stock") {
    for (const char* stock : {"letter-cards-6x4in-cut", "a4-cards-a6-cut", "letter-2x2-4x5in"}) {
        CAPTURE(stock);
        const auto text = printed("cards " + day + " --language en,es --stock " + stock);
        for (const char* words :
             {"Thaw in the refrigerator", "Descongelar en el refrigerador", "At the start",
              "Al principio", "(4¼ cups) vegetable stock", "Contains celery", "Contiene apio",
              "Local food-safety rules come first.",
              "Las normas locales de seguridad alimentaria son lo primero."}) {
            CAPTURE(words);
            CHECK(has(text, words));
        }
        CHECK(has(text, "(4¼ tazas)")); // the bracket is Thawslip's own
    }
}

TEST_CASE("labels speak the first language alone") {
    const auto text = printed("labels " + day + " --language es,en");
    CHECK(has(text, "Descongelar en el refrigerador"));
    CHECK_FALSE(has(text, "Thaw"));
}

TEST_CASE("units are printed as the option asks") {
    const auto metric = printed("labels " + day + " --units metric");
    CHECK(has(metric, "74 °C in"));
    CHECK(has(metric, "1 l vegetable stock"));
    CHECK_FALSE(has(metric, "165 °F"));
    const auto us = printed("labels " + day + " --units us");
    CHECK(has(us, "165 °F"));
    CHECK(has(us, "4¼ cups vegetable stock"));
    CHECK_FALSE(has(us, "74 °C"));
}

TEST_CASE("what is no language, or one twice, is told") {
    for (const char* wrong : {"fr", "en,fr", "en,en", "en,es,de", ",", "en,"}) {
        CAPTURE(wrong);
        const auto outcome = run_thawslip("check " + day + " --language " + shell_word(wrong));
        CHECK(outcome.status == 2);
        CHECK_FALSE(outcome.err.empty());
    }
}

TEST_CASE("the settings take one language or a list of two, and say what is wrong with others") {
    const ScratchFolder folder;
    const auto with = [&](const std::string& setting) {
        write_file(folder / "settings.toml", setting + "\n");
        return run_thawslip("plan " + day + " --eat '2026-12-03 18:30' --settings " +
                            shell_word(folder / "settings.toml"));
    };
    CHECK(has(with("language = \"es\"").out, "Las normas locales de seguridad alimentaria"));
    CHECK(has(with("language = [\"de\", \"en\"]").out, "Die örtlichen Regeln"));
    const auto wrong = with("language = [\"en\", \"fr\"]");
    CHECK(wrong.status == 1);
    CHECK(has(wrong.err, "settings.toml:1:19: error: \"fr\" is not a language: expected \"en\", "
                         "\"es\" or \"de\""));
    CHECK(with("language = []").status == 0);
    CHECK(with("language = 3").status == 1);
}

TEST_CASE("plan speaks the language and the units that are set") {
    const auto outcome = run_thawslip("plan " + day +
                                      " --dish lentil --eat '2026-12-03 18:30' --now '2026-11-30 "
                                      "09:00' --language de --units metric");
    CHECK(outcome.status == 0);
    CHECK(has(outcome.out, "1 l vegetable stock zu Squash and red lentil stew geben"));
    CHECK(has(outcome.out, "74 °C in der Mitte"));
}
