#include "archive/address.h"
#include "archive/archive.h"
#include "archive/copy.h"
#include "archive/draft.h"
#include "archive/tables/columns.h"
#include "archive/tables/rows.h"
#include "archive/tables/soundness.h"
#include "base/list.h"
#include "kitchen/bag_id.h"

#include <fmt/format.h>
#include <sqlite3.h>

namespace thawslip::archive {
namespace {

struct FinishBackup {
    void operator()(sqlite3_backup* backup) const { sqlite3_backup_finish(backup); }
};

bool is_id(const std::string& id) {
    const auto read = kitchen::parse_bag_id(id);
    return read && read.value() == id;
}

/// Whether the bag has one id that holds, and all that it had can be ids.
bool has_one_id(Connection& connection, std::int64_t bag) {
    auto& ids = connection.statement("SELECT id, newest FROM bag_id WHERE bag = ?").with(bag);
    int newest = 0;
    bool sound = true;
    while (ids.next()) {
        newest += ids.integer(1) == 1 ? 1 : 0;
        sound = sound && is_id(ids.text(0));
    }
    return sound && newest == 1;
}

void drop_broken_ids(Connection& connection, std::int64_t bag) {
    std::vector<std::string> broken;
    auto& ids = connection.statement("SELECT id FROM bag_id WHERE bag = ?").with(bag);
    while (ids.next()) {
        if (!is_id(ids.text(0))) {
            broken.push_back(ids.text(0));
        }
    }
    for (const auto& id : broken) {
        connection.statement("DELETE FROM bag_id WHERE id = ?").with(id).run();
    }
}

void put_id_right(Connection& connection, std::int64_t bag) {
    const auto package = package_of_bag(connection, bag);
    auto& row = connection.statement("SELECT number FROM bag WHERE id = ?").with(bag);
    row.next();
    const auto number = static_cast<int>(row.integer(0));
    const auto id = kitchen::bag_id({package.dish, package.made, number, package.batch});
    const auto has_it = bag_row(connection, id);
    if (!package.made.ok() || (has_it != 0 && has_it != bag)) {
        return; // nothing to make it from, or another bag's
    }
    drop_broken_ids(connection, bag);
    if (has_it == 0) {
        insert_id(connection, id, bag, true);
    }
    make_newest(connection, bag, id);
}

} // namespace

void copy_into(const Database& to, const Database& from) {
    const std::unique_ptr<sqlite3_backup, FinishBackup> backup{
        sqlite3_backup_init(to.handle(), "main", from.handle(), "main")};
    // All pages in one step: a copy in pieces starts again whenever somebody writes (SQLite,
    // "SQLite Backup API").
    const int code = backup ? sqlite3_backup_step(backup.get(), -1) : SQLITE_ERROR;
    if (code != SQLITE_DONE) {
        throw ArchiveFailure{fault_of(code, to.path(), sqlite3_errstr(code))};
    }
}

std::vector<std::string> Archive::check() {
    const Question question{*connection_};
    return faults_in(*connection_);
}

std::vector<std::string> Archive::check(Contents& contents) {
    const Question question{*connection_};
    return faults_in(*connection_, contents);
}

std::optional<StoredDay> Archive::first_rotten_day() {
    std::optional<DayKey> rotten;
    {
        const Question question{*connection_};
        auto& rows = connection_->statement("SELECT id, description, hash FROM day ORDER BY id");
        while (!rotten && rows.next()) {
            if (hash_of_description(rows.text(1)) != rows.integer(2)) {
                rotten = DayKey{rows.integer(0)};
            }
        }
    }
    return rotten ? std::optional{day(*rotten)} : std::nullopt;
}

std::vector<StoredDay> Archive::days() {
    std::vector<DayKey> keys;
    {
        const Question question{*connection_};
        auto& rows = connection_->statement("SELECT id FROM day ORDER BY id");
        while (rows.next()) {
            keys.push_back(DayKey{rows.integer(0)});
        }
    }
    return mapped(keys, [this](DayKey key) { return day(key); });
}

std::vector<PackageRecord> Archive::packages(DayKey day) {
    const Question question{*connection_};
    return packages_of(*connection_, static_cast<std::int64_t>(day));
}

void Archive::put_right(DayKey day, int position, const PackageRecord& described) {
    const Question question{*connection_};
    auto& update =
        connection_
            ->statement("UPDATE package SET dish = ?, words = ?, made = ?, keep_until = ?, basis = "
                        "?, servings = ?, bags = ?, grams = ?, allergens = ?, classes = ?, thaw = "
                        "?, thaw_minutes = ?, place = ? WHERE day = ? AND position = ?")
            .with(described.dish)
            .with(described.words)
            .with(kitchen::to_iso(described.made))
            .with(kitchen::to_iso(described.keep_until))
            .with(word_of(described.basis))
            .with(described.servings)
            .with(static_cast<std::int64_t>(described.bags.size()));
    with_optional(update, described).with(static_cast<std::int64_t>(day)).with(position).run();
}

void Archive::put_right(DayKey day, kitchen::Date made, const std::string& kitchen) {
    const Question question{*connection_};
    connection_->statement("UPDATE day SET made = ?, kitchen = ? WHERE id = ?")
        .with(kitchen::to_iso(made))
        .with(kitchen)
        .with(static_cast<std::int64_t>(day))
        .run();
}

void put_ids_right(Connection& connection) {
    std::vector<std::int64_t> bags;
    auto& rows = connection.statement("SELECT id FROM bag ORDER BY id");
    while (rows.next()) {
        bags.push_back(rows.integer(0));
    }
    for (const auto bag : bags) {
        if (!has_one_id(connection, bag)) {
            put_id_right(connection, bag);
        }
    }
}

void refuse_file_work(const std::string& address) {
    throw ArchiveFailure{
        {ArchiveFault::Kind::CannotOpen,
         fmt::format("the archive {} is on a server: there it is backed up and put back with "
                     "pg_dump and pg_restore, or with: thawslip archive export FOLDER, thawslip "
                     "archive import FOLDER",
                     shown_address(address))}};
}

void Archive::back_up(const std::string& file) {
    if (!connection_->is_file()) {
        refuse_file_work(connection_->place());
    }
    const Draft draft{file};
    {
        const Database copy_of_it{draft.name(), Access::ReadWrite, std::chrono::seconds{5}};
        copy_of_it.run("PRAGMA synchronous = FULL");
        copy_into(copy_of_it, connection_->database());
    }
    draft.take_name();
}

} // namespace thawslip::archive
