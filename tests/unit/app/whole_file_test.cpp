// A file that appears whole or not at all. /dev/full, which has no room: full(4), Linux.

#include "app/exit_status.h"
#include "app/files/whole_file.h"
#include "support/command.h"

#include <doctest/doctest.h>
#include <filesystem>
#include <sys/stat.h>

namespace whole_file_test {

using namespace thawslip;
using namespace thawslip::test_support;
using app::Readers;
using app::WholeFile;
namespace fs = std::filesystem;

namespace {

/// The permissions of new files while it is there.
struct Mask {
    mode_t before;
    explicit Mask(mode_t mask) : before{::umask(mask)} {}
    Mask(const Mask&) = delete;
    Mask& operator=(const Mask&) = delete;
    ~Mask() { ::umask(before); }
};

} // namespace

TEST_CASE("what is written is there when it is whole, however much it is") {
    const ScratchFolder folder;
    for (const std::size_t size : {std::size_t{0}, std::size_t{1}, std::size_t{65'535},
                                   std::size_t{65'536}, std::size_t{200'000}}) {
        CAPTURE(size);
        std::string text;
        while (text.size() < size) {
            text += std::to_string(text.size());
        }
        text.resize(size);
        const auto place = folder / "sheet.pdf";
        WholeFile file{place};
        file.write(text);
        file.write("end");
        const auto before = fs::exists(place) ? read_file(place) : std::string{};
        CHECK(before != text + "end");
        file.commit();
        CHECK(read_file(place) == text + "end");
    }
    CHECK(files_in(folder.path()).size() == 1);
}

TEST_CASE("what is not finished, or may not be any longer, leaves what was there") {
    const ScratchFolder folder;
    const auto place = folder / "sheet.pdf";
    {
        WholeFile file{place};
        file.write("new");
    }
    CHECK(files_in(folder.path()).empty());
    write_file(place, "old");
    {
        WholeFile file{place};
        file.write("new");
        CHECK_FALSE(file.commit_if([] { return false; }));
    }
    CHECK(read_file(place) == "old");
    {
        WholeFile file{place};
        file.write("new");
        CHECK(file.commit_if([&] { return read_file(place) == "old"; }));
    }
    CHECK(read_file(place) == "new");
    CHECK(files_in(folder.path()).size() == 1);
}

TEST_CASE("a new file is read by whom the user lets, one that is replaced by whom it was") {
    const ScratchFolder folder;
    const Mask usual{0027};
    app::write_whole_file(folder / "usual", "words");
    CHECK(mode_of(folder / "usual") == 0640U);
    app::write_whole_file(folder / "own", "words", Readers::OwnerAlone);
    CHECK(mode_of(folder / "own") == 0600U);
    fs::permissions(folder / "own", fs::perms{0604});
    app::write_whole_file(folder / "own", "other words", Readers::OwnerAlone);
    CHECK(mode_of(folder / "own") == 0604U);
    CHECK(read_file(folder / "own") == "other words");
    CHECK(::umask(0027) == 0027); // as it was
}

TEST_CASE("a link stays one, and what it leads to is written") {
    const ScratchFolder folder;
    write_file(folder / "real", "old");
    fs::create_symlink("real", folder / "link");
    app::write_whole_file(folder / "link", "new");
    CHECK(fs::is_symlink(folder / "link"));
    CHECK(read_file(folder / "real") == "new");
    fs::create_symlink("round", folder / "round");
    CHECK_THROWS_WITH_AS(WholeFile{folder / "round"},
                         doctest::Contains(("cannot write " + (folder / "round") + ": ").c_str()),
                         SystemFailure);
}

TEST_CASE("what is no file, or has no folder, is refused by its name") {
    const ScratchFolder folder;
    const auto why = [](const std::string& place) {
        try {
            const WholeFile file{place};
            return std::string{"it may be written"};
        } catch (const SystemFailure& failure) {
            return std::string{failure.what()};
        }
    };
    const auto here = folder.path().string();
    CHECK(why(here) == "cannot write " + here + ": it is a directory, not a file");
    CHECK(why("/dev/full") == "cannot write /dev/full: it is a device or a pipe, not a file");
    CHECK(why(folder / "missing/sheet.pdf").find("missing/sheet.pdf: ") != std::string::npos);
}

} // namespace whole_file_test
