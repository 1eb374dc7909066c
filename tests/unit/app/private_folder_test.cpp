// Folders that the user alone may look into.

#include "app/desk/private_folder.h"
#include "base/system_failure.h"
#include "support/command.h"

#include <doctest/doctest.h>
#include <filesystem>

using namespace thawslip;
using namespace thawslip::test_support;
using app::make_private_folder;
namespace fs = std::filesystem;

namespace {

std::string refusal_of(const std::string& folder) {
    try {
        make_private_folder(folder);
        return "";
    } catch (const SystemFailure& failure) {
        return failure.what();
    }
}

} // namespace

TEST_CASE("a folder is made for its owner alone, with those above it") {
    const ScratchFolder scratch;
    make_private_folder(scratch / "run/desk");
    CHECK(mode_of(scratch / "run/desk") == 0700U);
    CHECK_NOTHROW(make_private_folder(scratch / "run/desk"));
}

TEST_CASE("one that is there loses what others may do in it, and keeps what is in it") {
    const ScratchFolder scratch;
    for (const auto mode : {0755U, 0770U, 0701U}) {
        const auto folder = scratch / std::to_string(mode);
        fs::create_directory(folder);
        write_file(folder + "/file", "kept");
        fs::permissions(folder, fs::perms{mode});
        make_private_folder(folder);
        CHECK(mode_of(folder) == 0700U);
        CHECK(read_file(folder + "/file") == "kept");
    }
}

TEST_CASE("what only has the folder's name is refused") {
    const ScratchFolder scratch;
    write_file(scratch / "file", "kept");
    fs::create_directory(scratch / "mine");
    fs::create_symlink(scratch / "mine", scratch / "link");
    CHECK(refusal_of(scratch / "file").find("something else that is not yours has its name") !=
          std::string::npos);
    CHECK(refusal_of(scratch / "link").find("something else that is not yours has its name") !=
          std::string::npos);
    CHECK(refusal_of(scratch / "file/below").find("cannot create the folder") == 0);
    CHECK(read_file(scratch / "file") == "kept");
}
