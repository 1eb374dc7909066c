// Which files of a folder are days.

#include "app/desk/days_in.h"
#include "base/system_failure.h"
#include "support/command.h"

#include <doctest/doctest.h>
#include <filesystem>

using namespace thawslip;
using namespace thawslip::test_support;
namespace fs = std::filesystem;

using Names = std::vector<std::string>;

TEST_CASE("days are told from other TOML by their tables, whatever else is wrong") {
    const ScratchFolder folder;
    write_file(folder / "b.toml", "[day]\nmade = 2026-10-17\n");
    write_file(folder / "a.toml", "  [[ \"package\" ]\nnot closed");
    write_file(folder / "c.toml", "day.made = 2026-10-17\n");
    write_file(folder / "d.toml", "title = \"one\"\n[package.thaw]\n");
    write_file(folder / "layout.toml", "[areas]\nkind = \"day\"\n");
    write_file(folder / "words.toml", "daylight = 1\npackages = 2\n");
    write_file(folder / "empty.toml", "");
    write_file(folder / "day.txt", "[day]\n");
    write_file(folder / ".hidden.toml", "[day]\n");
    fs::create_directory(folder / "folder.toml");
    app::DaysIn days{folder.path().string(), ""};
    CHECK(days.names() == Names{"a.toml", "b.toml", "c.toml", "d.toml"});
}

TEST_CASE("the file that was named is a day whatever stands in it") {
    const ScratchFolder folder;
    write_file(folder / "october.txt", "");
    app::DaysIn days{folder.path().string(), "october.txt"};
    CHECK(days.names() == Names{"october.txt"});
}

TEST_CASE("a file that changes is read again, and links out of the folder are not followed") {
    const ScratchFolder folder;
    const ScratchFolder elsewhere;
    write_file(elsewhere / "far.toml", "[day]\n");
    fs::create_symlink(elsewhere / "far.toml", folder / "far.toml");
    write_file(folder / "october.toml", "# nothing yet\n");
    app::DaysIn days{folder.path().string(), ""};
    CHECK(days.names().empty());
    write_file(folder / "october.toml", "# nothing yet\n[day]\n");
    CHECK(days.names() == Names{"october.toml"});
    // As many bytes as before, and another time of writing.
    write_file(folder / "october.toml", "# nothing yet\n#day]\n");
    fs::last_write_time(folder / "october.toml",
                        fs::last_write_time(folder / "october.toml") + std::chrono::seconds{2});
    CHECK(days.names().empty());
    fs::remove(folder / "october.toml");
    CHECK(days.names().empty());
}

TEST_CASE("a folder that is not there has no days, and one that is a file is told") {
    const ScratchFolder folder;
    app::DaysIn none{folder / "missing", ""};
    CHECK(none.names().empty());
    write_file(folder / "file", "");
    app::DaysIn file{folder / "file", ""};
    CHECK_THROWS_AS(file.names(), SystemFailure);
}
