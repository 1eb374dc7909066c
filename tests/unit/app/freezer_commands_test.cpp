// What a cook reads of the freezer, line by line.

#include "app/archive_commands.h"
#include "support/command.h"
#include "support/variable.h"

#include <doctest/doctest.h>
#include <iostream>
#include <sstream>

namespace freezer_commands_test {

using namespace thawslip;
using namespace thawslip::test_support;
using app::AnswerAs;
using app::ExitStatus;
using app::WhichOfSeveral;
using archive::State;

namespace {

const std::string orchard = R"([day]
made = 2026-10-17

[[package]]
dish = "Barley stew"
servings = 4
bags = 2
food = "soup or stew"
use_by = 2026-12-10
weight = "1.5 kg"
thickness = "35 mm"
place = "barn"
contains = ["celery"]
may_contain = ["walnut"]
thaw.method = "refrigerator"
cook = {in = "pot", time = "30 min", until = "74 °C"}

[[package.finish]]
add = "200 ml cream"
when = "at the start"

[[package]]
dish = "Plum compote"
servings = 2
food = "fruit"
weight = "250 g"
contains = []
thaw.method = "cold water"
use_by = 2026-10-30

[[package]]
dish = "Celeriac gratin"
servings = 3
food = "cooked vegetables"
contains = []
use_by = 2026-12-20
thaw.method = "from frozen"
cook = {in = "oven", time = "50 min", until = "74 °C"}
)";

/// A freezer with four bags, on 2026-11-04 at 11:00.
struct Freezer {
    ScratchFolder folder;
    Variable shipped{"THAWSLIP_DATA", THAWSLIP_SOURCE_DIR};
    Variable clock{"SOURCE_DATE_EPOCH", "1792245906"}; // 2026-10-17
    Variable zone{"TZ", "UTC"};
    app::Settings settings;
    std::ostringstream out = {};
    std::ostringstream err = {};

    Freezer() {
        settings.archive = folder / "archive.db";
        settings.paper = "a4";
        write_file(folder / "day.toml", orchard);
        app::PrintOptions options;
        options.days = {folder / "day.toml"};
        options.output = folder / "labels.pdf";
        REQUIRE(print_days(app::What::Labels, options, settings, {out, err}) == ExitStatus::Done);
        ::setenv("SOURCE_DATE_EPOCH", "1793790000", 1);
    }
    /// What a command says, and all that it warns of.
    template <class Command>
    std::string said(const Command& command) {
        out.str("");
        err.str("");
        status = command(app::Console{out, err});
        return err.str() + out.str();
    }
    std::string list(const service::FreezerQuestion& question = {},
                     const std::optional<std::string>& without = {}) {
        return said([&](app::Console console) {
            return freezer_list({question, without}, AnswerAs::Words, settings, console);
        });
    }
    std::string set(const std::string& typed, State state,
                    WhichOfSeveral which = WhichOfSeveral::Ask) {
        return said([&](app::Console console) {
            return freezer_set({typed}, which, state, settings, console);
        });
    }
    std::string move(const std::string& typed, const std::string& place) {
        return said([&](app::Console console) {
            return freezer_move({typed}, WhichOfSeveral::Oldest, place, settings, console);
        });
    }
    std::string undo() {
        return said([&](app::Console console) { return freezer_undo(settings, console); });
    }
    std::string history(const std::string& typed) {
        return said([&](app::Console console) {
            return freezer_history({typed}, AnswerAs::Words, settings, console);
        });
    }
    std::string read(const std::string& what, AnswerAs answer = AnswerAs::Words) {
        return said([&](app::Console console) {
            return app::read(what, WhichOfSeveral::Oldest, answer, settings, console);
        });
    }
    /// The same of what a scanner types.
    std::string scan(const std::string& typed) {
        std::istringstream in{typed};
        auto* before = std::cin.rdbuf(in.rdbuf());
        std::cin.clear();
        auto text = read("-");
        std::cin.rdbuf(before);
        std::cin.clear();
        return text;
    }
    std::string next(const service::NextQuestion& question) {
        return said([&](app::Console console) {
            return freezer_next({question}, AnswerAs::Words, settings, console);
        });
    }
    ExitStatus status = ExitStatus::Done;
};

const std::string celeriac =
    "8ZH-ZQR-87X  Celeriac gratin  serves   3            use by  2026-12-20  46 days left\n"
    "             no allergen is named on its label\n";

bool says(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

} // namespace

TEST_CASE_FIXTURE(Freezer,
                  "the list has a line for each bag, what is in them, and what it comes to") {
    CHECK(
        list() ==
        "S39-824-87X  Plum compote     serves   2     250 g  use by  2026-10-30  5 days past\n"
        "             no allergen is named on its label\n"
        "JP2-JWW-87D  Barley stew      serves   4    1.5 kg  use by  2026-12-10  36 days left  "
        "barn\n"
        "2NE-3XM-876  Barley stew      serves   4    1.5 kg  use by  2026-12-10  36 days left  "
        "barn\n"
        "             contains celery; may contain tree nuts (walnut); added on cook day: milk\n" +
            celeriac +
            "\nBarley stew: 2 bags, 8 servings, 3.0 kg\nCeleriac gratin: 1 bag, 3 servings\n"
            "Plum compote: 1 bag, 2 servings, 250 g\nin all: 4 bags, 13 servings, at least "
            "3.3 kg\n1 bag past the date on the label; the rules of your local food authority "
            "come first\n");
    CHECK(status == ExitStatus::Done);
    CHECK(list({.words = {"gratin"}}) == celeriac + "\nCeleriac gratin: 1 bag, 3 servings\n");
    CHECK(list({.words = {"medlar"}}) == "no bag in the freezer is called that\n");
    for (const std::string dish : {"barley", "plum", "celeriac"}) {
        set(dish, State::Eaten, WhichOfSeveral::All);
    }
    CHECK(list() == "the freezer is empty, as far as the archive knows\n");
}

TEST_CASE_FIXTURE(Freezer, "what is out, and where it was moved, is told in its line") {
    CHECK(set("compote", State::Out) == "S39-824-87X Plum compote, bag 1 of 1: out\n");
    CHECK(move("barley", "shed") == "JP2-JWW-87D Barley stew, bag 1 of 2: shed, was barn\n");
    CHECK(move("barley", "shed") == "JP2-JWW-87D Barley stew, bag 1 of 2: shed\n");
    CHECK(move("celeriac", "shed") == "8ZH-ZQR-87X Celeriac gratin, bag 1 of 1: shed\n");
    const auto all = list({.words = {}, .gone_too = true});
    CHECK(says(all, "use by  2026-10-30  out since 2026-11-04\n"));
    CHECK(says(all, "36 days left  shed\n2NE"));
    CHECK_FALSE(says(all, "past the date")); // it is out
    CHECK(says(all, "\nOf these, in the freezer:\nBarley stew: 2 bags"));
    CHECK(says(all, "in all: 3 bags, 11 servings, at least 3.0 kg\n"));
}

TEST_CASE_FIXTURE(Freezer,
                  "a guest is told which bags name it, which nobody knows, and which do not") {
    const auto celery = list({}, "celery");
    CHECK(celery.starts_with(
        "Named (celery), so not for this guest: 3 bags\n"
        "JP2-JWW-87D  Barley stew      serves   4    1.5 kg  use by  2026-12-10  36 days left  "
        "barn\n"
        "2NE-3XM-876  Barley stew      serves   4    1.5 kg  use by  2026-12-10  36 days left  "
        "barn\n"
        "             celery: contains celery\n"
        "8ZH-ZQR-87X  Celeriac gratin  serves   3            use by  2026-12-20  46 days left\n"
        "             celery: its description says Celeriac gratin\n"
        "\nNo label names it (celery): 1 bag\n"
        "S39-824-87X  Plum compote  serves   2     250 g  use by  2026-10-30  5 days past\n"
        "             no allergen is named on its label\n"
        "\nThat no label names it is no promise that it is not there"));
    CHECK(says(list({}, "milk"), "milk: gets on cook day 200 ml cream\n"));
    CHECK(says(list({}, "hazelnut"), "hazelnut: names another of that group, ask: walnut\n"));
    CHECK(says(list({}, "walnut"), "walnut: may contain walnut\n"));
    CHECK(says(list({}, "no nuts"), "error: "));
    CHECK(status == ExitStatus::Usage);
}

TEST_CASE_FIXTURE(Freezer,
                  "what was noted is told with its time, and what was taken back says so") {
    move("barley", "shed");
    CHECK(undo() == "JP2-JWW-87D Barley stew, bag 1 of 2: no longer moved to shed (2026-11-04 "
                    "11:00); again frozen, barn\n");
    set("compote", State::Eaten);
    CHECK(history("barley") ==
          "JP2-JWW-87D Barley stew, bag 1 of 2, made 2026-10-17, use by 2026-12-10, barn\n"
          "    2026-10-17 14:05  labelled\n"
          "    2026-11-04 11:00  moved to shed (taken back)\n"
          "    2026-11-04 11:00  the change before was taken back\n"
          "2NE-3XM-876 Barley stew, bag 2 of 2, made 2026-10-17, use by 2026-12-10, barn\n"
          "    2026-10-17 14:05  labelled\n");
    CHECK(history("compote") ==
          "S39-824-87X Plum compote, bag 1 of 1, made 2026-10-17, use by 2026-10-30\n"
          "    2026-10-17 14:05  labelled\n    2026-11-04 11:00  eaten\n");
    CHECK(says(history("medlar"), "error: no bag is called \"medlar\"\n"));
    CHECK(status == ExitStatus::Refused);
    CHECK(undo() == "S39-824-87X Plum compote, bag 1 of 1: no longer eaten (2026-11-04 11:00); "
                    "again frozen\n");
    CHECK(says(undo(), "error: there is nothing to undo"));
    CHECK(status == ExitStatus::Refused);
}

TEST_CASE_FIXTURE(Freezer,
                  "what to eat next is told with its bags and how each is thawed, and the rest") {
    service::NextQuestion question;
    question.count = 5;
    const auto menu = next(question);
    CHECK(menu ==
          "Thu 5 Nov 2026, 18:30  Celeriac gratin, bag 8ZH-ZQR-87X, serves 3, use by 2026-12-20\n"
          "    cooked from frozen: do not thaw\n"
          "Sun 8 Nov 2026, 18:30  Barley stew, bag JP2-JWW-87D (barn), serves 4, use by "
          "2026-12-10\n"
          "    into the refrigerator: Thu 5 Nov 2026, 07:00 (look from 40 h, allow 83 h); cook "
          "within 3 days of being thawed\n"
          "nothing can be thawed as its label says by Fri 6 Nov 2026, 18:30; thawslip plan names "
          "faster ways\n"
          "nothing can be thawed as its label says by Sat 7 Nov 2026, 18:30; thawslip plan names "
          "faster ways\n"
          "1 day more: every dish that serves 2 was proposed once\n"
          "not proposed: 1 bag past the date on the label, see thawslip freezer list; --past "
          "proposes those past a best-by date\n"
          "Local food-safety rules come first.\n");
    question.serves = 6;
    const auto six = next(question);
    CHECK(says(six, "Barley stew, bags JP2-JWW-87D (barn), 2NE-3XM-876 (barn), serves 8, "));
    CHECK(says(six, "not proposed, all bags together do not serve 6: Celeriac gratin\n"));
    question.serves = 20;
    const auto none = next(question);
    CHECK(says(none, "do not serve 20: Barley stew; Celeriac gratin\n"));
    CHECK_FALSE(says(none, "Local food-safety rules"));
    CHECK_FALSE(says(none, "the freezer is empty"));
}

TEST_CASE_FIXTURE(Freezer,
                  "a meal after the date on the label is told with the bags that would have been") {
    ::setenv("SOURCE_DATE_EPOCH", "1796900000", 1); // 2026-12-10
    service::NextQuestion question;
    question.count = 2;
    const auto menu = next(question);
    CAPTURE(menu);
    CHECK(says(menu, "Fri 11 Dec 2026, 18:30  Celeriac gratin"));
    CHECK(says(menu, "not proposed for Sat 12 Dec 2026, 18:30, whose day comes after the date on "
                     "the label: Barley stew (use by 2026-12-10)\n"));
    CHECK(says(menu, "2 bags cannot be eaten in these days before the date on the label\n"));
}

TEST_CASE_FIXTURE(Freezer,
                  "a bag that is read is told in full, and then what may be done with it") {
    const auto stew = read("barley");
    CAPTURE(stew);
    CHECK(status == ExitStatus::Done);
    CHECK(stew.starts_with("next: thawslip plan JP2-JWW-87D --eat \"DATE TIME\"\nnext: thawslip "
                           "freezer out JP2-JWW-87D  # once it is taken out\nBarley stew  "
                           "(JP2-JWW-87D)\nServes 4\n"));
    CHECK(says(stew, "\nUse by 10 Dec 2026\n"));
    CHECK(says(read("S39-824-87X"), "Use by 30 Oct 2026 - past its use-by date by 5 days\n"));
    set("S39-824-87X", State::Eaten);
    const auto gone = read("S39-824-87X");
    CHECK(gone.starts_with("caution: S39-824-87X: this bag is known as eaten (2026-11-04)\n"));
    CHECK_FALSE(says(gone, "next: "));
    CHECK(says(read("medlar"), "    hint: there is no photograph of that name either\n"));
    CHECK(status == ExitStatus::Refused);
    CHECK_FALSE(says(read("XPE-Z8C-87Z"), "no photograph")); // an id
    CHECK(status == ExitStatus::Refused);
    const auto in_json = read("celeriac", AnswerAs::Json);
    CHECK(in_json.starts_with("{"));
    CHECK_FALSE(says(in_json, "next: "));
}

TEST_CASE_FIXTURE(Freezer, "what a scanner types is read, several with a line between them") {
    const auto both = scan("JP2-JWW-87D\n\nS39-824-87X\n");
    CAPTURE(both);
    CHECK(status == ExitStatus::Done);
    CHECK(says(both, "next: thawslip plan JP2-JWW-87D, S39-824-87X --eat "));
    CHECK(says(both, "# once it is taken out\nBarley stew  (JP2-JWW-87D)\n"));
    CHECK(says(both, "Local food-safety rules come first.\n\nPlum compote  (S39-824-87X)\n"));
    CHECK(both.ends_with("Local food-safety rules come first.\n"));
    CHECK(scan("") == "standard input: error: there is no text\n");
    CHECK(status == ExitStatus::Refused);
    CHECK(scan("\n\n\n\n") == "standard input: error: there is no text\n");
    const std::size_t most = std::size_t{64} * 1024;
    CHECK(scan(std::string(most + 1, 'x')) ==
          "standard input: error: this is more than any code holds\n");
    CHECK_FALSE(says(scan(std::string(most, 'x')), "more than any code holds"));
}

TEST_CASE_FIXTURE(Freezer,
                  "kinds of food are told with what holds for each, or that none comes near") {
    const auto told = [this](const std::string& words) {
        return said([&](app::Console console) {
            return app::foods(words, AnswerAs::Words, settings, console);
        });
    };
    const auto mince = told("ground meat");
    CAPTURE(mince);
    // FoodSafety.gov, Cold Food Storage Chart: 3 to 4 months frozen, 1 to 2 days chilled; Cook to a
    // Safe Minimum Internal Temperature: 160 °F.
    CHECK(says(mince,
               "raw ground meat\n    frozen 3 to 4 months; chilled 1 to 2 days; once thawed 1 "
               "to 2 days; at least 160 °F (71 °C)\n    frozen:  list \"us\", row "
               "\"Hamburger, ground beef, veal, pork, lamb, and mixtures\" (FoodSafety.gov"));
    CHECK(says(mince, "\n    chilled: list \"us\", row \"Hamburger, "));
    CHECK(says(mince, "\n    words:   "));
    CHECK(
        mince.ends_with("Months are for best quality at -18 °C (0 °F), the low end is printed; the "
                        "rules of your food authority come first.\n"));
    CHECK(says(told("ham salad"), "ham salad\n    does not freeze well (FoodSafety.gov"));
    const auto all = told("");
    CHECK(says(all, ", …\n")); // no more than fit a few lines
    CHECK(told("qqqqqqqq") == "error: no kind of food comes near \"qqqqqqqq\"\n    hint: thawslip "
                              "foods names them all\n");
    CHECK(status == ExitStatus::Refused);
}

TEST_CASE_FIXTURE(Freezer, "a dinner is planned by the bags of the freezer, with a calendar") {
    app::PlanOptions options;
    options.days = {"barley"};
    options.eat = "2026-11-08 18:30";
    options.calendar = folder / "plan.ics";
    const auto planned = [&] {
        return said([&](app::Console console) { return plan(options, settings, console); });
    };
    const auto text = planned();
    CAPTURE(text);
    CHECK(status == ExitStatus::Done);
    CHECK(says(text, "Thu 5 Nov 2026\n  07:00  Move 1 bag of Barley stew"));
    CHECK(
        says(text, "\nSun 8 Nov 2026\n  18:00  Start cooking 1 bag of Barley stew: pot, 30 min\n"));
    CHECK(read_file(options.calendar).starts_with("BEGIN:VCALENDAR\r\n"));
    options.calendar.clear();
    options.bags = 2;
    CHECK(says(planned(), "Move 2 bags of Barley stew"));
    options.eat = "2026-11-04 18:30";
    CHECK(says(planned(), "Too late for Barley stew as planned."));
    CHECK(status == ExitStatus::Done); // there are faster ways
    options.eat = "soon";
    CHECK(says(planned(), "error: "));
    CHECK(status == ExitStatus::Usage);
    options.eat = "2026-11-08 18:30";
    options.days = {"medlar"};
    CHECK(says(planned(), "error: no bag in the freezer is called \"medlar\"\n"));
    CHECK(status == ExitStatus::Refused);
}

TEST_CASE("where nothing was printed yet, that is told, and nothing can be noted") {
    const ScratchFolder folder;
    app::Settings settings;
    settings.archive = folder / "archive.db";
    std::ostringstream out;
    std::ostringstream err;
    const app::Console console{out, err};
    const auto none = "there is no archive at " + settings.archive +
                      ": nothing has been printed "
                      "yet\n";
    CHECK(freezer_list({}, AnswerAs::Words, settings, console) == ExitStatus::Done);
    CHECK(freezer_next({}, AnswerAs::Words, settings, console) == ExitStatus::Done);
    CHECK(out.str() == none + none);
    CHECK(freezer_set({"stew"}, WhichOfSeveral::All, State::Out, settings, console) ==
          ExitStatus::Refused);
    CHECK(freezer_move({"stew"}, WhichOfSeveral::All, "barn", settings, console) ==
          ExitStatus::Refused);
    CHECK(freezer_renamed("stew", "pot", settings, console) == ExitStatus::Refused);
    CHECK(freezer_undo(settings, console) == ExitStatus::Refused);
    CHECK(freezer_history({"stew"}, AnswerAs::Words, settings, console) == ExitStatus::Refused);
    CHECK(files_in(folder.path()).empty());
    std::string errors;
    for (int i = 0; i < 5; ++i) {
        errors += "error: " + none;
    }
    CHECK(err.str() == errors);
}

} // namespace freezer_commands_test
