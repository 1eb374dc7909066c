// Where a user's things are: freedesktop.org, XDG Base Directory Specification, 0.8, 2021,
// "Environment variables" (a relative path is to be taken as none); xdg-user-dirs,
// user-dirs.dirs(5) (XDG_…_DIR="$HOME/…" or "/…").

#include "app/files/user_folders.h"
#include "support/command.h"
#include "support/variable.h"

#include <doctest/doctest.h>
#include <filesystem>

namespace user_folders_test {

using namespace thawslip;
using namespace thawslip::test_support;
namespace fs = std::filesystem;

namespace {

/// A home folder, whose desktop may say where documents are.
struct Home {
    ScratchFolder folder;
    std::string path = folder.path().string();
    Variable home{"HOME", path};
    Variable config{"XDG_CONFIG_HOME", std::nullopt};

    std::string documents_with(const std::string& user_dirs) const {
        fs::create_directories(path + "/.config");
        write_file(path + "/.config/user-dirs.dirs", user_dirs);
        return app::documents_folder();
    }
};

} // namespace

TEST_CASE("a folder that a variable names is absolute, and has no slashes at its end") {
    for (const auto& [value, folder] : {std::pair{"/srv/kitchen", "/srv/kitchen"},
                                        {"/srv/kitchen///", "/srv/kitchen"},
                                        {"/", "/"},
                                        {"srv/kitchen", ""},
                                        {"", ""}}) {
        CAPTURE(value);
        const Variable set{"XDG_DATA_HOME", value};
        CHECK(app::folder_in("XDG_DATA_HOME") == folder);
    }
    const Variable none{"XDG_DATA_HOME", std::nullopt};
    CHECK(app::folder_in("XDG_DATA_HOME").empty());
}

TEST_CASE("a place is below what the variable names, else below the home folder, else nowhere") {
    const auto place = [] { return app::user_place("XDG_DATA_HOME", ".local/share", "a/b"); };
    const Variable home{"HOME", "/home/cook"};
    {
        const Variable data{"XDG_DATA_HOME", "/srv/data"};
        CHECK(place() == "/srv/data/a/b");
    }
    const Variable data{"XDG_DATA_HOME", "data"};
    CHECK(place() == "/home/cook/.local/share/a/b");
    const Variable nobody{"HOME", std::nullopt};
    CHECK(place().empty());
    CHECK(app::documents_folder().empty());
}

TEST_CASE_FIXTURE(Home, "documents are where the desktop says, else in Documents, else at home") {
    CHECK(app::documents_folder() == path);
    fs::create_directory(path + "/Documents");
    CHECK(app::documents_folder() == path + "/Documents");
    for (const auto* name : {"Papers", "a \"b\"", "elsewhere"}) {
        fs::create_directory(fs::path{path} / name);
    }
    CHECK(documents_with("# of the desktop\nXDG_MUSIC_DIR=\"$HOME/Music\"\n"
                         "  XDG_DOCUMENTS_DIR=\"$HOME/Papers\"\n") == path + "/Papers");
    CHECK(documents_with("XDG_DOCUMENTS_DIR=\"" + path + "/elsewhere\"\n") == path + "/elsewhere");
    CHECK(documents_with("XDG_DOCUMENTS_DIR=\"$HOME/a \\\"b\\\"\"\n") == path + "/a \"b\"");
    CHECK(documents_with("XDG_DOCUMENTS_DIR=\"$HOME/elsewhere\"\n"
                         "XDG_DOCUMENTS_DIR=\"$HOME/Papers\"\n") == path + "/Papers"); // the last
    for (const std::string useless :
         {"#XDG_DOCUMENTS_DIR=\"$HOME/Papers\"\n", "XDG_DOCUMENTS_DIR=\"$HOME/not-there\"\n",
          "XDG_DOCUMENTS_DIR=\"Papers\"\n", "XDG_DOCUMENTS_DIR=\n", "XDG_DOCUMENTS_DIR=\"\\"}) {
        CAPTURE(useless);
        CHECK(documents_with(useless) == path + "/Documents");
    }
    const Variable elsewhere{"XDG_CONFIG_HOME", path + "/settings"};
    fs::create_directory(path + "/settings");
    write_file(path + "/settings/user-dirs.dirs", "XDG_DOCUMENTS_DIR=\"$HOME/elsewhere\"\n");
    CHECK(app::documents_folder() == path + "/elsewhere");
}

} // namespace user_folders_test
