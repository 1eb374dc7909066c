// The cook's own files, as a print keeps them and finds them again.

#include "app/files/kept_files.h"
#include "app/files/text_if_there.h"
#include "base/system_failure.h"
#include "support/command.h"

#include <doctest/doctest.h>
#include <filesystem>

using namespace thawslip;
using namespace thawslip::test_support;

TEST_CASE("names of files last from any folder, names of what is shipped stay") {
    archive::PrintSetup setup;
    setup.stock = "letter-2x5-4x2in-cut";
    setup.layout = "mine/../narrow.toml";
    setup.files = {{"./narrow.toml", "text"}};
    const auto lasting = app::with_lasting_names(setup);
    const auto here = std::filesystem::current_path();
    CHECK(lasting.stock == "letter-2x5-4x2in-cut");
    CHECK(lasting.layout == (here / "narrow.toml").string());
    REQUIRE(lasting.files.size() == 1);
    CHECK(lasting.files.front().name == (here / "narrow.toml").string());
    CHECK(lasting.files.front().text == "text");
}

TEST_CASE("files that are not as they were kept are named, with what became of them") {
    const ScratchFolder folder;
    write_file(folder / "same.toml", "one\n");
    write_file(folder / "other.toml", "two\n");
    const auto changed = app::changed_files({{folder / "same.toml", "one\n"},
                                             {folder / "other.toml", "one\n"},
                                             {folder / "gone.toml", "one\n"}});
    CHECK(changed == std::vector{(folder / "other.toml") + " has changed",
                                 (folder / "gone.toml") + " is gone"});
}

TEST_CASE("a file that need not be there is read, is none, or is told") {
    const ScratchFolder folder;
    write_file(folder / "here", "words");
    CHECK(app::text_if_there(folder / "here", 5) == "words");
    CHECK_FALSE(app::text_if_there(folder / "missing", 5).has_value());
    CHECK_THROWS_AS(app::text_if_there(folder / "here", 4), SystemFailure);
    CHECK_THROWS_AS(app::text_if_there(folder.path().string(), 5), SystemFailure);
}
