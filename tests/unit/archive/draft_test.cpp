// A file that is written under another name first.

#include "archive/draft.h"
#include "archive/fault.h"
#include "support/command.h"

#include <doctest/doctest.h>
#include <filesystem>
#include <iterator>

using namespace thawslip;
using namespace thawslip::test_support;

namespace draft_test {

namespace fs = std::filesystem;

namespace {

std::size_t files_in(const ScratchFolder& folder) {
    return static_cast<std::size_t>(std::distance(fs::directory_iterator{folder.path()}, {}));
}

/// What is told of a file that cannot be made; empty where it could.
template <class Work>
std::string refusal_of(const Work& work) {
    try {
        work();
    } catch (const archive::ArchiveFailure& failure) {
        CHECK(failure.fault().kind == archive::ArchiveFault::Kind::CannotOpen);
        return failure.fault().message;
    }
    return {};
}

} // namespace

TEST_CASE("a draft holds no file open, for who fills it opens it by its name") {
    const auto open_files = [] {
        return std::distance(std::filesystem::directory_iterator{"/proc/self/fd"}, {});
    };
    const ScratchFolder folder;
    const auto before = open_files();
    const archive::Draft draft{folder / "archive.db"};
    CHECK(open_files() == before);
}

TEST_CASE("what nobody takes is gone, with all that was made beside it") {
    const ScratchFolder folder;
    {
        const archive::Draft draft{folder / "archive.db"};
        CHECK(files_in(folder) == 1);
        for (const char* companion : {"-journal", "-wal", "-shm"}) {
            write_file(draft.name() + companion, "x");
        }
    }
    CHECK(files_in(folder) == 0);
}

TEST_CASE("a draft takes a free name, and no other's unless it is to take its place") {
    const ScratchFolder folder;
    const auto file = folder / "archive.db";
    {
        const archive::Draft draft{file};
        write_file(draft.name(), "first");
        draft.take_name();
    }
    CHECK(read_file(file) == "first");
    CHECK(files_in(folder) == 1);
    {
        const archive::Draft draft{file};
        write_file(draft.name(), "second");
        CHECK(refusal_of([&] { draft.take_name(); }).starts_with("cannot make " + file + ": "));
        CHECK(read_file(file) == "first");
        draft.take_place();
    }
    CHECK(read_file(file) == "second");
    CHECK(files_in(folder) == 1);
}

TEST_CASE("a file that cannot be made is named, with the reason") {
    const ScratchFolder folder;
    const auto nowhere = folder / "none/archive.db";
    // rename(2): a file takes no folder's place, and a folder that is not there holds none.
    CHECK(refusal_of([&] { const archive::Draft draft{nowhere}; }) ==
          "cannot make " + nowhere + ": No such file or directory");
    const auto taken = folder / "taken";
    fs::create_directories(taken + "/inside");
    const archive::Draft draft{taken};
    CHECK(refusal_of([&] { draft.take_place(); }) == "cannot make " + taken + ": Is a directory");
}

TEST_CASE("folders that are missing are made for their owner alone, and others stay as they are") {
    const ScratchFolder folder;
    fs::create_directory(folder / "there");
    fs::permissions(folder / "there", fs::perms(0755));
    archive::make_folders(folder / "there/new/inner");
    CHECK(fs::status(folder / "there").permissions() == fs::perms(0755));
    CHECK(fs::status(folder / "there/new").permissions() == fs::perms::owner_all);
    CHECK(fs::status(folder / "there/new/inner").permissions() == fs::perms::owner_all);
}

} // namespace draft_test
