// The program as somebody uses it who is tired, or means harm: a clear answer, the right exit
// status, nothing half-written.

#include "pages.h"

#include <doctest/doctest.h>
#include <filesystem>
#include <sys/stat.h>

namespace misuse_test {

using namespace thawslip::test_support;
namespace fs = std::filesystem;

namespace {

const std::string sample = THAWSLIP_SOURCE_DIR "/samples/orchard-day.toml";

struct Workplace {
    ScratchFolder folder;
    std::string day = folder / "day.toml";
    std::string pdf = folder / "labels.pdf";

    Workplace() { write_file(day, read_file(sample)); }

    Outcome labels(const std::string& more) const {
        return run_thawslip("labels " + shell_word(day) + " " + more);
    }
    void replace(const std::string& from, const std::string& to) const {
        auto text = read_file(day);
        const auto at = text.find(from);
        REQUIRE(at != std::string::npos);
        write_file(day, text.replace(at, from.size(), to));
    }
    /// Files in the folder beside the day: a refusal must leave none.
    std::size_t left_behind() const {
        std::size_t count = 0;
        for (const auto& entry : fs::directory_iterator{folder.path()}) {
            count += entry.path().filename() != "day.toml" ? 1U : 0U;
        }
        return count;
    }
};

bool says(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

/// As many allergens as a package may contain, each of some words, under this key.
std::string twenty_allergens(const std::string& key, int words) {
    std::string list = key + " = [";
    for (int i = 0; i < 20; ++i) {
        list += "\"leaf" + std::to_string(i);
        for (int word = 0; word < words; ++word) {
            list += " garden";
        }
        list += "\", ";
    }
    return list + "]";
}

} // namespace

TEST_CASE_FIXTURE(Workplace, "a wrong command line is told and leaves with 2") {
    CHECK(run_thawslip("").status == 2);
    CHECK(labels("").status == 2);
    CHECK(labels("-o " + shell_word(folder / "labels.doc")).status == 2);
    const auto unknown = run_thawslip("lables x.toml");
    CHECK(unknown.status == 2);
    CHECK(says(unknown.err, "there is no command \"lables\""));
    CHECK(says(unknown.err, "did you mean \"labels\"?"));
    CHECK(left_behind() == 0);
}

TEST_CASE_FIXTURE(Workplace, "what was measured for one paper says nothing of a roll") {
    const auto settings = folder / "settings.toml";
    const auto printed = [&](const std::string& measured) {
        write_file(settings, measured);
        const auto said = labels("--stock roll-100x150mm --no-archive --settings " +
                                 shell_word(settings) + " -o " + shell_word(pdf));
        CHECK(said.status == 0);
        auto bytes = read_file(pdf);
        fs::remove(pdf);
        return std::pair{said.err, std::move(bytes)};
    };
    const auto unmeasured = printed("");
    CHECK_FALSE(says(unmeasured.first, "printer"));
    for (const std::string paper : {"paper = \"a4\"", "sheet = [\"150 mm\", \"100 mm\"]"}) {
        CAPTURE(paper);
        CHECK(printed("[[printer]]\n" + paper +
                      "\nunprinted = [\"9 mm\", \"9 mm\", \"9 mm\", \"9 mm\"]\n") == unmeasured);
    }
    const auto measured = printed("[[printer]]\nsheet = [\"100 mm\", \"150 mm\"]\n"
                                  "unprinted = [\"9 mm\", \"9 mm\", \"9 mm\", \"9 mm\"]\n");
    CHECK(measured.first != unmeasured.first); // then the edge is told of
}

TEST_CASE_FIXTURE(Workplace, "a refused day leaves with 1 and writes nothing") {
    replace("method = \"refrigerator\"", "method = \"refridgerator\"");
    const auto outcome = labels("-o " + shell_word(pdf));
    CHECK(outcome.status == 1);
    CHECK(says(outcome.err, day + ":"));
    CHECK(says(outcome.err, "did you mean \"refrigerator\"?"));
    CHECK(left_behind() == 0);
}

TEST_CASE_FIXTURE(Workplace, "a character that no face has is named with its field and place") {
    replace("Squash and red lentil stew", "Squash \xF0\x9F\x8D\x90 stew");
    const auto outcome = labels("-o " + shell_word(pdf));
    CHECK(outcome.status == 1);
    CHECK(says(outcome.err, day + ":9:13: error: U+1F350"));
    CHECK(says(outcome.err, "in dish of"));
    CHECK(left_behind() == 0);
}

TEST_CASE_FIXTURE(Workplace, "a right-to-left script is refused, never set wrongly") {
    replace("Squash and red lentil stew", "\xD9\x85\xD8\xB1\xD9\x82");
    const auto outcome = labels("-o " + shell_word(pdf));
    CHECK(outcome.status == 1);
    CHECK(says(outcome.err, "right-to-left"));
}

TEST_CASE_FIXTURE(Workplace,
                  "words that cannot fit are refused with area, millimetres and stocks") {
    replace("contains  = [\"celery\"]",
            twenty_allergens("contains", 4)); // allergens are never said away
    const auto outcome = labels("-o " + shell_word(pdf));
    CHECK(outcome.status == 1);
    CHECK(says(outcome.err, "the label of \"Squash and red lentil stew\" does not fit"));
    CHECK(says(outcome.err, " mm too much at the smallest type allowed"));
    CHECK(says(outcome.err, "most of it is \"notes\""));
    CHECK(says(outcome.err, "or print on \""));
    CHECK(left_behind() == 0);
}

TEST_CASE_FIXTURE(Workplace, "what no shipped stock would take is said to fit none") {
    replace("contains  = [\"celery\"]", twenty_allergens("contains", 26));
    const auto mine = folder / "mine.toml"; // in letters for the far end of the room
    auto huge = read_file(THAWSLIP_SOURCE_DIR "/layouts/label/wide.toml");
    const std::string usual = R"(["1.2 mm", "1.5 mm", "2.4 mm"])";
    for (auto at = huge.find(usual); at != std::string::npos; at = huge.find(usual)) {
        huge.replace(at, usual.size(), R"(["9 mm", "9 mm", "9 mm"])");
    }
    write_file(mine, huge);
    const auto outcome = labels("--layout " + shell_word(mine) + " -o " + shell_word(pdf));
    fs::remove(mine);
    CAPTURE(outcome.err);
    CHECK(outcome.status == 1);
    CHECK(says(outcome.err, "the label of \"Squash and red lentil stew\" does not fit"));
    CHECK(says(outcome.err, "hint: shorten the words: no shipped stock would take them\n"));
    const auto of_the_first = outcome.err.substr(0, outcome.err.find("Apple and sage"));
    CHECK_FALSE(says(of_the_first, "print on"));
    CHECK(left_behind() == 0);
}

TEST_CASE_FIXTURE(Workplace, "an unknown stock is told with the nearest") {
    const auto outcome = labels("--stock letter-2x5-4x2inn -o " + shell_word(pdf));
    CHECK(outcome.status == 1);
    CHECK(says(outcome.err, "did you mean \"letter-2x5-4x2in\"?"));
}

TEST_CASE_FIXTURE(Workplace, "the system's failures leave with 3 and nothing half-written") {
    CHECK(run_thawslip("labels " + shell_word(day) + " -o - > /dev/full").status == 3);
    CHECK(labels("-o " + shell_word((folder / "no-such-folder") + "/labels.pdf")).status == 3);
    REQUIRE(::mkfifo((folder / "pipe.pdf").c_str(), 0600) == 0);
    CHECK(labels("-o " + shell_word(folder / "pipe.pdf")).status == 3);
    fs::remove(folder / "pipe.pdf");
    fs::create_directory(folder / "folder.pdf");
    CHECK(labels("-o " + shell_word(folder / "folder.pdf")).status == 3);
    fs::remove(folder / "folder.pdf");
    CHECK(left_behind() == 0);
}

TEST_CASE_FIXTURE(Workplace, "the day's own file is never written over") {
    const auto disguised = folder / "day.pdf";
    fs::create_hard_link(day, disguised);
    const auto before = read_file(day);
    const auto outcome = labels("-o " + shell_word(disguised));
    CHECK(outcome.status == 1);
    CHECK(read_file(day) == before);
    CHECK(run_thawslip("new " + shell_word(day)).status == 1);
    CHECK(read_file(day) == before);
}

TEST_CASE_FIXTURE(Workplace, "an older print is replaced whole") {
    write_file(pdf, "old");
    CHECK(labels("-o " + shell_word(pdf)).status == 0);
    CHECK(read_file(pdf).substr(0, 5) == "%PDF-");
    CHECK(left_behind() == 1);
}

TEST_CASE_FIXTURE(Workplace,
                  "a half-used sheet is used up: first cell and skipped cells stay empty") {
    CHECK(labels("--first-cell 3 --skip 5 6 -o " + shell_word(pdf)).status == 0);
    const auto pages = read_pages(pdf);
    CHECK(pages.size() == 2);
    // Cells of 4 x 2 in from 5/32 in and 1/2 in on: 1, 2, 5 and 6 have no word.
    for (const auto& word : pages.front().words) {
        const int row = static_cast<int>((word.top - 36) / 144);
        CHECK(row != 0);
        CHECK(row != 2);
    }
    CHECK(labels("--first-cell 11 -o " + shell_word(pdf)).status == 1);
    CHECK(labels("--first-cell 0 -o " + shell_word(pdf)).status == 1);
}

TEST_CASE_FIXTURE(Workplace, "a new day can be checked and printed as it is") {
    const auto fresh = folder / "fresh.toml";
    CHECK(run_thawslip("new " + shell_word(fresh)).status == 0);
    CHECK(run_thawslip("check " + shell_word(fresh)).status == 0);
    CHECK(run_thawslip("labels " + shell_word(fresh) + " -o " + shell_word(pdf)).status == 0);
}

TEST_CASE_FIXTURE(Workplace, "a printed sheet, photographed, is read back as the cook steps") {
    REQUIRE(labels("-o " + shell_word(pdf)).status == 0);
    REQUIRE(run("pdftoppm -r 150 -png -singlefile " + shell_word(pdf) + " " +
                shell_word(folder / "photo"))
                .status == 0);
    const auto outcome = run_thawslip("read " + shell_word(folder / "photo.png"));
    CHECK(outcome.status == 0);
    CHECK(says(outcome.out, "SQUASH AND RED LENTIL STEW"));
    CHECK(says(outcome.out, "Best if used by 17 Dec 2026"));
    CHECK(says(outcome.out, "Add last 10 min: 200 G BABY SPINACH"));
    const auto typed = run_thawslip("text " + shell_word(day) + " | " THAWSLIP_PROGRAM " read -");
    CHECK(says(typed.out, "CHESTNUT - KALE AND BARLEY SOUP"));
    CHECK(run_thawslip("read " + shell_word(day)).status == 1);
    CHECK(run_thawslip("read " + shell_word(folder / "nothing.png")).status == 1);
}

TEST_CASE_FIXTURE(Workplace,
                  "the settings' mistakes are placed, and a wrong printer is not applied") {
    const auto settings = folder / "settings.toml";
    write_file(settings, "paper = \"a44\"\n");
    const auto outcome =
        run_thawslip("check " + shell_word(day) + " --settings " + shell_word(settings));
    CHECK(outcome.status == 1);
    CHECK(says(outcome.err, settings + ":1:9: error: "));
    write_file(settings, "paper = \"a4\"\n");
    CHECK(says(run_thawslip("labels " + shell_word(day) + " --settings " + shell_word(settings) +
                            " -o " + shell_word(pdf))
                   .out,
               "a4-2x4-99x68mm"));
}

TEST_CASE_FIXTURE(Workplace, "a layout that is drawn for another kind of print is refused") {
    const struct {
        std::string command;
        std::string layout;
        std::string told;
    } cases[] = {
        {"labels", THAWSLIP_SOURCE_DIR "/layouts/card/cook-day-wide.toml",
         "is not drawn for a label"},
        {"cards", THAWSLIP_SOURCE_DIR "/layouts/label/wide.toml", "is not drawn for a card"},
        {"lists", THAWSLIP_SOURCE_DIR "/layouts/label/wide.toml", "is not drawn for a list"},
        {"labels", "cook-day-wide", "there is no layout called \"cook-day-wide\""},
        {"cards", "cook-day-wode", "did you mean \"cook-day-wide\"?"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.command);
        CAPTURE(c.layout);
        const auto said = run_thawslip(c.command + " " + shell_word(day) + " --layout " +
                                       shell_word(c.layout) + " -o " + shell_word(pdf));
        CHECK(said.status == 1);
        CHECK(says(said.err, c.told));
        CHECK(left_behind() == 0);
    }
}

TEST_CASE_FIXTURE(Workplace,
                  "a layout with no place for what a label may not lack is refused by name") {
    const auto mine = folder / "mine.toml";
    const auto shipped = read_file(THAWSLIP_SOURCE_DIR "/layouts/label/wide.toml");
    const auto without = [&](const std::string& field) {
        auto text = shipped;
        const auto spare = text.find("\nspare_under"); // which names areas, not fields
        text.erase(spare, text.find('\n', spare + 1) - spare);
        const auto words = "\"" + field + "\"";
        for (auto at = text.find(words); at != std::string::npos; at = text.find(words)) {
            text.replace(at, words.size(), "\"kitchen\"");
        }
        return text;
    };
    const auto picture_line =
        std::count(shipped.begin(),
                   shipped.begin() + static_cast<long>(shipped.find("picture = [")), '\n') +
        1;
    for (const std::string field :
         {"dish", "servings", "made", "limit-date", "thaw", "finish", "contains", "local-rules"}) {
        CAPTURE(field);
        write_file(mine, without(field));
        for (const std::string command : {"labels", "check"}) {
            const auto said =
                run_thawslip(command + " " + shell_word(day) + " --layout " + shell_word(mine) +
                             (command == "labels" ? " -o " + shell_word(pdf) : ""));
            CAPTURE(said.err);
            CHECK(said.status == 1);
            CHECK(says(said.err, mine + ":" + std::to_string(picture_line) +
                                     ":11: error: this layout has no place for "));
            CHECK(says(said.err, "\"" + field + "\""));
            CHECK(says(said.err, "picture = ["));
        }
        CHECK(left_behind() == 1); // the layout
    }
}

TEST_CASE_FIXTURE(Workplace,
                  "the stocks that a refusal names take the print in the layout that was given") {
    const auto text = read_file(sample);
    write_file(day, text.substr(0, text.find("[[package]]", text.find("[[package]]") + 1)));
    const auto mine = folder / "mine.toml";
    auto large = read_file(THAWSLIP_SOURCE_DIR "/layouts/label/wide.toml");
    const std::string usual = R"(["1.2 mm", "1.5 mm", "2.4 mm"])";
    for (auto at = large.find(usual); at != std::string::npos; at = large.find(usual)) {
        large.replace(at, usual.size(), R"(["3.2 mm", "3.4 mm", "3.7 mm"])");
    }
    write_file(mine, large);
    const auto on = [&](const std::string& stock) {
        return labels("--stock " + stock + " --layout " + shell_word(mine) + " --no-archive -o " +
                      shell_word(pdf));
    };
    const auto refused = on("letter-2x5-4x2in");
    CAPTURE(refused.err);
    CHECK(refused.status == 1);
    const std::string before = "or print on ";
    auto at = refused.err.find(before);
    REQUIRE(at != std::string::npos);
    const auto hint = refused.err.substr(at, refused.err.find('\n', at) - at);
    int named = 0;
    for (at = hint.find('"'); at != std::string::npos; ++named) {
        const auto end = hint.find('"', at + 1);
        const auto stock = hint.substr(at + 1, end - at - 1);
        CAPTURE(stock);
        CHECK(on(stock).status == 0);
        fs::remove(pdf);
        at = hint.find('"', end + 1);
    }
    CHECK(named == 3);
}

TEST_CASE_FIXTURE(Workplace,
                  "a layout from before a key was renamed prints, and is shown its new name") {
    auto older = read_file(THAWSLIP_SOURCE_DIR "/layouts/label/low.toml");
    const std::string cook = "[area.cook]\n";
    older.insert(older.find(cook) + cook.size(), "leave = 2\n");
    const auto mine = folder / "mine.toml";
    write_file(mine, older);
    const auto said = labels("--stock a4-2x7-99x38mm --layout " + shell_word(mine) +
                             " --no-archive -o " + shell_word(pdf));
    CHECK(said.status == 0);
    CHECK(says(said.err, mine + ":"));
    CHECK(says(said.err, "caution: this key has another name now"));
    CHECK(says(said.err, "hint: write drop = 2"));
}

} // namespace misuse_test
