// The folder that the desk serves: what it is, and what of it is read and written.

#include "app/desk/day_folder.h"
#include "base/system_failure.h"
#include "support/command.h"
#include "support/variable.h"

#include <doctest/doctest.h>
#include <filesystem>
#include <sys/stat.h>

namespace day_folder_test {

using namespace thawslip;
using namespace thawslip::test_support;
namespace fs = std::filesystem;

namespace {

const std::string day = "[day]\nmade = 2026-10-17\n";

struct Days {
    ScratchFolder scratch;
    std::string path = scratch / "days";
    desk::Folder folder = app::day_folder({path, ""}, [](const std::string& file) {
        return file.ends_with("kept.toml") ? std::string{"the kitchen's own"} : std::string{};
    });

    bool write(const std::string& name, const std::optional<std::string>& before = {}) const {
        return folder.write(name, before, day);
    }
};

} // namespace

TEST_CASE_FIXTURE(Days, "what is no name of a file in the folder is neither read nor written") {
    fs::create_directories(path + "/below");
    const std::string cut{"day.toml\0.txt", 13};
    for (const auto& name : {std::string{}, std::string{"."}, std::string{".."},
                             std::string{".hidden.toml"}, std::string{"below/day.toml"},
                             std::string{"../day.toml"}, std::string{"/tmp/day.toml"}, cut}) {
        CAPTURE(name);
        CHECK_THROWS_AS(folder.read(name), SystemFailure);
        CHECK_THROWS_AS(write(name), SystemFailure);
    }
    CHECK(fs::is_empty(path + "/below"));
    CHECK_FALSE(fs::exists(scratch / "day.toml"));
}

TEST_CASE_FIXTURE(Days, "the folder is made when something is written, and not before") {
    CHECK(folder.names().empty());
    CHECK(folder.read("day.toml") == std::nullopt);
    CHECK_FALSE(fs::exists(path));
    CHECK(write("day.toml"));
    CHECK(folder.names() == std::vector<std::string>{"day.toml"});
    CHECK(folder.read("day.toml") == day);
    CHECK(folder.place("day.toml") == path + "/day.toml");
}

TEST_CASE_FIXTURE(Days, "nothing is written over that is not as it was, or is another's") {
    REQUIRE(write("day.toml"));
    CHECK_FALSE(write("day.toml")); // there is one already
    CHECK_FALSE(write("day.toml", "[day]\n"));
    CHECK(write("day.toml", day));
    CHECK_FALSE(write("gone.toml", day));
    CHECK_FALSE(fs::exists(path + "/gone.toml"));
    CHECK_THROWS_AS(write("kept.toml"), SystemFailure);
    CHECK_FALSE(fs::exists(path + "/kept.toml"));
}

TEST_CASE_FIXTURE(Days, "a file is taken away as it was seen, and no other") {
    REQUIRE(write("day.toml"));
    CHECK_FALSE(folder.remove("day.toml", "[day]\n"));
    CHECK(fs::exists(path + "/day.toml"));
    CHECK(folder.remove("day.toml", day));
    CHECK_FALSE(fs::exists(path + "/day.toml"));
    CHECK_FALSE(folder.remove("day.toml", day));
    CHECK_THROWS_AS(folder.remove("kept.toml", day), SystemFailure);
    CHECK_THROWS_AS(folder.remove("../day.toml", day), SystemFailure);
}

TEST_CASE_FIXTURE(Days, "a link that leads out of the folder leads nowhere") {
    fs::create_directories(path);
    write_file(scratch / "outside.toml", day);
    fs::create_symlink("../outside.toml", path + "/link.toml");
    CHECK(folder.read("link.toml") == std::nullopt);
    CHECK_THROWS_AS(write("link.toml", day), SystemFailure);
    CHECK(folder.names().empty());
}

TEST_CASE("the desk's place is a folder, or the folder of a day, by its whole path") {
    const ScratchFolder scratch;
    const auto real = fs::canonical(scratch.path()).string();
    write_file(scratch / "a.toml", day);
    const auto folder = app::desk_place(real + "/./");
    REQUIRE(folder);
    CHECK(fs::path{folder.value().folder + "/"} == fs::path{real + "/"});
    CHECK(folder.value().open.empty());
    const auto file = app::desk_place(real + "/a.toml");
    REQUIRE(file);
    CHECK(file.value().folder == real);
    CHECK(file.value().open == "a.toml");
    const auto nothing = app::desk_place(real + "/b.toml");
    REQUIRE_FALSE(nothing);
    CHECK(nothing.fault() == real + "/b.toml is not there; expected a folder, or a day in one");
    write_file(scratch / "photo.png", "no day");
    const auto photo = app::desk_place(real + "/photo.png");
    REQUIRE_FALSE(photo);
    CHECK(photo.fault() == real + "/photo.png is no day: its name does not end in .toml; expected "
                                  "a folder, or a day in one");
    REQUIRE(::mkfifo((real + "/pipe").c_str(), 0600) == 0);
    const auto pipe = app::desk_place(real + "/pipe");
    REQUIRE_FALSE(pipe);
    CHECK(pipe.fault() ==
          real + "/pipe is neither a folder nor a file; expected a folder, or a day in one");
}

TEST_CASE("where nothing is named, days are in a folder among the user's documents") {
    const ScratchFolder scratch;
    const auto real = fs::canonical(scratch.path()).string();
    const Variable config{"XDG_CONFIG_HOME", std::nullopt};
    const Variable home{"HOME", real};
    const auto place = app::desk_place("");
    REQUIRE(place);
    CHECK(place.value().folder == real + "/Thawslip");
    CHECK_FALSE(fs::exists(real + "/Thawslip"));
    const Variable nowhere{"HOME", "cook"};
    CHECK_FALSE(app::desk_place(""));
}

} // namespace day_folder_test
