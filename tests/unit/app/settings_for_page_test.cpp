// The settings that the page sets are written as they were seen, or not at all.

#include "app/desk/settings_for_page.h"
#include "app/exit_status.h"
#include "support/command.h"
#include "support/variable.h"

#include <doctest/doctest.h>
#include <filesystem>

namespace settings_for_page_test {

using namespace thawslip;
using namespace thawslip::test_support;
namespace fs = std::filesystem;

TEST_CASE("settings are written where they are named, with the folders above them") {
    const ScratchFolder folder;
    const auto place = folder / "kitchen/settings.toml";
    const auto file = app::settings_for_page(place);
    CHECK(file.place == place);
    CHECK(file.read() == std::nullopt);
    CHECK_FALSE(fs::exists(folder / "kitchen"));
    CHECK(file.write(std::nullopt, "paper = \"a4\"\n"));
    CHECK(file.read() == "paper = \"a4\"\n");
    CHECK(file.write("paper = \"a4\"\n", "paper = \"letter\"\n"));
    CHECK(read_file(place) == "paper = \"letter\"\n");
}

TEST_CASE("what somebody else has changed meanwhile is not written over") {
    const ScratchFolder folder;
    const auto place = folder / "settings.toml";
    const auto file = app::settings_for_page(place);
    write_file(place, "paper = \"a4\"\n");
    CHECK_FALSE(file.write(std::nullopt, "units = \"us\"\n"));
    CHECK_FALSE(file.write("paper = \"letter\"\n", "units = \"us\"\n"));
    CHECK(read_file(place) == "paper = \"a4\"\n");
    fs::remove(place);
    CHECK_FALSE(file.write("paper = \"a4\"\n", "units = \"us\"\n"));
    CHECK_FALSE(fs::exists(place));
}

TEST_CASE("where none is named it is the usual file, and without a home there is none") {
    const ScratchFolder folder;
    const Variable home{"HOME", folder.path().string()};
    const Variable config{"XDG_CONFIG_HOME", std::nullopt};
    CHECK(app::settings_for_page("").place == folder / ".config/thawslip/settings.toml");
    const Variable nobody{"HOME", std::nullopt};
    const auto nowhere = app::settings_for_page("");
    CHECK(nowhere.place == "");
    CHECK(nowhere.read() == std::nullopt);
    CHECK_THROWS_WITH_AS(nowhere.write(std::nullopt, ""),
                         "there is no home folder to keep settings in", SystemFailure);
}

} // namespace settings_for_page_test
