// The world around the archive fails: each time the program says what is wrong, leaves with the
// right status, and what was there before is there still.

#include "kitchen.h"
#include "support/anybody.h"
#include "support/skip.h"

#include <doctest/doctest.h>
#include <fmt/format.h>
#include <unistd.h>
#include <vector>

using namespace thawslip::test_support;
namespace fs = std::filesystem;

namespace {

/// What the program does where `program` stands for it, in the kitchen.
Outcome in_kitchen(const Kitchen& kitchen, const std::string& program, const std::string& command) {
    return run("export TZ=UTC SOURCE_DATE_EPOCH=" + kitchen.now +
               " XDG_CONFIG_HOME=/nonexistent XDG_DATA_HOME=/nonexistent; cd " +
               shell_word(kitchen.folder.path().string()) + "; " + program + " --archive " +
               shell_word(kitchen.archive) + " " + command);
}

bool wait_for_file(const std::string& path) {
    for (int i = 0; i < 2000 && !fs::exists(path); ++i) {
        ::usleep(2000);
    }
    return fs::exists(path);
}

/// Limits the size of files in blocks of 512 bytes (POSIX, "ulimit"); writing past it fails as on a
/// full disk.
Outcome with_room_for(const Kitchen& kitchen, std::uintmax_t blocks, const std::string& command) {
    return run(fmt::format("trap '' XFSZ; ulimit -f {}; export TZ=UTC SOURCE_DATE_EPOCH={} "
                           "XDG_CONFIG_HOME=/nonexistent; cd {}; {} --archive {} {}",
                           blocks, kitchen.now, shell_word(kitchen.folder.path().string()),
                           THAWSLIP_PROGRAM, shell_word(kitchen.archive), command));
}

} // namespace

TEST_CASE_FIXTURE(Kitchen, "without room for the sheet nothing is written and nothing recorded") {
    const auto refused = with_room_for(*this, 8, "labels day.toml -o labels.pdf");
    CHECK(refused.status == 3);
    CHECK(says(refused.err, "cannot write labels.pdf"));
    CHECK_FALSE(fs::exists(folder / "labels.pdf"));
    CHECK_FALSE(fs::exists(archive));
    CHECK(std::distance(fs::directory_iterator{folder.path()}, {}) == 1); // day.toml alone
}

TEST_CASE_FIXTURE(Kitchen, "without room for the archive the sheet stays, and the words say so") {
    REQUIRE((*this)("labels day.toml -o labels.pdf").status == 0);
    const auto before = sql(".dump");
    const auto blocks = fs::file_size(folder / "labels.pdf") / 512 + 4;
    // The log is longer than the sheet, and all of it has to be written again.
    sql("PRAGMA wal_checkpoint(TRUNCATE)");
    write_file(folder / "day.toml", file("day.toml") + "# " + std::string(400'000, 'x') + "\n");
    const auto refused = with_room_for(*this, blocks, "labels day.toml -o labels.pdf");
    CAPTURE(refused.err);
    CHECK(refused.status == 3);
    CHECK(says(refused.err, "labels.pdf is written, but not recorded: the disk of the archive"));
    CHECK(sql(".dump") == before);
    CHECK((*this)("labels day.toml -o labels.pdf").status == 0);
}

TEST_CASE_FIXTURE(Kitchen, "a small disk that is full is told of like that") {
    const auto disk = folder / "disk";
    fs::create_directory(disk);
    const auto mounted =
        run("mount -t tmpfs -o size=64k thawslip-test " + shell_word(disk)).status == 0;
    if (!mounted) {
        return skip("no disk can be mounted here");
    }
    archive = disk + "/archive.db";
    const auto refused = (*this)("labels day.toml -o labels.pdf");
    CHECK(refused.status == 3);
    CHECK(says(refused.err, "no room left on the disk"));
    CHECK(says((*this)("freezer list").out, "nothing has been printed yet"));
    archive = folder / "none.db";
    CHECK(run("umount " + shell_word(disk)).status == 0);
}

TEST_CASE_FIXTURE(Kitchen, "where nothing may be written, the archive is still read") {
    const Anybody anybody{THAWSLIP_PROGRAM};
    const auto program = anybody.command();
    if (!program) {
        return skip("this user cannot run the program as nobody");
    }
    REQUIRE((*this)("labels day.toml -o labels.pdf").status == 0);
    sql("PRAGMA wal_checkpoint(TRUNCATE)");
    fs::permissions(archive, fs::perms::all);
    for (const char* beside : {"-wal", "-shm"}) {
        fs::remove(archive + beside);
    }
    fs::permissions(folder.path(),
                    fs::perms::all & ~(fs::perms::owner_write | fs::perms::group_write |
                                       fs::perms::others_write));
    const auto list = in_kitchen(*this, *program, "freezer list");
    CAPTURE(list.err);
    CHECK(list.status == 0);
    CHECK(says(list.out, "Plum and ginger compote"));
    const auto sheet = in_kitchen(*this, *program, "labels day.toml -o labels.pdf");
    CHECK(sheet.status == 3);
    CHECK(says(sheet.err, "cannot create labels.pdf"));
    const auto elsewhere = in_kitchen(*this, *program, "labels day.toml -o - | wc -c");
    CAPTURE(elsewhere.err);
    CHECK(says(elsewhere.err, "not recorded"));
    const auto eaten = in_kitchen(*this, *program, "freezer eaten " + list.out.substr(0, 11));
    CHECK(eaten.status == 3);
    CHECK(says(eaten.err, archive));
    fs::permissions(folder.path(), fs::perms::all);
}

TEST_CASE_FIXTURE(Kitchen, "while another program holds the archive, the wait ends and all reads") {
    REQUIRE((*this)("labels day.toml -o labels.pdf").status == 0);
    const auto before = sql(".dump");
    std::FILE* holder = ::popen(("sqlite3 " + shell_word(archive)).c_str(), "w");
    REQUIRE(holder != nullptr);
    std::fprintf(holder, "BEGIN IMMEDIATE;\n.shell touch %s\n", (folder / "held").c_str());
    std::fflush(holder);
    REQUIRE(wait_for_file(folder / "held"));
    CHECK((*this)("freezer list").status == 0);
    write_file(folder / "day.toml", file("day.toml") + "# edited\n");
    const auto refused = (*this)("labels day.toml -o labels.pdf");
    CHECK(refused.status == 3);
    CHECK(says(refused.err, "labels.pdf is written, but not recorded: another program"));
    ::pclose(holder);
    CHECK(sql(".dump") == before);
    CHECK((*this)("labels day.toml -o labels.pdf").status == 0);
}

TEST_CASE_FIXTURE(Kitchen, "a file that is damaged, or none of ours, is told of and left alone") {
    REQUIRE((*this)("labels day.toml -o labels.pdf").status == 0);
    sql("PRAGMA wal_checkpoint(TRUNCATE)");
    const auto sound = read_file(archive);
    auto bytes = sound;
    std::string words;
    SUBCASE("all of it is something else") {
        bytes = "a shopping list\n" + std::string(5000, '-');
        words = "is no archive of thawslip";
    }
    SUBCASE("its pages are scrambled") {
        std::fill(bytes.begin() + 100, bytes.end(), '\x55');
        words = "is damaged";
    }
    SUBCASE("its end is missing") {
        bytes.resize(bytes.size() / 2);
        words = "is damaged";
    }
    write_file(archive, bytes);
    for (const std::string command : {"labels day.toml -o labels.pdf", "archive check"}) {
        CAPTURE(command);
        const auto refused = (*this)(command);
        CAPTURE(refused.err);
        CHECK(refused.status == 3);
        CHECK((says(refused.err, words) || command == "archive check"));
        CHECK(says(refused.err, "error: "));
        CHECK(read_file(archive) == bytes);
    }
    fs::remove(archive + "-wal");
    fs::remove(archive + "-shm");
    write_file(archive, sound);
}

TEST_CASE_FIXTURE(Kitchen,
                  "two and eight programs print at once, and all that they print is there") {
    for (const int programs : {2, 8}) {
        CAPTURE(programs);
        fs::remove(archive);
        fs::remove(archive + "-wal");
        fs::remove(archive + "-shm");
        std::vector<std::string> commands;
        for (int i = 0; i < programs; ++i) {
            // Half of them print the same day.
            write_file(folder / fmt::format("{}.toml", i),
                       fmt::format("[day]\nmade = 2026-10-17\n[[package]]\ndish = \"Pot {}\"\n"
                                   "servings = 2\nbags = 3\nuse_by = 2026-12-01\n",
                                   i % 2 == 0 ? 0 : i));
            commands.push_back(fmt::format("labels {0}.toml -o {0}.pdf", i));
        }
        for (const auto& outcome : at_once(commands)) {
            CAPTURE(outcome.err);
            CHECK(outcome.status == 0);
        }
        const int dishes = 1 + programs / 2;
        CHECK(sql("SELECT count(*) FROM bag") == fmt::format("{}\n", 3 * dishes));
        CHECK(sql("PRAGMA integrity_check; PRAGMA foreign_key_check") == "ok\n");
    }
}

TEST_CASE_FIXTURE(Kitchen, "a clock that was set back confuses nothing") {
    REQUIRE((*this)("labels day.toml -o first.pdf").status == 0);
    const auto id = first_id("compote");
    now = "1757772800"; // in September of the year before
    write_file(folder / "day.toml", file("day.toml") + "# edited\n");
    REQUIRE((*this)("labels day.toml --first-cell 3 -o second.pdf").status == 0);
    CHECK((*this)("freezer eaten " + id).status == 0);
    CHECK_FALSE(says((*this)("freezer list").out, id));
    CHECK((*this)("freezer back " + id).status == 0);
    CHECK(says((*this)("freezer list").out, id));
    // What was recorded last holds, whatever the clock said.
    CHECK(sql("SELECT count(*) FROM bag b JOIN package p ON p.id = b.package WHERE p.day = 2") ==
          "14\n");
    REQUIRE((*this)("reprint --printed 2025-09-13 -o again.pdf").status == 0);
    CHECK(file("again.pdf") == file("second.pdf"));
    REQUIRE((*this)("reprint --printed 2026-10-17 -o again.pdf").status == 0);
    CHECK(file("again.pdf") == file("first.pdf"));
}
