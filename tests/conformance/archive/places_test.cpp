// Where the archive is: by links, by what the settings say, and by odd names.

#include "kitchen.h"

#include <unistd.h>

using namespace thawslip::test_support;
namespace fs = std::filesystem;

namespace {

/// A folder in which the program runs with no archive named.
struct Home {
    ScratchFolder folder;
    Home() {
        fs::create_directories(folder / "home/.config/thawslip");
        fs::create_directory(folder / "work");
        write_file(folder / "work/day.toml",
                   read_file(THAWSLIP_SOURCE_DIR "/samples/orchard-day.toml"));
    }
    Outcome operator()(const std::string& command, const std::string& before = "") const {
        return run("cd " + shell_word(folder / "work") + "; export HOME=" +
                   shell_word(folder / "home") + "; unset XDG_CONFIG_HOME XDG_DATA_HOME; " +
                   before + " " THAWSLIP_PROGRAM " " + command);
    }
    void set(const std::string& settings) const {
        write_file(folder / "home/.config/thawslip/settings.toml", settings);
    }
};

} // namespace

TEST_CASE("~ in the settings is the home folder, and what is relative counts from the settings") {
    const struct {
        const char* written;
        const char* place;
    } cases[] = {{"~/kitchen.db", "home/kitchen.db"},
                 {"beside.db", "home/.config/thawslip/beside.db"},
                 {"../../up.db", "home/up.db"}};
    const Home home;
    for (const auto& c : cases) {
        CAPTURE(c.written);
        home.set("archive = \"" + std::string{c.written} + "\"\n");
        CHECK(home("labels day.toml -o l.pdf").status == 0);
        CHECK(fs::exists(home.folder / c.place));
    }
    CHECK(!fs::exists(home.folder / "work/~"));
    home.set("archive = \"~neighbour/kitchen.db\"\n");
    CHECK(says(home("labels day.toml -o l.pdf").err, "~ stands for the home folder only"));
    home.set("archive = \":memory:\"\n");
    CHECK(says(home("labels day.toml -o l.pdf").err, "is no file that an archive could be kept"));
}

TEST_CASE("odd places of an archive are its places, or are refused with a word") {
    const Home home;
    const auto place = home.folder / "work";
    for (const auto& archive :
         {"/" + place + "/a.db", "//" + place + "//b.db", place + "/./c?.db", place + "/d%41.db",
          std::string{"file:e.db"}, std::string{"./:memory:"}, std::string{"#f.db"}}) {
        CAPTURE(archive);
        CHECK(home("labels day.toml -o l.pdf --archive " + shell_word(archive)).status == 0);
        CHECK(home("archive check --archive " + shell_word(archive)).status == 0);
    }
    for (const std::string name :
         {"a.db", "b.db", "c?.db", "d%41.db", "file:e.db", ":memory:", "#f.db"}) {
        CHECK(fs::file_size(home.folder / ("work/" + name)) > 0);
    }
    const auto memory = home("labels day.toml -o m.pdf --archive :memory:");
    CHECK(memory.status == 2);
    CHECK(says(memory.err, "is no file that an archive could be kept in"));
    CHECK(!fs::exists(home.folder / "work/m.pdf"));
    const auto root = home("freezer list", "HOME=/");
    CHECK(!says(root.err, "SQL"));
    CHECK(!says(root.err, "//"));
}

TEST_CASE("through a link the archive is what the link leads to, with its log") {
    Kitchen kitchen;
    kitchen.archive = kitchen.folder / "near/link.db";
    fs::create_directory(kitchen.folder / "far");
    fs::create_directory(kitchen.folder / "near");
    fs::create_symlink("../far/archive.db", kitchen.folder / "near/link.db");
    REQUIRE(kitchen("labels day.toml -o l.pdf").status == 0);
    CHECK(fs::exists(kitchen.folder / "far/archive.db"));
    CHECK(fs::is_symlink(kitchen.folder / "near/link.db"));
    // A log that is not written back yet, and a folder of the link that cannot be written.
    const auto far = kitchen.folder / "far/archive.db";
    run("cd " + shell_word(kitchen.folder / "far") +
        "; { echo 'PRAGMA wal_autocheckpoint = 0; UPDATE bag SET state = \"eaten\";'; echo "
        "'.shell cp archive.db-wal kept-wal; cp archive.db kept'; } | sqlite3 archive.db; mv "
        "kept-wal archive.db-wal; mv kept archive.db");
    fs::permissions(kitchen.folder / "near", fs::perms::owner_read | fs::perms::owner_exec);
    CHECK(kitchen("archive backup copy.db").status == 0);
    fs::permissions(kitchen.folder / "near", fs::perms::owner_all);
    CHECK(run("sqlite3 " + shell_word(kitchen.folder / "copy.db") +
              " \"SELECT count(*) FROM bag WHERE state <> 'eaten'\"")
              .out == "0\n");
}

TEST_CASE("an empty file that all may read becomes an archive that only its owner reads") {
    const Kitchen kitchen;
    write_file(kitchen.archive, "");
    fs::permissions(kitchen.archive, fs::perms{0644});
    REQUIRE(kitchen("labels day.toml -o l.pdf").status == 0);
    CHECK(mode_of(kitchen.archive) == 0600U);
}

TEST_CASE("an archive whose disk takes no more is still read and backed up") {
    const Kitchen kitchen;
    REQUIRE(kitchen("labels day.toml -o l.pdf").status == 0);
    // A limit on the size of files stands for a full disk: the log's index cannot be made.
    const auto list =
        run("ulimit -f 1; trap '' XFSZ; cd " + shell_word(kitchen.folder.path().string()) +
            "; " THAWSLIP_PROGRAM " --archive archive.db freezer list | cat");
    CHECK(says(list.out, "Squash"));
}
