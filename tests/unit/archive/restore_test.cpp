// A backup that is put in an archive's place, and an archive that is put right: nothing is lost.

#include "archive/restore.h"
#include "samples.h"
#include "support/command.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <filesystem>
#include <iterator>

namespace restore_test {

using namespace thawslip;
using namespace thawslip::test_support;
namespace fs = std::filesystem;
using Fault = ArchiveFault::Kind;

namespace {

const PackageRecord stew = package("Squash and red lentil stew", 3);
const PackageRecord soup = package("Chestnut and kale soup", 2, date(2026, 11, 1));
constexpr std::chrono::milliseconds at_once{0};

std::string shell(const std::string& path, const std::string& sql) {
    return run("sqlite3 " + shell_word(path) + " " + shell_word(sql)).out;
}

std::vector<std::string> nothing(Archive&) {
    return {};
}

/// A stew, a backup of it, and soup that was printed since.
struct Backed {
    ScratchFolder folder;
    std::string path = folder / "archive.db";
    std::string backup = folder / "backup.db";

    Backed() {
        auto archive = opened(path);
        archive.record(print({day({stew})}));
        archive.back_up(backup);
        archive.record(print({day({soup}, "/orchard/soup.toml")}));
    }
    std::size_t bags(const std::string& file) const {
        return opened(file, Mode::Read).bags(Which::All).size();
    }
    std::size_t files() const {
        return static_cast<std::size_t>(std::distance(fs::directory_iterator{folder.path()}, {}));
    }
    ArchiveFault refusal_of(const std::string& to, const std::string& from) const {
        try {
            restore(to, from, at_once);
        } catch (const ArchiveFailure& failure) {
            return failure.fault();
        }
        FAIL("restored");
        return {};
    }
};

} // namespace

TEST_CASE_FIXTURE(Backed, "each archive that gives way is kept whole under a name of its own") {
    const auto first = restore(path, backup);
    CHECK(first.kept == path + ".before-1");
    CHECK(bags(path) == 3);
    CHECK(bags(first.kept) == 5);
    CHECK(bags(backup) == 3);
    CHECK(restore(path, first.kept).kept == path + ".before-2");
    CHECK(bags(path) == 5);
    CHECK(bags(path + ".before-2") == 3);
    // A name is taken by a log alone as well.
    write_file(path + ".before-3-wal", "x");
    CHECK(restore(path, backup).kept == path + ".before-4");
    CHECK(read_file(path + ".before-3-wal") == "x");
    CHECK(shell(path, "PRAGMA journal_mode") == "wal\n");
    CHECK(fs::status(path).permissions() == (fs::perms::owner_read | fs::perms::owner_write));
    CHECK(opened(path).check().empty());
}

TEST_CASE_FIXTURE(Backed, "where there was no archive none is kept, and its folders are made") {
    const auto fresh = folder / "new/computer/archive.db";
    CHECK(restore(fresh, backup).kept.empty());
    CHECK(bags(fresh) == 3);
    // A log that was left behind goes aside, for it would be written over the backup.
    const auto lonely = folder / "lonely.db";
    write_file(lonely + "-wal", "left behind");
    CHECK(restore(lonely, backup).kept == lonely + ".before-1");
    CHECK(read_file(lonely + ".before-1-wal") == "left behind");
    CHECK(bags(lonely) == 3);
}

TEST_CASE_FIXTURE(Backed, "what is no archive makes way, as it lies there") {
    write_file(path, std::string(5000, 'x'));
    const auto replaced = restore(path, backup);
    CHECK(read_file(replaced.kept) == std::string(5000, 'x'));
    CHECK(bags(path) == 3);
}

TEST_CASE_FIXTURE(Backed, "what is no sound backup is refused, and nothing is changed") {
    const auto before = bags(path);
    const auto damaged = folder / "damaged.db";
    fs::copy_file(backup, damaged);
    shell(damaged, "UPDATE package SET servings = 0");
    write_file(folder / "empty.db", "");
    write_file(folder / "text.db", std::string(5000, 'x'));
    fs::create_directory(folder / "folder");
    fs::create_symlink(path, folder / "link.db");
    const auto files_before = files();
    CHECK(refusal_of(path, folder / "none.db").message ==
          "there is no file " + (folder / "none.db"));
    CHECK(refusal_of(path, folder / "none.db").kind == Fault::Missing);
    CHECK(refusal_of(path, folder / "empty.db").message ==
          (folder / "empty.db") + " is empty: no archive is in it");
    CHECK(refusal_of(path, folder / "text.db").kind == Fault::NotOurs);
    CHECK(refusal_of(path, folder / "folder").message ==
          (folder / "folder") + " is a folder, and no backup");
    CHECK(refusal_of(path, path).message == path + " is the archive itself, no backup of it");
    CHECK(refusal_of(path, folder / "link.db").kind == Fault::Failed);
    CHECK(refusal_of(folder / "link.db", path).kind == Fault::Failed);
    const auto rotten = refusal_of(path, damaged);
    CHECK(rotten.kind == Fault::Damaged);
    CHECK(rotten.message == "the backup " + damaged + " is damaged (\"" + stew.dish +
                                "\" of 2026-10-17 serves 0, expected 1 to 100); nothing was "
                                "changed");
    CHECK(refusal_of("postgresql://store/cold", backup).kind == Fault::CannotOpen);
    CHECK(bags(path) == before);
    CHECK(files() == files_before);
}

TEST_CASE_FIXTURE(Backed, "while another program uses the archive, it does not give way") {
    auto other = opened(path);
    other.bags(Which::All);
    const auto busy = refusal_of(path, backup);
    CHECK(busy.kind == Fault::Busy);
    CHECK(busy.message.find("nothing was changed") != std::string::npos);
    CHECK(bags(path) == 5);
    CHECK_FALSE(fs::exists(path + ".before-1"));
}

TEST_CASE_FIXTURE(Backed, "through a link the archive that it leads to is replaced, not the link") {
    fs::create_symlink("archive.db", folder / "link.db");
    CHECK(restore(folder / "link.db", backup).kept == path + ".before-1");
    CHECK(fs::is_symlink(folder / "link.db"));
    CHECK(bags(path) == 3);
}

TEST_CASE_FIXTURE(Backed, "an archive in which nothing can be put right stays as it is") {
    const auto sound = repair(path, nothing);
    CHECK(sound.kept.empty());
    CHECK(sound.repaired.empty());
    CHECK(sound.left.empty());
    shell(path, "UPDATE package SET servings = 0 WHERE day = 1");
    const auto left = repair(path, nothing);
    CHECK(left.kept.empty());
    CHECK(left.repaired.empty());
    CHECK(left.left == std::vector<std::string>{"\"" + stew.dish +
                                                "\" of 2026-10-17 serves 0, expected 1 to 100"});
    CHECK(files() == 2);
    CHECK_THROWS_AS(repair(folder / "none.db", nothing), ArchiveFailure);
    CHECK_THROWS_AS(repair("postgresql://store/cold", nothing), ArchiveFailure);
}

TEST_CASE_FIXTURE(Backed, "what follows from the rest is put right, and said") {
    const auto id = stew.bags[0];
    const struct {
        const char* sql;
        std::string said;
    } cases[] = {
        {"DROP INDEX day_hash", "the index \"day_hash\" is missing"},
        {"UPDATE package SET words = 'plums' WHERE day = 1",
         "the index of words does not say what the dishes say"},
        {"DELETE FROM bag_id WHERE bag = 1", "bag 1 has no id, or several"},
        {"UPDATE bag_id SET newest = 0 WHERE bag = 1", "bag 1 has no id, or several"},
        {"INSERT INTO bag_id VALUES ('K7Q-2M4-9XC', 1, 1)", "bag 1 has no id, or several"},
        {"UPDATE bag_id SET id = 'K7Q' WHERE bag = 1",
         "a bag has the id \"K7Q\", which cannot be one"},
        {"UPDATE bag SET state = 'eaten' WHERE id = 1",
         "bag " + id +
             " is listed as eaten since 2026-10-17T14:05:00, but what was last noted of "
             "it is frozen, 2026-10-17T14:05:00"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.sql);
        fs::remove(path);
        fs::copy_file(backup, path);
        shell(path, c.sql);
        const auto replaced = repair(path, nothing);
        CHECK(replaced.repaired == std::vector{c.said});
        CHECK(replaced.left.empty());
        CHECK(fs::exists(replaced.kept));
        auto archive = opened(path);
        CHECK(archive.check().empty());
        REQUIRE(archive.bag(id).has_value());
        CHECK(archive.bag(id)->state == State::Frozen);
        CHECK(archive.bag(id)->id == id);
        CHECK(archive.bags(Which::All).size() == 3);
    }
}

TEST_CASE_FIXTURE(Backed, "what only the descriptions say is put right by whoever reads them") {
    shell(path, "UPDATE package SET servings = 0 WHERE day = 1");
    const auto put_right = [](Archive& archive) {
        auto described = stew;
        described.weight = kitchen::Mass{1'800};
        archive.put_right(archive.days().front().key, 1, described);
        return std::vector<std::string>{"the stew serves six again"};
    };
    const auto replaced = repair(path, put_right);
    REQUIRE(replaced.repaired.size() == 2);
    CHECK(replaced.repaired[0] == "the stew serves six again");
    CHECK(replaced.left.empty());
    CHECK(opened(path).bag(stew.bags[0])->servings == 6);
    CHECK(opened(path).bag(stew.bags[0])->weight->grams == 1'800);
    CHECK(opened(path).bag(soup.bags[0])->weight.has_value() == false);
    // Nobody reads a description that is not what was recorded.
    shell(path, "UPDATE day SET description = 'another' WHERE id = 1; DROP INDEX day_hash");
    bool is_asked = false;
    const auto rotten = repair(path, [&is_asked](Archive&) {
        is_asked = true;
        return std::vector<std::string>{};
    });
    CHECK_FALSE(is_asked);
    CHECK(rotten.repaired == std::vector<std::string>{"the index \"day_hash\" is missing"});
    CHECK(rotten.left.size() == 1);
}

TEST_CASE_FIXTURE(Backed, "an id that is another bag's by now is not given twice") {
    shell(path, "UPDATE bag_id SET bag = 2, newest = 0 WHERE bag = 1");
    const auto replaced = repair(path, nothing);
    CHECK(replaced.kept.empty());
    CHECK(replaced.left == std::vector<std::string>{"bag 1 has no id, or several"});
}

} // namespace restore_test
