// Where the archive is, as the settings say it, or where nobody says.

#include "app/archive_place.h"
#include "app/exit_status.h"
#include "app/server_archive.h"
#include "support/command.h"
#include "support/variable.h"

#include <doctest/doctest.h>
#include <sstream>

namespace archive_place_test {

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

app::Settings kept_at(const std::string& place) {
    app::Settings settings;
    settings.archive = place;
    return settings;
}

} // namespace

TEST_CASE("a file counts from the folder of who names it, and ~/ is the home folder") {
    const Variable home{"HOME", "/home/cook"};
    CHECK(app::file_place("barn.db", "/orchard").value() == "/orchard/barn.db");
    CHECK(app::file_place("barn.db", "").value() == "barn.db");
    CHECK(app::file_place("/srv/barn.db", "/orchard").value() == "/srv/barn.db");
    CHECK(app::file_place("~/barn.db", "/orchard").value() == "/home/cook/barn.db");
    CHECK(app::file_place("./~x", "/orchard").value() == "/orchard/./~x");
    CHECK(app::file_place("~anna/barn.db", "/orchard").fault() ==
          "\"~anna/barn.db\": ~ stands for the home folder only as \"~/\"; a file called so is "
          "\"./~anna/barn.db\"");
    const Variable nobody{"HOME", std::nullopt};
    CHECK(app::file_place("~/barn.db", "/orchard").fault() ==
          "\"~/barn.db\": HOME, for which ~ stands, is no absolute path");
}

TEST_CASE("an archive is a file or on a server, and never only in memory") {
    CHECK(app::archive_place("barn.db", "/orchard").value() == "/orchard/barn.db");
    CHECK(app::archive_place(":memory:", "/orchard").fault() ==
          "\":memory:\" is no file that an archive could be kept in");
    const std::string address = "postgresql://cook@barn.test/freezer";
    CHECK(app::archive_place(address, "/orchard").value() == address); // counts from no folder
    CHECK_FALSE(app::archive_place("postgresql://barn.test/cold?kitchen=", "/orchard").ok());
}

TEST_CASE("where nobody says, the archive is among the user's data, or its place is not known") {
    const Variable home{"HOME", "/home/cook"};
    {
        const Variable data{"XDG_DATA_HOME", "/srv/data"};
        CHECK(app::archive_file({}) == "/srv/data/thawslip/archive.db");
        CHECK(app::archive_file(kept_at("/orchard/barn.db")) == "/orchard/barn.db");
    }
    const Variable data{"XDG_DATA_HOME", std::nullopt};
    CHECK(app::archive_file({}) == "/home/cook/.local/share/thawslip/archive.db");
    const Variable nobody{"HOME", std::nullopt};
    CHECK(app::archive_file_if_known({}) == "");
    CHECK_THROWS_AS(app::archive_file({}), SystemFailure);
}

TEST_CASE("of an archive on a server this computer has a file of its own for each address") {
    const Variable data{"XDG_DATA_HOME", "/srv/data"};
    const auto file = app::archive_file(kept_at("postgresql://cook@barn.test/freezer"));
    CHECK(file.starts_with("/srv/data/thawslip/server-"));
    CHECK(file.ends_with(".db"));
    CHECK(app::station_file("postgresql://cook@barn.test/freezer") == file);
    CHECK(app::station_file("postgresql://cook@shed.test/freezer") != file);
    CHECK(app::station_file("postgresql://barn.test/cold?kitchen=") == "");
}

TEST_CASE("asking about nothing makes no file, and what cannot be opened is told") {
    const ScratchFolder folder;
    const auto settings = kept_at(folder / "archive.db");
    CHECK_FALSE(app::existing_archive(settings, archive::Mode::Write));
    std::ostringstream out;
    std::ostringstream err;
    CHECK_FALSE(app::needed_archive(settings, archive::Mode::Read, {out, err}));
    CHECK(err.str() == "error: there is no archive at " + (folder / "archive.db") +
                           ": nothing has been printed yet\n");
    CHECK(out.str() == "");
    CHECK(files_in(folder.path()).empty());
    app::open_archive(settings, archive::Mode::Write);
    CHECK(app::existing_archive(settings, archive::Mode::Read));
    CHECK(app::existing_archive(settings, archive::Mode::Write));
    CHECK(app::needed_archive(settings, archive::Mode::Read, {out, err}));
    const auto broken = kept_at(folder / "broken.db");
    write_file(broken.archive, "no archive, but a shopping list of some length");
    CHECK_THROWS_AS(app::existing_archive(broken, archive::Mode::Read), SystemFailure);
    CHECK_THROWS_AS(app::open_archive(broken, archive::Mode::Write), SystemFailure);
}

} // namespace archive_place_test
