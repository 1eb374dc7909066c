// What setup asks, and what becomes of the settings that were there.

#include "app/commands/setup_command.h"
#include "app/commands/setup_questions.h"
#include "support/command.h"
#include "support/variable.h"

#include <doctest/doctest.h>
#include <filesystem>
#include <sstream>

namespace setup_questions_test {

using namespace thawslip;
using namespace thawslip::test_support;
using app::Answer;
using app::Echo;
using app::Questions;

namespace {

/// Somebody who answers, and what is shown.
struct Asked {
    std::istringstream in;
    std::ostringstream out = {};
    Questions questions;

    explicit Asked(const std::string& answers, Echo echo = Echo::No, bool takes_proposals = false)
        : in{answers}, questions{in, out, takes_proposals, echo, "en"} {}

    std::string ask(const std::string& told = {}) {
        return questions.ask({"Paper", "a4", "as you said"}, told,
                             [](const std::string& text) -> Answer {
                                 if (text == "a9") {
                                     return Failure{std::string{"a9 is too small"}};
                                 }
                                 return text + "!";
                             });
    }
};

} // namespace

TEST_CASE("an answer is taken, an empty one takes what is proposed, a wrong one is asked again") {
    Asked asked{"letter\n\na9\nlegal\n"};
    CHECK(asked.ask() == "letter!");
    CHECK(asked.ask() == "a4!");
    CHECK(asked.ask() == "legal!");
    const std::string question = "Paper [a4, as you said]: ";
    CHECK(asked.out.str() == question + question + question + "a9 is too small\n" + question);
    CHECK_THROWS_AS(asked.ask(), app::WrongAnswer); // the answers end
}

TEST_CASE("where no terminal shows what is typed, answers are shown behind their questions") {
    Asked asked{"letter\n\n", Echo::Yes};
    asked.ask();
    asked.ask();
    CHECK(asked.out.str() == "Paper [a4, as you said]: letter\nPaper [a4, as you said]: \n");
}

TEST_CASE("what is told, or taken as proposed, is not asked, and must be right") {
    Asked asked{"letter\n"};
    CHECK(asked.ask("legal") == "legal!");
    CHECK_THROWS_WITH_AS(asked.ask("a9"), "a9 is too small", app::WrongAnswer);
    CHECK(asked.out.str() == "");
    Asked proposed{"", Echo::No, true};
    CHECK(proposed.ask() == "a4!");
    CHECK(proposed.ask("legal") == "legal!");
    CHECK(proposed.out.str() == "");
}

TEST_CASE("yes and no are understood in each language, and nothing else is") {
    for (const std::string yes : {"yes", "y", "sí", "si", "s", "ja", "j", "YES"}) {
        CAPTURE(yes);
        CHECK(Asked{yes + "\n"}.questions.agrees("Sure", false));
    }
    for (const std::string no : {"no", "n", "nein", "No"}) {
        CAPTURE(no);
        CHECK_FALSE(Asked{no + "\n"}.questions.agrees("Sure", true));
    }
    CHECK(Asked{"\n"}.questions.agrees("Sure", true));
    CHECK_FALSE(Asked{"\n"}.questions.agrees("Sure", false));
    Asked perhaps{"perhaps\nyes\n"};
    CHECK(perhaps.questions.agrees("Sure", false));
    CHECK(perhaps.out.str().find("expected yes or no\n") != std::string::npos);
}

TEST_CASE("of several names one is meant by itself or by its number") {
    const std::vector<std::string> names{"kitchen", "office"};
    CHECK(app::numbered(names) == "1 kitchen, 2 office");
    CHECK(app::numbered({}) == "");
    CHECK(app::named_by("office", names) == "office");
    CHECK(app::named_by("1", names) == "kitchen");
    CHECK(app::named_by("2", names) == "office");
    for (const std::string none : {"0", "3", "", "kitch", "1 "}) {
        CHECK(app::named_by(none, names) == std::nullopt);
    }
}

TEST_CASE("dots are taken at both ends of their range, and not beyond") {
    CHECK(app::dots_in("72") == 72.0);
    CHECK(app::dots_in("203.2") == 203.2);
    CHECK(app::dots_in("4800") == 4800.0);
    CHECK(app::dots_fault("300") == "");
    for (const std::string none : {"71.9", "4800.1", "many", "", "nan"}) {
        CAPTURE(none);
        CHECK_FALSE(app::dots_in(none));
        CHECK(app::dots_fault(none) ==
              "\"" + none + "\" is no number of dots per inch from 72 to 4800");
    }
}

TEST_CASE("settings of before are put aside under a name that is free, never over another") {
    const ScratchFolder folder;
    const Variable shipped{"THAWSLIP_DATA", THAWSLIP_SOURCE_DIR};
    const Variable server{"CUPS_SERVER", folder / "no-server"};
    app::SetupOptions options;
    options.file = folder / "mine/settings.toml";
    options.takes_proposals = true;
    options.paper = "A4";
    options.language = "de, es";
    std::istringstream nobody;
    std::ostringstream out;
    std::ostringstream err;
    const auto set_up = [&] { return app::setup(options, {}, nobody, {out, err}); };
    CHECK(set_up() == app::ExitStatus::Done);
    const auto first = read_file(options.file);
    CHECK(first.find("\npaper    = \"a4\"") != std::string::npos);
    CHECK(first.find("\nlanguage = [\"de\", \"es\"]") != std::string::npos);
    CHECK(set_up() == app::ExitStatus::Refused); // it is there
    CHECK(err.str().find("already exists; nothing written\n") != std::string::npos);
    options.overwrite = app::Overwrite::Yes;
    for (const std::string aside : {".before", ".before-2", ".before-3"}) {
        const auto before = read_file(options.file);
        options.paper = options.paper == "letter" ? "a4" : "letter";
        CHECK(set_up() == app::ExitStatus::Done);
        CHECK(read_file(options.file + aside) == before);
        CHECK(out.str().find(options.file + aside + ": the settings of before") !=
              std::string::npos);
    }
    CHECK(read_file(options.file + ".before") == first);
    options.paper = "a9";
    CHECK(set_up() == app::ExitStatus::Refused);
    CHECK(
        err.str().ends_with("error: \"a9\" is no paper: expected letter or a4; nothing written\n"));
    CHECK(files_in(folder / "mine").size() == 4);
}

} // namespace setup_questions_test
