#include "base/text_file.h"
#include "support/as_nobody.h"
#include "support/command.h"
#include "support/skip.h"

#include <cerrno>
#include <doctest/doctest.h>
#include <filesystem>
#include <iterator>
#include <string>
#include <sys/stat.h>
#include <unistd.h>

using namespace thawslip;
using namespace thawslip::test_support;

TEST_CASE("only ordinary files of bearable size are opened") {
    const ScratchFolder folder;
    const auto kind_of = [](const std::string& path) {
        const auto text = read_text_file(path, 1000);
        REQUIRE_FALSE(text.ok());
        CHECK_FALSE(to_diagnostic(text.fault()).message.empty());
        return text.fault().kind;
    };
    using Kind = FileFault::Kind;
    CHECK(kind_of(folder / "missing.toml") == Kind::Missing);
    CHECK(kind_of(folder.path().string()) == Kind::Directory);
    CHECK(kind_of("/dev/zero") == Kind::NotOrdinary);
    REQUIRE(::mkfifo((folder / "pipe").c_str(), 0600) == 0);
    CHECK(kind_of(folder / "pipe") == Kind::NotOrdinary);
    write_file(folder / "large.toml", "x");
    std::filesystem::resize_file(folder / "large.toml", 200'000'000);
    CHECK(kind_of(folder / "large.toml") == Kind::TooLarge);
    write_file(folder / "good.toml", "a = 1\n");
    CHECK(read_text_file(folder / "good.toml", 1000).value() == "a = 1\n");
}

TEST_CASE("a file that was read, or refused, is not left open") {
    const auto open_files = [] {
        const std::filesystem::directory_iterator all{"/proc/self/fd"};
        return std::distance(begin(all), end(all));
    };
    const ScratchFolder folder;
    write_file(folder / "day.toml", "a = 1\n");
    const auto before = open_files();
    CHECK(read_text_file(folder / "day.toml", 1000).ok());
    CHECK_FALSE(read_text_file(folder / "day.toml", 1).ok());
    CHECK(open_files() == before);
}

TEST_CASE("a file that is not read says why, by its name") {
    const ScratchFolder folder;
    const auto told = [&folder](const std::string& name) {
        const auto text = read_text_file(folder / name, 1000);
        REQUIRE_FALSE(text.ok());
        auto whole = to_text(to_diagnostic(text.fault()));
        return whole.replace(0, folder.path().string().size(), "");
    };
    CHECK(told("gone.toml") == "/gone.toml: error: there is no such file\n");
    CHECK(to_text(to_diagnostic(read_text_file("", 1000).fault())) ==
          "error: the name of a file is empty\n");
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
    CHECK(read_text_file(folder / "good", 1000).value().size() == 1000);
}

TEST_CASE("a file that may not be read says so") {
    CHECK(to_text(to_diagnostic({FileFault::Kind::NotPermitted, "x", 0, 0, EACCES})) ==
          "x: error: you are not permitted to read this file\n");
}

TEST_CASE("a file that breaks off while it is read is refused") {
    // Linux, proc(5): the memory of this process, of which nothing is at the address 0.
    const std::string broken = "/proc/self/mem";
    if (!std::filesystem::exists(broken)) {
        return skip("no file here fails to be read");
    }
    const auto text = read_text_file(broken, 1000);
    REQUIRE_FALSE(text.ok());
    CHECK(text.fault().kind == FileFault::Kind::Unreadable);
    CHECK(text.fault().error == EIO);
}

TEST_CASE("an empty path and one with a zero byte name no file") {
    for (const auto& path : {std::string{}, std::string{"a\0b", 3}}) {
        const auto text = read_text_file(path, 1000);
        REQUIRE_FALSE(text.ok());
        CHECK(text.fault().kind == FileFault::Kind::Missing);
    }
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
    const auto text = read_text_file(folder / "locked", 1000);
    REQUIRE_FALSE(text.ok());
    CHECK(text.fault().kind == FileFault::Kind::NotPermitted);
}
