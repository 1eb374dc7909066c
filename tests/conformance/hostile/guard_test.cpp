// What a command writes never takes the place of what somebody needs, by whatever name.

#include "attempt.h"

#include <doctest/doctest.h>
#include <vector>

using namespace thawslip::test_support;
namespace fs = std::filesystem;

namespace {

constexpr const char* plan =
    "plan day.toml --eat '2026-12-03 18:30' --now '2026-11-01 10:00' --dish compote ";

/// Every command that writes a file, with the ending that it wants; the name follows.
const std::vector<std::pair<std::string, std::string>> writers = {
    {"labels day.toml --no-archive -o ", ".pdf"},
    {"labels day.toml --no-archive -o ", ".svg"},
    {"cards day.toml --no-archive -o ", ".pdf"},
    {"lists day.toml -o ", ".pdf"},
    {"stock show letter-2x5-4x2in -o ", ".svg"},
    {"stock ruler -o ", ".pdf"},
    {"reprint compote -o ", ".pdf"},
    {std::string{plan} + "--calendar ", ".ics"},
    {"archive backup ", ".db"},
    {"new ", ".toml"},
};

} // namespace

TEST_CASE("no command writes onto the archive, its companions or the settings by a link") {
    Attempts attempts;
    REQUIRE(attempts.run("labels day.toml -o first.pdf").status == 0); // at the usual place
    REQUIRE(attempts.run("labels day.toml -o first.pdf --archive mine.db").status == 0);
    const auto usual = attempts.run("x", "echo \"$XDG_DATA_HOME\"").out;
    const auto archive = usual.substr(0, usual.find('\n')) + "/thawslip/archive.db";
    REQUIRE(fs::exists(archive));
    write_file(attempts / "settings.toml", "paper = \"letter\"\n");
    attempts.settle();
    const auto before = read_file(archive);
    for (const auto& target : std::vector<std::string>{
             archive, archive + "-wal", archive + "-shm", archive + "-journal",
             attempts / "mine.db", attempts / "mine.db-wal", attempts / "settings.toml"}) {
        for (const auto& [command, ending] : writers) {
            fs::create_symlink(target, attempts / ("link" + ending));
            CAPTURE(command + ending);
            CAPTURE(target);
            const auto outcome = attempts.run(command + "link" + ending +
                                              " --archive mine.db --settings settings.toml");
            CHECK(outcome.status == 1);
            CHECK(says(outcome.err, "nothing written"));
            fs::remove(attempts / ("link" + ending));
        }
    }
    CHECK(attempts.left_behind() == "");
    CHECK(read_file(archive) == before);
    CHECK(!fs::exists(archive + "-journal"));
    CHECK(read_file(attempts / "settings.toml") == "paper = \"letter\"\n");
}

TEST_CASE("every output wants the ending of what it is") {
    Attempts attempts;
    REQUIRE(attempts.run("labels day.toml -o first.pdf").status == 0);
    attempts.settle();
    for (const auto& [command, ending] : writers) {
        CAPTURE(command);
        const auto outcome = attempts.run(command + "thing.doc");
        CHECK(outcome.status == 2);
        CHECK(says(outcome.err, "thing.doc must end in \""));
        CHECK(attempts.left_behind() == "");
    }
}

TEST_CASE("a copy of an archive and what comes with thawslip are kept, whoever points there") {
    Attempts attempts;
    REQUIRE(attempts.run("labels day.toml -o first.pdf --archive copy.pdf").status == 0);
    fs::create_symlink(fs::absolute(THAWSLIP_SOURCE_DIR "/layouts/label/wide.toml"),
                       attempts / "wide.svg");
    fs::create_symlink(fs::absolute(THAWSLIP_SOURCE_DIR "/layouts/stock/new-one.toml"),
                       attempts / "new.toml");
    attempts.settle();
    const auto layout = read_file(THAWSLIP_SOURCE_DIR "/layouts/label/wide.toml");
    const auto copy = read_file(attempts / "copy.pdf");
    CHECK(says(attempts.run("labels day.toml --no-archive -o copy.pdf").err, "is a database"));
    CHECK(
        says(attempts.run("labels day.toml --no-archive -o wide.svg").err, "comes with thawslip"));
    CHECK(attempts.run("new new.toml").status == 1);
    CHECK(read_file(attempts / "copy.pdf") == copy);
    CHECK(read_file(THAWSLIP_SOURCE_DIR "/layouts/label/wide.toml") == layout);
    CHECK(!fs::exists(THAWSLIP_SOURCE_DIR "/layouts/stock/new-one.toml"));
}

TEST_CASE("further sheets take no place of another's file unless that is asked for") {
    Attempts attempts;
    write_file(attempts / "l-2.svg", "a drawing of mine");
    attempts.settle();
    const auto refused = attempts.run("labels day.toml --no-archive -o l.svg");
    CHECK(refused.status == 1);
    CHECK(says(refused.err, "l-2.svg, which is another's file; nothing written"));
    CHECK(attempts.left_behind() == "");
    CHECK(read_file(attempts / "l-2.svg") == "a drawing of mine");
    CHECK(attempts.run("labels day.toml --no-archive -o l.svg --overwrite").status == 0);
    CHECK(says(read_file(attempts / "l-2.svg"), "<svg"));
    CHECK(attempts.run("labels day.toml --no-archive -o l.svg").status == 0); // its own by now
}

TEST_CASE("sheets of an earlier, larger print are named, not taken for this one's") {
    Attempts attempts;
    REQUIRE(attempts.run("labels day.toml --no-archive -o l.svg").status == 0);
    REQUIRE(fs::exists(attempts / "l-2.svg"));
    const auto smaller =
        attempts.run("labels day.toml --no-archive --stock roll-100x150mm -o l.svg");
    CHECK(smaller.status == 0);
    fs::copy_file(attempts / "l-2.svg", attempts / "l-99.svg");
    const auto one = attempts.run("stock show letter-2x5-4x2in -o l.svg");
    CHECK(one.status == 0);
    write_file(attempts / "small.toml", "[day]\nmade = 2026-10-17\n[[package]]\ndish = \"Leek\"\n"
                                        "servings = 2\nfood = \"soup or stew\"\n");
    const auto small = attempts.run("labels small.toml --no-archive -o l.svg");
    CHECK(small.status == 0);
    CHECK(says(small.err, "caution: l-2.svg is of an earlier print and no sheet of this one"));
}

TEST_CASE("control characters in arguments, names and dates reach no terminal") {
    Attempts attempts;
    attempts.settle();
    const std::string hostile = "$(printf 'x\\033]0;t\\007\\302\\233\\342\\200\\256y')";
    for (const std::string command :
         {"labels \"H.toml\" -o a.pdf", "labels day.toml -o \"H.pdf\"", "labels day.toml -o \"H\"",
          "\"H\"", "labels day.toml --stock \"H\" -o a.pdf", "check day.toml --dpi \"H\"",
          "new \"H.toml\"", "read \"H\"", "plan day.toml --eat \"H\"",
          "plan day.toml --eat '2026-12-03 18:30' --dish \"H\"", "archive restore \"H\"",
          "archive merge \"H\"", "archive import \"H\"", "freezer out \"H\"",
          "--archive \"H/a.db\" freezer list", "--settings \"H\" check day.toml",
          "stock show \"H\"", "reprint --printed \"H\" -o a.pdf"}) {
        auto words = command;
        words.replace(words.find('H'), 1, hostile);
        CAPTURE(command);
        const auto outcome = attempts.run(words);
        for (const std::string bad : {"\x1B", "\x07", "\xC2\x9B", "\xE2\x80\xAE"}) {
            CHECK(!says(outcome.out + outcome.err, bad));
        }
    }
}

TEST_CASE("no number at all is no number of dots, and small limits end in words") {
    Attempts attempts;
    REQUIRE(attempts.run("labels day.toml -o first.pdf").status == 0);
    attempts.settle();
    for (const std::string dots : {"nan", "inf", "-300", "0", "300x", ""}) {
        CAPTURE(dots);
        CHECK(attempts.run("labels day.toml --no-archive -o a.pdf --dpi '" + dots + "'").status ==
              2);
    }
#ifndef THAWSLIP_SANITIZED
    const auto stack = attempts.run("labels day.toml --no-archive -o a.pdf", "ulimit -s 64");
    CHECK(stack.status == 3);
    CHECK(says(stack.err, "the stack is limited to 64 KiB"));
#endif
    for (const std::string files : {"6", "7", "8"}) {
        attempts.run("archive export folder", "ulimit -n " + files);
        CHECK((attempts.left_behind() == "" || attempts.left_behind() == "folder "));
    }
}

TEST_CASE("check says what cards and lists would refuse") {
    Attempts attempts;
    const std::string head = "[day]\nmade = 2026-10-17\n[[package]]\ndish = \"Leek\"\n"
                             "servings = 2\nfood = \"soup or stew\"\n";
    write_file(attempts / "step.toml",
               head + "[package.cook]\nin = \"pot\"\nsteps = [\"Serve \xF0\x9F\xA5\x84\"]\n");
    write_file(attempts / "bought.toml",
               head + "[[package.ingredient]]\nadd = \"1 kg leek \xF0\x9F\xA5\xAC\"\n");
    for (const std::string day : {"step.toml", "bought.toml"}) {
        CAPTURE(day);
        const auto cards = attempts.run("cards " + day + " --no-archive -o a.pdf");
        const auto lists = attempts.run("lists " + day + " -o a.pdf");
        REQUIRE(cards.status + lists.status > 0);
        const auto checked = attempts.run("check " + day);
        CHECK(checked.status == 1);
        CHECK(says(checked.err, "cannot be printed"));
    }
    const auto once = attempts.run("check step.toml").err;
    CHECK(once.find("cannot be printed") == once.rfind("cannot be printed"));
    CHECK(attempts.run("check day.toml").status == 0);
}
