// A folder that appears whole or not at all.

#include "app/exit_status.h"
#include "app/whole_folder.h"
#include "support/command.h"

#include <doctest/doctest.h>
#include <filesystem>

namespace whole_folder_test {

using namespace thawslip;
using namespace thawslip::test_support;
using app::WholeFolder;
namespace fs = std::filesystem;

TEST_CASE("what was put into a folder is there when it is whole, for its owner alone") {
    const ScratchFolder scratch;
    const auto place = scratch / "export";
    {
        WholeFolder folder{place + "//"};
        folder.add_folder("days");
        folder.add_folder("days/0001");
        folder.add_file("days/0001/record.toml", "words\n");
        folder.add_file("archive.toml", "");
        CHECK_FALSE(fs::exists(place));
        folder.commit();
        CHECK(read_file(place + "/days/0001/record.toml") == "words\n");
    }
    CHECK(read_file(place + "/days/0001/record.toml") == "words\n");
    CHECK(fs::is_regular_file(place + "/archive.toml"));
    CHECK(mode_of(place) == 0700U);
    CHECK(mode_of(place + "/days") == 0700U);
    CHECK(mode_of(place + "/archive.toml") == 0600U);
    CHECK(files_in(scratch.path()).size() == 1);
}

TEST_CASE("what is not finished leaves nothing behind") {
    const ScratchFolder scratch;
    {
        WholeFolder folder{scratch / "export"};
        folder.add_folder("days");
        folder.add_folder("days/0001");
        folder.add_file("days/0001/record.toml", "words\n");
        folder.add_file("archive.toml", "words\n");
        CHECK_FALSE(files_in(scratch.path()).empty());
    }
    CHECK(files_in(scratch.path()).empty());
}

TEST_CASE("an empty folder is taken, and one that holds something stays as it is") {
    const ScratchFolder scratch;
    const auto place = scratch / "export";
    fs::create_directory(place);
    CHECK_FALSE(app::holds_something(place));
    {
        WholeFolder folder{place};
        folder.add_file("archive.toml", "words\n");
        folder.commit();
    }
    CHECK(app::holds_something(place));
    CHECK_THROWS_WITH_AS(WholeFolder{place},
                         (place + " already exists and is not empty; nothing was written").c_str(),
                         SystemFailure);
    write_file(scratch / "file", "kept");
    fs::create_symlink("nowhere", scratch / "link");
    for (const std::string name : {"file", "link"}) {
        CHECK(app::holds_something(scratch / name));
        CHECK_THROWS_AS(WholeFolder{scratch / name}, SystemFailure);
    }
    CHECK_FALSE(app::holds_something(scratch / "missing"));
    CHECK(read_file(scratch / "file") == "kept");
    CHECK(files_in(scratch.path()).size() == 3);
}

TEST_CASE("what comes into the place meanwhile stays, and that is told") {
    const ScratchFolder scratch;
    const auto place = scratch / "export";
    {
        WholeFolder folder{place};
        folder.add_file("archive.toml", "words\n");
        fs::create_directory(place);
        write_file(place + "/other", "kept");
        CHECK_THROWS_AS(folder.commit(), SystemFailure);
    }
    CHECK(read_file(place + "/other") == "kept");
    CHECK(files_in(scratch.path()).size() == 1);
}

TEST_CASE("what cannot be made is told by the place that the cook knows") {
    const ScratchFolder scratch;
    const auto place = scratch / "export";
    WholeFolder folder{place};
    folder.add_folder("days");
    folder.add_file("archive.toml", "words\n");
    CHECK_THROWS_WITH_AS(folder.add_folder("days"),
                         doctest::Contains(("cannot write " + place + "/days: ").c_str()),
                         SystemFailure);
    CHECK_THROWS_WITH_AS(folder.add_file("archive.toml", ""),
                         doctest::Contains(("cannot write " + place + "/archive.toml: ").c_str()),
                         SystemFailure);
    CHECK_THROWS_AS(WholeFolder{scratch / "missing/export"}, SystemFailure);
}

} // namespace whole_folder_test
