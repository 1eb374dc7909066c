#include "desk/page_hints.h"
#include "desk/words.h"
#include "json/value.h"
#include "wording/language.h"

#include <doctest/doctest.h>

using namespace thawslip;

namespace {

using Hints = std::vector<std::string>;

} // namespace

TEST_CASE("what helps without a command line stays as it is") {
    const Hints hints = {"did you mean \"Barley stew\"?",
                         "hold the camera straight above the label; in even light",
                         "a later thawslip wrote this, thawslip 9 perhaps", ""};
    CHECK(desk::page_hints(hints) == Hints{hints[0], hints[1], hints[2]});
}

TEST_CASE("a command is left out, and what makes no sense without it") {
    CHECK(desk::page_hints({"thawslip freezer list names every bag"}).empty());
    CHECK(desk::page_hints({"if the bag is there: thawslip freezer back K7Q-2M4-9XC"}).empty());
    CHECK(desk::page_hints({"put a backup in its place with: thawslip archive restore FILE"})
              .empty());
    CHECK(desk::page_hints({"bag K7Q-2M4-9XC is noted as eaten: thawslip freezer list --all"}) ==
          Hints{"bag K7Q-2M4-9XC is noted as eaten"});
    CHECK(desk::page_hints({"the label goes on no other bag; if the bag is there: thawslip freezer "
                            "back K7Q-2M4-9XC"}) == Hints{"the label goes on no other bag"});
}

TEST_CASE("the page has words in every language for the fields that stand for options") {
    for (const auto& language : wording::shipped_languages()) {
        const auto words = desk::page_words(language, "us", "print");
        for (const char* option : {"--dish", "--bag", "--from", "--only-new", "--first-cell",
                                   "--copies", "--trial", "--stock", "--large-print"}) {
            CAPTURE(option);
            const auto field = desk::page_text(option, {});
            REQUIRE(field.starts_with("\"{print."));
            CHECK(words.at(field.substr(8, field.size() - 10)).is_string());
        }
    }
}

TEST_CASE("for options stand the fields of the page, or the hint is left out") {
    CHECK(desk::page_hints({"with --dish, a number is the bag's within its dish"}) ==
          Hints{"with \"{print.dishes}\", a number is the bag's within its dish"});
    CHECK(desk::page_hints({"name the first free cell: --first-cell 7"}) ==
          Hints{"name the first free cell: \"{print.first_cell}\" 7"});
    CHECK(desk::page_hints({"name each food itself: --without \"nuts, gluten\""}) ==
          Hints{"name each food itself: \"nuts, gluten\""});
    CHECK(desk::page_hints({"or take another with --stock"}) ==
          Hints{"or take another with \"{print.stock}\""}); // at the end
    CHECK(desk::page_hints({"name one with --layout, or another stock"}).empty());
    CHECK(desk::page_hints({"--new-batch if they are others: they get ids of their own"}).empty());
    CHECK(desk::page_hints({"a dash -- as here -- is no option"}) ==
          Hints{"a dash -- as here -- is no option"});
    CHECK(desk::page_text("--from takes one bag, and \"3-5\" are several", {}) ==
          "\"{print.from}\" takes one bag, and \"3-5\" are several");
}

TEST_CASE("two dashes at the end of a text, or within a word, are no option") {
    for (const char* text : {"--", "wait --", "a--bag", "x --Bag", "-- bag"}) {
        CAPTURE(text);
        CHECK(desk::page_text(text, {}) == text);
        CHECK(desk::page_hints({text}) == Hints{text});
    }
    CHECK(desk::page_hints({"(--all)", "give --all"}).empty());
    CHECK(desk::page_text("(--bag)", {}) == "(\"{print.bags}\")");
    CHECK(desk::page_text("--bags", {}) == "--bags"); // another word
    CHECK(desk::page_text("--bag-like", {}) == "--bag-like");
}

TEST_CASE("an example stands without its option") {
    CHECK(desk::page_hints({"for example --to \"garage, basket 2\""}) ==
          Hints{"for example \"garage, basket 2\""});
    CHECK(desk::page_hints({"for example --all"}).empty());
}

TEST_CASE("of what a print says the page has the sentences that need no command line") {
    CHECK(desk::page_said(
              "note: the bags count as being in the freezer now. One that was not "
              "filled is taken back with: thawslip freezer never-filled C8H-YNW-87N. To "
              "try out a printer: --trial, which remembers nothing\n"
              "note: this is laid out for A4 paper. For other paper: --paper letter, or "
              "once for all: thawslip setup\n"
              "labels.pdf: 14 labels on 2 sheets; print at 100 %, not \"fit to page\"\n") ==
          "note: the bags count as being in the freezer now. To try out a printer: "
          "\"{print.trial}\", which remembers nothing\n"
          "note: this is laid out for A4 paper\n"
          "labels.pdf: 14 labels on 2 sheets; print at 100 %, not \"fit to page\"");
    CHECK(desk::page_said("").empty());
}

TEST_CASE("a message about a field does not call it by the file's word") {
    const KeyPath until{"package[2].cook[1].until"};
    CHECK(desk::page_text("\"75 quarks\" cannot be read as until: expected a unit", until) ==
          "\"75 quarks\" cannot be read: expected a unit");
    CHECK(desk::page_text("\"75\" cannot be read as hold: expected a unit", until) ==
          "\"75\" cannot be read as hold: expected a unit");
    CHECK(desk::page_text("\"x\" cannot be read as a date: expected one", KeyPath{}) ==
          "\"x\" cannot be read as a date: expected one");
    CHECK(desk::page_text("\"when\" cannot be read as when: a day", KeyPath{"when"}) ==
          "\"when\" cannot be read: a day");
}
