// One desk serves a folder; who comes second is told where the first one is.

#include "app/desk/private_folder.h"
#include "app/desk/run_file.h"
#include "base/system_failure.h"
#include "support/command.h"
#include "support/variable.h"

#include <doctest/doctest.h>
#include <filesystem>

using namespace thawslip;
using namespace thawslip::test_support;
using app::RunFile;
using app::RunningDesk;
namespace fs = std::filesystem;

namespace {

const std::string days = "/orchard/days";
const std::string key = "00112233445566778899aabbccddeeff";

/// Run files stand below a folder of the test's own.
struct Running {
    ScratchFolder folder;
    Variable runtime{"XDG_RUNTIME_DIR", folder.path().string()};

    /// Where the only desk has its file.
    static fs::path place() {
        const auto files = files_in(app::run_folder());
        REQUIRE(files.size() == 1);
        return files.front();
    }
    /// Where the desk of `days` had its file that has ended.
    static fs::path place_of_ended() {
        std::optional<RunningDesk> other;
        const auto desk = RunFile::take(days, other);
        return place();
    }
};

} // namespace

TEST_CASE("the second desk of a folder finds the first, one of another folder does not") {
    const Running running;
    std::optional<RunningDesk> other;
    const auto first = RunFile::take(days, other);
    REQUIRE(first != nullptr);
    CHECK_FALSE(other.has_value());
    first->say({4711, 8080, key});
    CHECK(RunFile::take(days, other) == nullptr);
    REQUIRE(other.has_value());
    CHECK(other->process == 4711);
    CHECK(other->port == 8080);
    CHECK(other->key == key);
    std::optional<RunningDesk> none;
    CHECK(RunFile::take("/orchard/other", none) != nullptr);
    CHECK_FALSE(none.has_value());
}

TEST_CASE("a run file is its owner's alone, names no folder, and goes with its desk") {
    const Running running;
    std::optional<RunningDesk> other;
    {
        const auto desk = RunFile::take(days, other);
        CHECK(mode_of(Running::place()) == 0600U);
        CHECK(Running::place().filename().string().find("orchard") == std::string::npos);
    }
    CHECK(files_in(app::run_folder()).empty());
    CHECK(RunFile::take(days, other) != nullptr);
}

TEST_CASE("what a killed desk has left stands in nobody's way") {
    const Running running;
    const auto place = Running::place_of_ended();
    std::optional<RunningDesk> other;
    write_file(place, "4711 8080 " + key + "\n" + std::string(100, 'x'));
    const auto desk = RunFile::take(days, other);
    REQUIRE(desk != nullptr);
    CHECK_FALSE(other.has_value());
    desk->say({1, 2, key});
    CHECK(read_file(place) == "1 2 " + key + "\n");
}

TEST_CASE("a run file that leads elsewhere is refused, and what it leads to stays") {
    const Running running;
    const auto place = Running::place_of_ended();
    std::optional<RunningDesk> other;
    const auto precious = running.folder / "precious";
    write_file(precious, "kept");
    fs::create_symlink(precious, place);
    std::string why;
    try {
        RunFile::take(days, other);
    } catch (const SystemFailure& failure) {
        why = failure.what();
    }
    CHECK(why.find("cannot write " + place.string()) == 0);
    CHECK(read_file(precious) == "kept");
}
