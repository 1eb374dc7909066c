// Where a print cannot or must not go: nothing is destroyed, nothing half-written stays.

#include "attempt.h"

#include <doctest/doctest.h>
#include <sys/stat.h>

using namespace thawslip::test_support;
namespace fs = std::filesystem;

TEST_CASE("a print never goes onto a file that it is made from") {
    Attempts attempts;
    const auto stock = read_file(THAWSLIP_SOURCE_DIR "/layouts/stock/letter-2x5-4x2in.toml");
    write_file(attempts / "stock.pdf", stock);
    write_file(attempts / "layout.svg", read_file(THAWSLIP_SOURCE_DIR "/layouts/label/wide.toml"));
    write_file(attempts / "settings.pdf", "paper = \"letter\"\n");
    const auto goods = read_file(THAWSLIP_SOURCE_DIR "/samples/goods.toml");
    write_file(attempts / "goods.pdf", goods);
    write_file(attempts / "names.toml", "goods = \"goods.pdf\"\nlabels.stock = \"./stock.pdf\"\n");
    REQUIRE(attempts.run("labels day.toml -o first.pdf --archive archive.pdf").status == 0);
    fs::create_symlink("day.toml", attempts / "day.pdf");
    fs::create_hard_link(attempts / "archive.pdf", attempts / "hard.pdf");
    attempts.settle();
    const std::string cases[] = {
        "labels day.toml -o day.pdf",
        "labels day.toml -o ./../$(basename \"$PWD\")/day.pdf",
        "cards day.toml -o day.pdf",
        "labels day.toml --stock ./stock.pdf -o stock.pdf",
        "labels day.toml --layout ./layout.svg -o layout.svg",
        "labels day.toml --settings settings.pdf -o settings.pdf",
        "cards day.toml --settings names.toml -o goods.pdf",
        "cards day.toml --settings names.toml -o stock.pdf",
        "labels day.toml --archive archive.pdf -o archive.pdf",
        "labels day.toml --archive archive.pdf -o hard.pdf",
        "reprint squash --archive archive.pdf -o archive.pdf",
        "stock show ./stock.pdf -o stock.pdf",
        "plan day.toml --eat '2026-12-03 18:30' --now '2026-11-01 10:00' --dish compote "
        "--calendar day.toml",
        "plan day.toml --eat '2026-12-03 18:30' --now '2026-11-01 10:00' --dish compote "
        "--settings settings.pdf --calendar ./settings.pdf",
    };
    for (const auto& arguments : cases) {
        CAPTURE(arguments);
        const auto outcome = attempts.run(arguments);
        CAPTURE(outcome.err);
        CHECK(outcome.status == 1);
        CHECK(says(outcome.err, "nothing written"));
        CHECK(attempts.left_behind() == "");
        CHECK(read_file(attempts / "day.toml") == read_file(sample_day));
        CHECK(read_file(attempts / "stock.pdf") == stock);
        CHECK(read_file(attempts / "goods.pdf") == goods);
        CHECK(read_file(attempts / "settings.pdf") == "paper = \"letter\"\n");
        CHECK(read_file(attempts / "archive.pdf").substr(0, 15) == "SQLite format 3");
        CHECK(says(read_file(attempts / "layout.svg"), "picture"));
    }
}

TEST_CASE("a print goes into files only, and a full disk leaves none of it") {
    Attempts attempts;
    REQUIRE(::mkfifo((attempts / "pipe.pdf").c_str(), 0600) == 0);
    fs::create_directory(attempts / "folder.pdf");
    fs::create_symlink("/dev/full", attempts / "full.pdf");
    fs::create_symlink("/dev/null", attempts / "null.svg");
    attempts.settle();
    const struct {
        std::string arguments;
        std::string before;
        std::string told;
    } cases[] = {
        {"labels day.toml -o pipe.pdf", "", "cannot write pipe.pdf: it is a device or a pipe"},
        {"labels day.toml -o full.pdf", "", "cannot write full.pdf: it is a device or a pipe"},
        {"labels day.toml -o null.svg", "", "cannot write null.svg: it is a device or a pipe"},
        {"cards day.toml -o folder.pdf", "", "cannot write folder.pdf: it is a directory"},
        {"labels day.toml -o nowhere/labels.pdf", "",
         "cannot create nowhere/labels.pdf: No such file or directory"},
        {"labels day.toml -o labels.pdf", "ulimit -f 8", "cannot write labels.pdf: File too large"},
        {"labels day.toml -o labels.svg", "ulimit -f 8", "cannot write labels.svg: File too large"},
        {"stock ruler -o ruler.pdf", "ulimit -f 8", "cannot write ruler.pdf: File too large"},
        {"labels day.toml -o - > /dev/full", "",
         "cannot write standard output: No space left on device"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.arguments);
        const auto outcome = attempts.run(c.arguments, c.before);
        CAPTURE(outcome.err);
        CHECK(outcome.status == 3);
        CHECK(says(outcome.err, c.told));
        CHECK(attempts.left_behind() == "");
    }
}

TEST_CASE("a link stays a link, and what it leads to is written") {
    Attempts attempts;
    fs::create_directory(attempts / "shelf");
    write_file(attempts / "shelf/old.pdf", "older");
    fs::create_symlink("shelf/old.pdf", attempts / "old.pdf");
    fs::create_symlink("shelf/new.pdf", attempts / "new.pdf"); // leads to nothing yet
    fs::create_symlink(fs::absolute(attempts / "new.pdf"), attempts / "far.pdf");
    fs::create_symlink("round.pdf", attempts / "round.pdf");
    attempts.settle();
    const struct {
        const char* link;
        const char* file;
    } cases[] = {{"old.pdf", "shelf/old.pdf"}, {"far.pdf", "shelf/new.pdf"}};
    for (const auto& [link, file] : cases) {
        CAPTURE(link);
        REQUIRE(attempts.run("labels day.toml -o " + std::string{link}).status == 0);
        CHECK(fs::is_symlink(attempts / link));
        CHECK(read_file(attempts / file).starts_with("%PDF-"));
    }
    CHECK(fs::is_symlink(attempts / "new.pdf"));
    const auto round = attempts.run("labels day.toml -o round.pdf");
    CHECK(round.status == 3);
    CHECK(says(round.err, "cannot write round.pdf: Too many levels of symbolic links"));
    CHECK(attempts.left_behind() == "");
}

TEST_CASE("an archive that cannot be read lets nothing be printed, for its ids are not known") {
    Attempts attempts;
    REQUIRE(::mkfifo((attempts / "pipe").c_str(), 0600) == 0);
    attempts.settle();
    for (const std::string archive : {"./pipe", "/dev/null", "/dev/full", "/", "day.toml"}) {
        CAPTURE(archive);
        const auto outcome = attempts.run("labels day.toml -o labels.pdf --archive " + archive);
        CHECK(outcome.status == 3);
        CHECK(says(outcome.err, "error: nothing was printed, for the ids of the bags stand in the "
                                "archive: "));
        CHECK(attempts.left_behind() == "");
        CHECK(read_file(attempts / "day.toml") == read_file(sample_day));
    }
}

TEST_CASE("every command notices that its words could not be written") {
    Attempts attempts;
    for (const std::string arguments :
         {"check day.toml", "check --why day.toml", "text day.toml", "stock list",
          "stock show letter-2x5-4x2in", "new -", "--help", "--version", "freezer list --json",
          "plan day.toml --eat '2026-12-03 18:30' --now '2026-11-01 10:00' --dish compote"}) {
        CAPTURE(arguments);
        const auto outcome = attempts.run(arguments + " > /dev/full");
        CHECK(outcome.status == 3);
        CHECK(says(outcome.err, "error: cannot write standard output"));
    }
    CHECK(attempts.run("check nothing.toml 2> /dev/full").status == 1);
    CHECK(attempts.left_behind() == "");
}

TEST_CASE("closed standard streams are told by the exit status and never written into a file") {
    Attempts attempts;
    CHECK(attempts.run("check day.toml >&-").status == 3);
    CHECK(attempts.run("labels day.toml -o - >&-").status == 3);
    CHECK(attempts.run("check nothing.toml 2>&-").status == 1);
    const auto silent = attempts.run("read - <&-");
    CHECK(silent.status == 1);
    CHECK(says(silent.err, "standard input: error: there is no text"));
    CHECK(says(attempts.run("read - < /dev/null").err, "there is no text"));
    CHECK(says(attempts.run("read - < /dev/zero").err, "more than any code holds"));
    REQUIRE(attempts.run("labels day.toml -o whole.pdf").status == 0);
    const struct {
        const char* closed;
        int status; // 3: the words that go with the print had nowhere to go
    } cases[] = {{"<&-", 0}, {">&-", 3}, {"2>&-", 0}, {"<&- >&- 2>&-", 3}};
    for (const auto& c : cases) {
        const std::string closed = c.closed;
        CAPTURE(closed);
        CHECK(attempts.run("labels day.toml -o labels.pdf " + closed).status == c.status);
        CHECK(read_file(attempts / "labels.pdf") == read_file(attempts / "whole.pdf"));
    }
}

TEST_CASE("a reader that goes away ends the program without a word, as of any filter") {
    Attempts attempts;
    std::string day = "[day]\nmade = 2026-10-17\n";
    for (int i = 1; i <= 20; ++i) { // its codes' texts are more than a pipe holds
        day += "[[package]]\ndish = \"Bean and barley pot " + std::to_string(i) +
               "\"\nservings = 6\nbags = 40\nfood = \"soup or stew\"\n";
    }
    write_file(attempts / "many.toml", day);
    attempts.settle();
    const auto cut = attempts.run("text many.toml; echo $? > status; } | head -c 10", "{ :");
    CHECK(cut.out.size() == 10);
    CHECK(cut.err == "");
    CHECK(read_file(attempts / "status") == "141\n"); // 128 + SIGPIPE
    const auto ignored =
        attempts.run("text many.toml; echo $? > status; } | head -c 10", "trap '' PIPE; { :");
    CHECK(says(ignored.err, "error: cannot write standard output"));
    CHECK(read_file(attempts / "status") == "3\n");
    CHECK(attempts.left_behind() == "status ");
}
