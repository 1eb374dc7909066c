// What is named as a day, a photograph, a stock or the settings and is none: told by its name,
// never waited for, never read without end.

#include "attempt.h"
#include "support/anybody.h"
#include "support/skip.h"

#include <doctest/doctest.h>
#include <sys/stat.h>
#include <unistd.h>

using namespace thawslip::test_support;
namespace fs = std::filesystem;

namespace {

std::string utf16(const std::string& ascii, bool little_endian, bool mark) {
    std::string bytes = !mark ? "" : little_endian ? "\xFF\xFE" : "\xFE\xFF";
    for (const char c : ascii) {
        bytes += little_endian ? std::string({c, 0}) : std::string({0, c});
    }
    return bytes;
}

/// A day of so many dishes, two hundred bags of each.
std::string large_day(int dishes) {
    std::string text = "[day]\nmade = 2026-10-17\n";
    for (int i = 1; i <= dishes; ++i) {
        text += "[[package]]\ndish = \"Bean and barley pot " + std::to_string(i) +
                "\"\nservings = 6\nbags = 200\nfood = \"soup or stew\"\n";
    }
    return text;
}

} // namespace

TEST_CASE("a day that is no file, or no text, is refused by its name") {
    Attempts attempts;
    const auto day = read_file(sample_day);
    fs::create_directory(attempts / "folder.toml");
    fs::create_symlink("loop.toml", attempts / "loop.toml");
    fs::create_symlink("nowhere", attempts / "dangling.toml");
    fs::create_symlink("/dev/zero", attempts / "zero.toml");
    REQUIRE(::mkfifo((attempts / "pipe.toml").c_str(), 0600) == 0);
    write_file(attempts / "empty.toml", "");
    write_file(attempts / "nul.toml", std::string{"[day]\nmade = 2026-10-17\0\n", 24});
    write_file(attempts / "le.toml", utf16(day.substr(0, 500), true, true));
    write_file(attempts / "be.toml", utf16(day.substr(0, 500), false, true));
    write_file(attempts / "bare-le.toml", utf16("[day]\n", true, false));
    write_file(attempts / "bare-be.toml", utf16("[day]\n", false, false));
    write_file(attempts / "huge.toml", std::string(std::size_t{2} << 20U, '#'));
    write_file(attempts / "many.toml", large_day(101));
    write_file(attempts / "latin.toml", "[day]\nkitchen = \"K\xFC"
                                        "che\"\n");
    attempts.settle();
    const struct {
        std::string file;
        std::string told;
        int status = 1;
    } cases[] = {
        {"folder.toml", "folder.toml: error: this is a folder, not a file"},
        {"loop.toml", "error: loop.toml: cannot be read: Too many levels of symbolic links", 3},
        {"dangling.toml", "dangling.toml: error: there is no such file"},
        {"zero.toml", "zero.toml: error: this is a device or a pipe"},
        {"pipe.toml", "pipe.toml: error: this is a device or a pipe"},
        {"/dev/tty", "/dev/tty: error: this is a device or a pipe"},
        {"../../../nowhere/day.toml", "../../../nowhere/day.toml: error: there is no such file"},
        {"../../../../../../etc/hostname", "hostname:1:1: error: "},
        {"''", "error: the name of a file is empty"},
        {"empty.toml", "empty.toml:1:1: error: there is no [day]"},
        {"nul.toml", "nul.toml:2:18: error: the byte 0x00 is not allowed in TOML"},
        {"le.toml", "hint: this looks like UTF-16: save the file as UTF-8"},
        {"be.toml", "hint: this looks like UTF-16: save the file as UTF-8"},
        {"bare-le.toml", "hint: this looks like UTF-16: save the file as UTF-8"},
        {"bare-be.toml", "hint: this looks like UTF-16: save the file as UTF-8"},
        {"huge.toml", "huge.toml: error: the file is too large: 2.0 MiB, at most 1.0 MiB are read"},
        {"many.toml", "many.toml:"},
        {"latin.toml", "latin.toml:2:13: error: the byte 0xFC is not UTF-8"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.file);
        const auto outcome = attempts.run("labels " + c.file + " -o labels.pdf");
        CAPTURE(outcome.err);
        CHECK(outcome.status == c.status);
        CHECK(says(outcome.err, c.told));
        CHECK(outcome.out == "");
        CHECK(attempts.left_behind() == "");
    }
}

TEST_CASE("a link to a day is the day") {
    Attempts attempts;
    fs::create_symlink("day.toml", attempts / "link.toml");
    CHECK(attempts.run("check link.toml").status == 0);
}

TEST_CASE("stocks, layouts, settings and photographs that are no files are refused alike") {
    Attempts attempts;
    REQUIRE(::mkfifo((attempts / "pipe.toml").c_str(), 0600) == 0);
    fs::create_directory(attempts / "folder.toml");
    attempts.settle();
    const std::string print = "labels day.toml -o labels.pdf ";
    for (const std::string file : {"./pipe.toml", "./folder.toml", "/dev/zero", "/dev/full"}) {
        for (const auto& command : {print + "--stock ", print + "--layout ", print + "--settings ",
                                    std::string{"read "}, std::string{"stock show "}}) {
            CAPTURE(command);
            CAPTURE(file);
            const auto outcome = attempts.run(command + file);
            CHECK(outcome.status == 1);
            CHECK(says(outcome.err, file + ": error: this is a "));
            CHECK(attempts.left_behind() == "");
        }
    }
}

TEST_CASE("a name with ../ in it is a file like any other, and a stock's name is never a path") {
    Attempts attempts;
    const auto outcome = attempts.run("labels day.toml --stock ..x -o labels.pdf");
    CHECK(outcome.status == 1);
    CHECK(says(outcome.err, "there is no stock called \"..x\""));
    const auto path = attempts.run("labels day.toml --stock ../../nowhere -o labels.pdf");
    CHECK(path.status == 1);
    CHECK(says(path.err, "../../nowhere: error: there is no such file"));
    CHECK(attempts.left_behind() == "");
}

TEST_CASE("files that may not be read are the system's failure, told by name") {
    Attempts attempts;
    const Anybody anybody{THAWSLIP_PROGRAM};
    const auto program = anybody.command();
    fs::permissions(attempts.path(), fs::perms{0755});
    fs::permissions(attempts / "day.toml", fs::perms{0644});
    if (!program || attempts.run("check day.toml", "", *program).status != 0) {
        return skip("this user cannot run the program as nobody");
    }
    write_file(attempts / "secret.toml", read_file(sample_day));
    fs::permissions(attempts / "secret.toml", fs::perms::none);
    fs::create_directory(attempts / "locked");
    fs::permissions(attempts / "locked", fs::perms{0555});
    attempts.settle();
    const struct {
        std::string arguments;
        std::string told;
    } cases[] = {
        {"check secret.toml", "error: secret.toml: you are not permitted to read this file"},
        {"read secret.toml", "error: secret.toml: you are not permitted to read this file"},
        {"text day.toml --stock ./secret.toml", "you are not permitted to read this file"},
        {"text day.toml --layout ./secret.toml", "you are not permitted to read this file"},
        {"text day.toml --settings secret.toml", "you are not permitted to read this file"},
        {"labels day.toml --no-archive -o locked/labels.pdf",
         "error: cannot create locked/labels.pdf: Permission denied"},
        {"new locked/day.toml", "error: cannot create locked/day.toml: Permission denied"},
        {"labels day.toml -o - --archive locked/archive.db > /dev/null", "locked/archive.db"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.arguments);
        const auto outcome = attempts.run(c.arguments, "", *program);
        CAPTURE(outcome.err);
        CHECK(outcome.status == 3);
        CHECK(says(outcome.err, c.told));
        CHECK(attempts.left_behind() == "");
    }
    fs::permissions(attempts / "secret.toml", fs::perms::owner_all);
    fs::permissions(attempts / "locked", fs::perms::owner_all);
}

TEST_CASE("ten thousand bags are printed within bounds") {
#ifdef THAWSLIP_SANITIZED
    constexpr int dishes = 5;
#else
    constexpr int dishes = 50;
#endif
    Attempts attempts;
    write_file(attempts / "large.toml", large_day(dishes));
    const auto outcome = attempts.run("labels large.toml --no-archive -o labels.pdf");
    CHECK(outcome.status == 0);
    CHECK(says(outcome.out, "labels.pdf: " + std::to_string(dishes * 200) + " labels on "));
}
