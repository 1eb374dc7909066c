// Fonts that are missing or broken, a locale with decimal commas, too little of everything.

#include "attempt.h"
#include "support/skip.h"

#include <doctest/doctest.h>

using namespace thawslip::test_support;
namespace fs = std::filesystem;

namespace {

const std::string clear_sans = "/usr/share/fonts/truetype/clear-sans/ClearSans-Regular.ttf";

/// A data folder of its own, with a table of faces that names `font` for every weight.
void make_data(const Attempts& attempts, const std::string& font) {
    fs::create_directories(attempts / "data/fonts");
    fs::copy(THAWSLIP_SOURCE_DIR "/layouts", attempts / "data/layouts",
             fs::copy_options::recursive | fs::copy_options::skip_existing);
    write_file(attempts / "data/fonts/faces.toml", "regular = [\"" + font + "\"]\nmedium = [\"" +
                                                       font + "\"]\nbold = [\"" + font + "\"]\n");
}

} // namespace

TEST_CASE("a font that is missing or broken is named, and nothing is printed with holes in it") {
    Attempts attempts;
    make_data(attempts, "our.ttf");
    attempts.settle();
    const auto whole = read_file(clear_sans);
    auto wrong_byte = whole;
    wrong_byte[whole.size() / 2] = static_cast<char>(wrong_byte[whole.size() / 2] ^ 1);
    const struct {
        std::string about;
        std::string bytes;
        std::string told;
    } cases[] = {
        {"empty", "", "is not a TrueType font file"},
        {"zeros", std::string(100'000, '\0'), "is not a TrueType font file"},
        {"words", "plum and ginger compote", "is not a TrueType font file"},
        {"cut in the header", whole.substr(0, 8), "is damaged: it is cut short"},
        {"cut in the directory", whole.substr(0, 100), "is damaged: it is cut short"},
        {"cut in the middle", whole.substr(0, whole.size() / 2), "is cut short"},
        {"cut before the end", whole.substr(0, whole.size() - 100), "is cut short"},
        {"one byte wrong", wrong_byte, "does not add up to its checksum"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.about);
        write_file(attempts / "data/fonts/our.ttf", c.bytes);
        const auto outcome =
            attempts.run("labels day.toml -o labels.pdf", "export THAWSLIP_DATA=data");
        CAPTURE(outcome.err);
        CHECK(outcome.status == 3);
        CHECK(says(outcome.err, "data/fonts/our.ttf: "));
        CHECK(says(outcome.err, c.told));
        CHECK(attempts.left_behind() == "");
    }
    write_file(attempts / "data/fonts/our.ttf", whole);
    CHECK(attempts.run("check day.toml", "export THAWSLIP_DATA=data").status == 0);
}

TEST_CASE("fonts that are not installed, and a data folder that is none, are told") {
    Attempts attempts;
    make_data(attempts, "clear-sans/ClearSans-Nowhere.ttf");
    attempts.settle();
    const auto missing = attempts.run("labels day.toml -o l.pdf", "export THAWSLIP_DATA=data");
    CHECK(missing.status == 3);
    CHECK(says(missing.err, "the font file clear-sans/ClearSans-Nowhere.ttf is not installed; on "
                            "Debian: apt-get install fonts-clear-sans"));
    fs::remove(attempts / "data/fonts/faces.toml");
    const auto empty = attempts.run("labels day.toml -o l.pdf", "export THAWSLIP_DATA=data");
    CHECK(empty.status == 3);
    CHECK(says(empty.err, "THAWSLIP_DATA is \"data\""));
    CHECK(attempts.left_behind() == "");
}

TEST_CASE("a locale that writes decimal commas changes nothing") {
    Attempts attempts;
    const auto locales = attempts / "locales";
    fs::create_directory(locales);
    run("localedef -i de_DE -f UTF-8 " + shell_word(locales + "/de_DE.UTF-8"));
    const std::string german =
        "export LOCPATH=" + shell_word(locales) + " LC_ALL=de_DE.UTF-8 LANG=de_DE.UTF-8";
    if (run(german + "; /usr/bin/printf %.1f 1,5").out != "1,5") {
        return skip("the locale de_DE.UTF-8 cannot be made here (Debian package locales)");
    }
    // The paper is the locale's where nobody says which: so that is said.
    for (const std::string arguments :
         {"check --why day.toml --paper letter", "text day.toml --paper letter",
          "stock show letter-2x5-4x2in", "stock show a4-2x4-99x68mm -o -",
          "labels day.toml --no-archive --paper letter -o -",
          "cards day.toml --no-archive --paper letter -o -",
          "plan day.toml --eat '2026-12-03 18:30' --now '2026-11-01 10:00' --dish compote"}) {
        CAPTURE(arguments);
        const auto plain = attempts.run(arguments, "export LC_ALL=C");
        const auto comma = attempts.run(arguments, german);
        CHECK(plain.status == comma.status);
        CHECK(!plain.out.empty());
        CHECK(plain.out == comma.out);
        CHECK(plain.err == comma.err);
    }
    const auto none = attempts.run("check day.toml", "export LC_ALL=xx_YY.UTF-99");
    CHECK(none.status == 0);
}

TEST_CASE("output that is no terminal has no control characters") {
    Attempts attempts;
    for (const std::string arguments :
         {"check day.toml", "check nothing.toml", "stock list", "--help"}) {
        CAPTURE(arguments);
        const auto outcome = attempts.run(arguments, "export TERM=xterm-256color");
        CHECK(!says(outcome.out + outcome.err, "\x1b"));
    }
}

#ifndef THAWSLIP_SANITIZED
TEST_CASE("too little memory, files or threads end in words and a status, never in half a print") {
    Attempts attempts;
    REQUIRE(attempts.run("labels day.toml --no-archive -o whole.pdf").status == 0);
    const auto whole = read_file(attempts / "whole.pdf");
    fs::remove(attempts / "whole.pdf");
    for (int mebibytes = 40; mebibytes <= 120; mebibytes += 4) {
        CAPTURE(mebibytes);
        const auto outcome = attempts.run("labels day.toml --no-archive -o labels.pdf",
                                          "ulimit -v " + std::to_string(mebibytes * 1024));
        CAPTURE(outcome.err);
        if (outcome.status == 0) {
            CHECK(read_file(attempts / "labels.pdf") == whole);
        } else {
            // 127: the loader itself finds no room for the libraries; and GLib, which HarfBuzz
            // brings, ends a program that it finds no room in before the program has begun.
            const bool ended_by_glib = outcome.err.starts_with("GLib");
            CHECK((outcome.status == 3 || outcome.status == 127 || ended_by_glib));
            CHECK(outcome.err != "");
            CHECK(attempts.left_behind() == "");
        }
        fs::remove(attempts / "labels.pdf");
    }
    const auto few = attempts.run("labels day.toml --no-archive -o labels.pdf", "ulimit -n 5");
    CHECK((few.status == 0 || few.status == 3));
}
#endif
