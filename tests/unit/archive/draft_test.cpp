// A file that is written under another name first.

#include "archive/draft.h"
#include "support/command.h"

#include <doctest/doctest.h>
#include <filesystem>
#include <iterator>

using namespace thawslip;
using namespace thawslip::test_support;

TEST_CASE("a draft holds no file open, for who fills it opens it by its name") {
    const auto open_files = [] {
        return std::distance(std::filesystem::directory_iterator{"/proc/self/fd"}, {});
    };
    const ScratchFolder folder;
    const auto before = open_files();
    const archive::Draft draft{folder / "archive.db"};
    CHECK(open_files() == before);
}
