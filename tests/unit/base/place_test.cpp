#include "base/place.h"
#include "support/command.h"

#include <doctest/doctest.h>

using namespace thawslip;
using test_support::ScratchFolder;
using test_support::write_file;
namespace fs = std::filesystem;

TEST_CASE("a place is the same by whatever path or link, and though nothing is there yet") {
    const ScratchFolder folder;
    write_file(folder / "file", "x");
    fs::create_directory(folder / "below");
    fs::create_hard_link(folder / "file", folder / "hard");
    fs::create_symlink("file", folder / "soft");
    fs::create_symlink("soft", folder / "softer");
    fs::create_symlink("not-yet", folder / "dangling");
    fs::create_directory_symlink("below", folder / "also-below");
    for (const std::string name : {"file", "hard", "soft", "softer", "below/../file", "./file"}) {
        CAPTURE(name);
        CHECK(is_same_place(folder / name, folder / "file"));
    }
    CHECK(is_same_place(folder / "dangling", folder / "not-yet"));
    CHECK(is_same_place(folder / "below/new", folder / "also-below//new"));
    CHECK_FALSE(is_same_place(folder / "not-yet", folder / "file"));
    CHECK_FALSE(is_same_place("", ""));
}

TEST_CASE("links that go round lead nowhere") {
    const ScratchFolder folder;
    fs::create_symlink("b", folder / "a");
    fs::create_symlink("a", folder / "b");
    CHECK(!end_of_links(folder / "a"));
    CHECK(end_of_links("nothing") == "nothing");
    CHECK_FALSE(is_same_place(folder / "a", folder / "b"));
}

TEST_CASE("a file stands in a folder whether or not it is there, by any link") {
    const ScratchFolder folder;
    fs::create_directories(folder / "in/deep");
    fs::create_symlink("in/deep/x", folder / "link");
    CHECK(stands_in(folder / "in/deep/x", folder / "in"));
    CHECK(stands_in(folder / "link", folder / "in"));
    CHECK_FALSE(stands_in(folder / "inner", folder / "in"));
    CHECK_FALSE(stands_in(folder / "in/../x", folder / "in"));
}
