// thawslip setup: asked and answered from standard input, or told by options.

#include "support/command.h"
#include "support/terminal.h"

#include <doctest/doctest.h>
#include <filesystem>

namespace setup_test {

using namespace thawslip::test_support;
namespace fs = std::filesystem;

namespace {

struct Home {
    ScratchFolder folder;
    std::string settings = folder / "config/thawslip/settings.toml";

    /// With no printer anywhere, as a user whose desktop has `locale`.
    Outcome at(const std::string& locale, const std::string& command) const {
        return run(line_at(locale, command));
    }
    std::string line_at(const std::string& locale, const std::string& command) const {
        const auto here = shell_word(folder.path().string());
        return "cd " + here + "; env -u LC_ALL -u LC_PAPER -u LC_MESSAGES LANG=" + locale +
               " HOME=" + here + " XDG_CONFIG_HOME=" + here + "/config XDG_DATA_HOME=" + here +
               "/data CUPS_SERVER=/nonexistent/socket TZ=UTC SOURCE_DATE_EPOCH=1792245900 " +
               command;
    }
    Outcome operator()(const std::string& command, const std::string& locale = "C") const {
        return at(locale, THAWSLIP_PROGRAM " " + command);
    }
    Outcome answered(const std::string& answers, const std::string& arguments = "",
                     const std::string& locale = "C") const {
        write_file(folder / "answers", answers);
        return at(locale, THAWSLIP_PROGRAM " setup " + arguments + " < answers");
    }
};

bool has(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

} // namespace

TEST_CASE("where there is no home, settings are kept in a file that is named") {
    const ScratchFolder folder;
    const std::string nobody = "cd " + shell_word(folder.path().string()) +
                               "; env -u HOME -u XDG_CONFIG_HOME -u XDG_DATA_HOME "
                               "CUPS_SERVER=/nonexistent/socket " THAWSLIP_PROGRAM " setup --yes";
    const auto refused = run(nobody);
    CHECK(refused.status == 1);
    CHECK(has(refused.err, "error: there is no home folder to keep settings in\n"
                           "    hint: name a file with --settings FILE\n"));
    CHECK(run(nobody + " --settings own.toml").status == 0);
    CHECK(has(read_file(folder / "own.toml"), "paper "));
}

TEST_CASE_FIXTURE(Home, "empty answers take what the desktop's locale proposes") {
    const auto asked = answered("\n\n\n\n\n\n", "", "de_DE.UTF-8");
    CAPTURE(asked.err);
    CAPTURE(asked.out);
    REQUIRE(asked.status == 0);
    CHECK(has(asked.out, "Papier, letter oder a4 [a4, wie in de_DE üblich]"));
    CHECK(has(asked.out, "Bogen oder Rolle für Kochkarten"));
    CHECK(has(asked.out, "[de]"));
    CHECK(has(asked.err, "no printer is known here"));
    const auto text = read_file(settings);
    CHECK(has(text, "paper    = \"a4\""));
    CHECK(has(text, "language = \"de\""));
    CHECK(has(text, "# man thawslip") == false);
    CHECK((*this)("check " THAWSLIP_SOURCE_DIR "/samples/orchard-day.toml").status == 0);
}

TEST_CASE_FIXTURE(Home, "at a terminal, which shows what is typed, answers are not shown again") {
    if (!has_terminals()) {
        return;
    }
    const std::string answers = "a4\nen\n\n\n\n\n\n";
    const auto asked = run_at_terminal(line_at("C", THAWSLIP_PROGRAM " setup"), answers);
    CAPTURE(asked.screen);
    CHECK(asked.status == 0);
    CHECK(has(asked.screen, "Paper, letter or a4 [letter]: "));
    CHECK_FALSE(has(asked.screen, "Paper, letter or a4 [letter]: a4\n"));
    CHECK(has(read_file(settings), "paper    = \"a4\""));
    CHECK(has(answered(answers).out, "]: a4\n")); // and so they are in a file of what was said
}

TEST_CASE_FIXTURE(Home, "a new day asks at a terminal, and only where nothing else is said") {
    if (!has_terminals()) {
        return;
    }
    const auto line = [this](const std::string& more) {
        return line_at("C", THAWSLIP_PROGRAM " new " + more);
    };
    const auto asked = run_at_terminal(line("asked.toml"), "1\nPear and barley pot\n6\n2\n\n\n\n");
    CAPTURE(asked.screen);
    CHECK(asked.status == 0);
    CHECK(has(read_file(folder / "asked.toml"), "= \"Pear and barley pot\""));
    CHECK(run_at_terminal(line("told.toml --dishes 2"), "").status == 0);
    CHECK_FALSE(has(read_file(folder / "told.toml"), "Pear and barley pot"));
    CHECK(run(line("piped.toml") + " </dev/null").status == 0);
}

TEST_CASE_FIXTURE(Home, "answers are taken, and wrong ones told and asked again") {
    const auto asked = answered("A5\nA4\nklingon\nes,en\nno-such-stock\na4-2x7-99x38mm\n\n\nno\n");
    CAPTURE(asked.out);
    REQUIRE(asked.status == 0);
    CHECK(has(asked.out, "\"A5\" is no paper: expected letter or a4"));
    CHECK(has(asked.out, "\"klingon\" is not a language"));
    CHECK(has(asked.out, "Paper, letter or a4")); // until a language is set
    CHECK(has(asked.out, "Hoja o rollo para etiquetas"));
    CHECK(has(asked.out, "there is no stock called \"no-such-stock\""));
    const auto text = read_file(settings);
    CHECK(has(text, "[\"es\", \"en\"]"));
    CHECK(has(text, "stock    = \"a4-2x7-99x38mm\""));
    CHECK(has((*this)("labels " THAWSLIP_SOURCE_DIR "/samples/orchard-day.toml -o labels.pdf").out,
              "a4-2x7-99x38mm"));
}

TEST_CASE_FIXTURE(Home, "options say all, and nothing is asked") {
    const auto told = (*this)("setup --yes --paper a4 --language es --label-printer roll "
                              "--label-stock roll-100x150mm --label-dpi 203.2 --card-printer "
                              "office --list-printer office --ruler ruler.pdf");
    CAPTURE(told.err);
    REQUIRE(told.status == 0);
    const auto text = read_file(settings);
    CHECK(has(text, "printer  = \"roll\""));
    CHECK(has(text, "dpi      = 203.2"));
    CHECK(has(text, "printer  = \"office\""));
    CHECK(read_file(folder / "ruler.pdf").starts_with("%PDF-"));
    CHECK((*this)("foods stew").status == 0);
}

TEST_CASE_FIXTURE(Home, "paper and language that stand before the command are taken as said") {
    const auto told = (*this)("--paper a4 --language es setup --yes", "en_US.UTF-8");
    CAPTURE(told.err);
    REQUIRE(told.status == 0);
    const auto text = read_file(settings);
    CHECK(has(text, "paper    = \"a4\""));
    CHECK(has(text, "language = \"es\""));
}

TEST_CASE_FIXTURE(Home, "settings that are there are never written over without being asked") {
    REQUIRE((*this)("setup --yes --paper letter").status == 0);
    const auto before = read_file(settings);
    CHECK((*this)("setup --yes --paper a4").status == 1);
    CHECK(answered("no\n").status == 1);
    CHECK(answered("").status == 1);
    CHECK(read_file(settings) == before);
    REQUIRE(answered("yes\na4\n\n\n\n\n\n").status == 0);
    CHECK(read_file(settings) != before);
    CHECK(read_file(settings + ".before") == before);
    REQUIRE((*this)("setup --yes --overwrite").status == 0);
    CHECK(fs::exists(settings + ".before-2"));
}

TEST_CASE_FIXTURE(Home, "setup run again changes what it asks, and no other line of the file") {
    fs::create_directories(folder / "config/thawslip");
    const std::string before = "# the orchard crew's\n"
                               "paper = \"letter\" # as bought\n"
                               "kitchen_number = 7\n"
                               "people_at_risk = true\n"
                               "\n[finishing_cards]\nprinter = \"shed\"\ncopies = 2\n"
                               "\n[labels]\nstock = \"letter-2x5-4x2in\" # the usual one\n";
    write_file(settings, before);
    const auto again = (*this)("setup --yes --overwrite");
    CAPTURE(again.out);
    CHECK(again.status == 0);
    CHECK(read_file(settings) == before);
    CHECK(read_file(settings + ".before") == before);
    REQUIRE((*this)("setup --yes --overwrite --paper a4 --label-printer roll").status == 0);
    const auto text = read_file(settings);
    CAPTURE(text);
    CHECK(text.starts_with("# the orchard crew's\n"
                           "paper = \"a4\" # as bought\n"
                           "kitchen_number = 7\n"
                           "people_at_risk = true\n"
                           "\n[finishing_cards]\nprinter = \"shed\"\ncopies = 2\n"
                           "\n[labels]\nstock"));
    CHECK(has(text, "# the usual one\n"));
    CHECK(has(text, "= \"roll\"\n"));
}

TEST_CASE_FIXTURE(Home, "a stock of the cook's own that settings name is found from any folder") {
    const std::string sheet = THAWSLIP_SOURCE_DIR "/layouts/stock/a4-2x7-99x38mm.toml";
    fs::create_directories(folder / "elsewhere");
    fs::copy_file(sheet, folder / "own-sheet.toml");
    REQUIRE((*this)("setup --yes --label-stock own-sheet.toml").status == 0);
    const auto own = fs::canonical(folder / "own-sheet.toml").string();
    CHECK(has(read_file(settings), "stock    = \"" + own + "\""));
    fs::copy_file(sheet, folder / "config/thawslip/beside.toml");
    for (const std::string written : {"beside.toml", "~/own-sheet.toml"}) {
        CAPTURE(written);
        write_file(settings, "[labels]\nstock = \"" + written + "\"\n");
        const auto found = at("C", "sh -c 'cd elsewhere; exec " THAWSLIP_PROGRAM
                                   " check " THAWSLIP_SOURCE_DIR "/samples/orchard-day.toml'");
        CAPTURE(found.err);
        CHECK(found.status == 0);
    }
    write_file(settings, "[labels]\nstock = \"gone.toml\"\n");
    const auto gone = (*this)("check " THAWSLIP_SOURCE_DIR "/samples/orchard-day.toml");
    CHECK(gone.status == 1);
    CHECK(has(gone.err, "note: the settings name this stock: " + settings));
}

TEST_CASE_FIXTURE(Home, "what cannot be leaves nothing behind") {
    const auto unknown = (*this)("setup --yes --label-stock no-such-stock");
    CHECK(unknown.status == 1);
    CHECK(has(unknown.err, "error: there is no stock called \"no-such-stock\"; "));
    CHECK_FALSE(has(unknown.err, "error: error"));
    CHECK(has(unknown.err, "; nothing written\n"));
    CHECK((*this)("setup --yes --ruler ruler.doc").status == 2);
    CHECK((*this)("setup --yes --ruler ruler.txt").status == 2); // a drawing has no such form
    CHECK((*this)("setup --yes --label-dpi many").status == 2);
    CHECK(answered("a4\n").status == 1); // the answers end too soon
    CHECK_FALSE(fs::exists(settings));
}

TEST_CASE_FIXTURE(Home, "settings that cannot be read are put aside by setup, not in its way") {
    fs::create_directories(folder / "config/thawslip");
    write_file(settings, "dpi = 203.2\n");
    CHECK((*this)("foods").status == 1);
    const auto anew = (*this)("setup --yes --overwrite");
    CHECK(anew.status == 0);
    CHECK(has(anew.err, "note: " + settings + " could not be read as settings: dpi "));
    CHECK(has(anew.out, settings + ".before: the settings of before"));
    CHECK((*this)("foods").status == 0);
}

TEST_CASE_FIXTURE(Home, "the first print says which paper it took, and why") {
    const std::string day = THAWSLIP_SOURCE_DIR "/samples/orchard-day.toml";
    const auto british = (*this)("labels " + day + " -o labels.pdf", "en_GB.UTF-8");
    CHECK(has(british.out, "a4-2x4-99x68mm"));
    CHECK(has(british.err, "laid out for A4 paper (a4-2x4-99x68mm), as the locale en_GB has it"));
    CHECK_FALSE(has((*this)("labels " + day + " -o labels.pdf", "en_GB.UTF-8").err, "laid out"));
    // Printed again where the locale is another, it is the same.
    const auto again = (*this)("reprint --printed 2026-10-17 -o again.pdf", "en_US.UTF-8");
    CHECK(read_file(folder / "again.pdf") == read_file(folder / "labels.pdf"));
    const auto other = (*this)("--archive other.db labels " + day + " -o other.pdf");
    CHECK(has(other.err, "US Letter paper (letter-2x5-4x2in), for neither settings nor locale"));
    const auto named =
        (*this)("--archive third.db labels " + day + " --stock roll-100x150mm -o other.pdf");
    CHECK_FALSE(has(named.err, "laid out for"));
}

} // namespace setup_test
