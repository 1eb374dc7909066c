// The small pieces: lines, names, files.

#include "support/as_nobody.h"
#include "support/command.h"
#include "support/skip.h"
#include "toml/faults.h"
#include "toml/one_line.h"
#include "toml/text_file.h"

#include <cerrno>
#include <doctest/doctest.h>
#include <filesystem>
#include <string>
#include <sys/stat.h>
#include <unistd.h>

using namespace thawslip;
using namespace thawslip::test_support;

TEST_CASE("a text that can be printed in one line is taken without the space around it") {
    const std::pair<const char*, const char*> cases[] = {{"plum", "plum"},
                                                         {"  plum\t", "plum"},
                                                         {"\u00A0plum\u2009", "plum"},
                                                         {"\u200Bplum", "plum"},
                                                         {"crème brûlée", "crème brûlée"},
                                                         {"a\u200Db", "a\u200Db"}};
    for (const auto& [text, line] : cases) {
        CAPTURE(text);
        CHECK(toml::one_line(text, 12).value_or("?") == line);
    }
}

TEST_CASE("a text that cannot be printed in one line is refused where it goes wrong") {
    struct Case {
        std::string text;
        std::size_t offset;
        const char* message;
    };
    const Case cases[] = {
        {"", 0, "is empty"},
        {" \t\u3000", 0, "is empty"},
        {"\u200B\uFEFF\u00AD", 0, "is empty"},
        {"plum\npot", 4, "must be one line: here is a line break"},
        {"plum\u2028pot", 4, "must be one line: here is a line break"},
        {"é\x07", 2, "holds the control character U+0007, which cannot be printed"},
        {"  a\tb", 3, "holds the control character U+0009, which cannot be printed"},
        {std::string{"a\0b", 3}, 1, "holds the control character U+0000, which cannot be printed"},
        {"a\u0085b", 1, "must be one line: here is a line break"},
        {"ab\u202Ec", 2, "holds U+202E, which turns the direction of writing round"},
        {"\u2066ab", 0, "holds U+2066, which turns the direction of writing round"},
        {"a\xFF", 1, "is not UTF-8"},
        {"  éééééé", 2, "is 6 characters long, at most 5 are taken"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.text);
        const auto line = toml::one_line(c.text, 5);
        const auto longer = toml::one_line(c.text, 12);
        const auto& wrong = longer ? line : longer;
        REQUIRE_FALSE(wrong.ok());
        CHECK(wrong.fault().offset == c.offset);
        CHECK(wrong.fault().message == c.message);
    }
}

TEST_CASE("names and texts are told so that a terminal is safe and a line is short") {
    CHECK(toml::in_quotes("plum") == "\"plum\"");
    CHECK(toml::in_quotes("a\x1B[2J\xFFz") == "\"a\uFFFD[2J\uFFFDz\"");
    CHECK(toml::in_quotes("a\u202Eb\u2028c") == "\"a\uFFFDb\uFFFDc\"");
    CHECK(toml::in_quotes(std::string(40, 'x')) == "\"" + std::string(40, 'x') + "\"");
    CHECK(toml::in_quotes(std::string(41, 'x')) == "\"" + std::string(40, 'x') + "…\"");
    std::string long_text;
    for (int i = 0; i < 100; ++i) {
        long_text += "🍲";
    }
    CHECK(toml::in_quotes(long_text) == "\"" + long_text.substr(0, 160) + "…\"");
    CHECK(toml::written_key("use_by-2") == "use_by-2");
    CHECK(toml::written_key("use by") == "\"use by\"");
    CHECK(toml::written_key("") == "\"\"");
    CHECK(toml::header_of("day") == "[day]");
    CHECK(toml::header_of("package[2]") == "[[package]]");
    CHECK(toml::header_of("package[2].thaw") == "[package.thaw]");
    CHECK(toml::header_of("package[2].finish[1]") == "[[package.finish]]");
}

TEST_CASE("a file that is not read says why, by its name") {
    const ScratchFolder folder;
    const auto told = [&folder](const std::string& name) {
        const auto text = toml::read_text_file(folder / name, 1000);
        REQUIRE_FALSE(text.ok());
        auto whole = to_text(toml::to_diagnostic(text.fault()));
        return whole.replace(0, folder.path().string().size(), "");
    };
    CHECK(told("gone.toml") == "/gone.toml: error: there is no such file\n");
    std::filesystem::create_directory(folder / "folder");
    CHECK(told("folder") == "/folder: error: this is a folder, not a file\n");
    REQUIRE(::mkfifo((folder / "pipe").c_str(), 0600) == 0);
    CHECK(told("pipe") == "/pipe: error: this is a device or a pipe, not an ordinary file\n");
    write_file(folder / "large", std::string(1001, 'x'));
    CHECK(told("large") ==
          "/large: error: the file is too large: 1001 bytes, at most 1000 bytes are read\n");
    write_file(folder / "huge", "");
    std::filesystem::resize_file(folder / "huge", 200'000'000);
    CHECK(told("huge") ==
          "/huge: error: the file is too large: 190.7 MiB, at most 1000 bytes are read\n");
    std::filesystem::create_symlink("loop", folder / "loop");
    CHECK(told("loop").starts_with("/loop: error: cannot be read: "));
    std::filesystem::create_symlink("/dev/zero", folder / "zero");
    CHECK(told("zero") == "/zero: error: this is a device or a pipe, not an ordinary file\n");
    write_file(folder / "file", "");
    CHECK(told("file/below") == "/file/below: error: there is no such file\n");
    CHECK(told("esc\x1B[2J") == "/esc\uFFFD[2J: error: there is no such file\n");
    write_file(folder / "good", std::string(1000, 'x'));
    CHECK(toml::read_text_file(folder / "good", 1000).value().size() == 1000);
}

TEST_CASE("a file that may not be read says so") {
    CHECK(to_text(toml::to_diagnostic({toml::FileFault::Kind::NotPermitted, "x", 0, 0, EACCES})) ==
          "x: error: you are not permitted to read this file\n");
}

TEST_CASE("a file that may not be read is not read") {
    const ScratchFolder folder;
    write_file(folder / "locked", "a = 1");
    REQUIRE(::chmod((folder / "locked").c_str(), 0) == 0);
    REQUIRE(::chmod(folder.path().c_str(), 0755) == 0);
    const AsNobody nobody;
    if (!nobody.worked()) {
        return skip("root cannot become nobody here, and may read everything");
    }
    const auto text = toml::read_text_file(folder / "locked", 1000);
    REQUIRE_FALSE(text.ok());
    CHECK(text.fault().kind == toml::FileFault::Kind::NotPermitted);
}

TEST_CASE("an empty path and one with a zero byte name no file") {
    for (const auto& path : {std::string{}, std::string{"a\0b", 3}}) {
        const auto text = toml::read_text_file(path, 1000);
        REQUIRE_FALSE(text.ok());
        CHECK(text.fault().kind == toml::FileFault::Kind::Missing);
    }
}
