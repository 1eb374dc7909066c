#include "archive/archive.h"
#include "archive/events.h"
#include "archive/identity.h"
#include "archive/mended_name.h"
#include "archive/relabelled.h"
#include "archive/tables/columns.h"
#include "archive/tables/rows.h"

#include <algorithm>
#include <fmt/format.h>
#include <set>

namespace thawslip::archive {
namespace {

std::string hex_of(const std::string& text) {
    return fmt::format("{:016x}", kitchen::fnv_1a(text));
}

/// What a print that was given no key is known by.
std::string key_of(const PrintRecord& print) {
    const auto& setup = print.setup;
    auto text = fmt::format("{}\x1F{}\x1F{}\x1F{}\x1F{}\x1F{}\x1F{}", print.station.name, print.at,
                            setup.what, setup.stock, setup.layout, setup.settings, setup.look);
    for (const auto& day : print.days) {
        text += fmt::format("\x1F{}\x1F{}", day.file, day.description);
        for (const auto& package : day.packages) {
            text += fmt::format("\x1F{}", package.batch.number);
        }
    }
    return hex_of(text);
}

std::vector<std::string> ids_of(const PrintRecord& print) {
    std::vector<std::string> ids;
    for (const auto& day : print.days) {
        for (const auto& package : day.packages) {
            ids.insert(ids.end(), package.bags.begin(), package.bags.end());
        }
    }
    return ids;
}

/// One print being recorded.
struct Recording {
    Connection& connection;
    const PrintRecord& print;
    IdRows bags;          ///< rows of its ids
    std::int64_t seq = 0; ///< of its events
    Recorded recorded = {};
    std::set<std::int64_t> new_bags = {};

    std::int64_t row_of(const std::string& id) const {
        const auto found = bags.find(id);
        return found != bags.end() ? found->second : 0;
    }
};

std::string origin_of(const Recording& recording, const DayRecord& day,
                      const kitchen::Batch& batch) {
    auto text = fmt::format("{}\x1F{}\x1F{}\x1F{}\x1F{}\x1F{}", recording.print.station.name,
                            recording.connection.place(), recording.print.at, day.file,
                            batch.number, day.description);
    if (batch.size != 0) {
        text += fmt::format("\x1F{}", batch.size);
    }
    return hex_of(text);
}

[[noreturn]] void clash(std::string message) {
    throw ArchiveFailure{{ArchiveFault::Kind::Clash, std::move(message)}};
}

std::int64_t bag_of_package(Connection& connection, std::int64_t package, int number) {
    auto& row = connection.statement("SELECT id FROM bag WHERE package = ? AND number = ?")
                    .with(package)
                    .with(number);
    return row.next() ? row.integer(0) : 0;
}

std::string newest_id(Connection& connection, std::int64_t bag) {
    auto& row =
        connection.statement("SELECT id FROM bag_id WHERE bag = ? AND newest = 1").with(bag);
    return row.next() ? row.text(0) : std::string{};
}

/// The label of one food must not stick on another.
void require_same_bag(Connection& connection, std::int64_t bag, const PackageRecord& now,
                      int lineage, const std::string& id) {
    const auto before = package_of_bag(connection, bag);
    const bool same = before.made == now.made && before.batch == now.batch &&
                      (before.dish == now.dish || is_mended_name(before.words, now.words)) &&
                      is_of_batch(connection, bag, now, lineage);
    if (!same) {
        clash(fmt::format("{} is the id of a bag of \"{}\" made {} already", id, before.dish,
                          kitchen::to_iso(before.made)));
    }
}

bool is_printed(const Recording& recording, const std::string& id) {
    const auto& part = recording.print.part;
    return !part || std::ranges::find(*part, id) != part->end();
}

void insert_new_bag(Recording& recording, const std::string& id, std::int64_t package, int number) {
    const auto& print = recording.print;
    const auto state = is_printed(recording, id) ? State::Frozen : State::NeverFilled;
    const auto bag = insert_first_bag(recording.connection, package, number,
                                      {state, print.at, print.station, recording.seq});
    insert_id(recording.connection, id, bag, true);
    recording.bags[id] = bag;
    recording.new_bags.insert(bag);
    ++recording.recorded.new_bags;
}

/// Puts the bags of one package of a new revision where they belong.
/// \param mended the row of the package whose name was mended into this one, or 0
void record_bags(Recording& recording, const PackageRecord& package, std::int64_t row,
                 std::int64_t mended) {
    auto& connection = recording.connection;
    int number = 0;
    for (const auto& id : package.bags) {
        ++number;
        if (const auto known = recording.row_of(id)) {
            const auto before = package_of_bag(connection, known);
            if (is_relabelled(before, package)) {
                recording.recorded.relabelled.push_back(id);
            }
            describe_bag(connection, known, row, number);
            make_newest(connection, known, id);
            continue;
        }
        if (const auto bag = mended != 0 ? bag_of_package(connection, mended, number) : 0) {
            recording.recorded.renamed.emplace_back(newest_id(connection, bag), id);
            insert_id(connection, id, bag, false);
            recording.bags[id] = bag;
            describe_bag(connection, bag, row, number);
            make_newest(connection, bag, id);
            continue;
        }
        insert_new_bag(recording, id, row, number);
    }
}

void note_dropped(Recording& recording, std::int64_t before) {
    auto& rows = recording.connection
                     .statement("SELECT i.id FROM bag b JOIN package p ON p.id = b.package JOIN "
                                "bag_id i ON i.bag = b.id AND i.newest = 1 "
                                "WHERE p.day = ? ORDER BY p.position, b.number")
                     .with(before);
    while (rows.next()) {
        recording.recorded.dropped.push_back(rows.text(0));
    }
}

/// The day with the batches that were decided, each with where it comes from.
DayRecord with_origins(const Recording& recording, const DayRecord& day, const Decision& decision) {
    DayRecord with = day;
    with.station = recording.print.station.name;
    for (std::size_t i = 0; i < with.packages.size(); ++i) {
        const auto& origin = decision.packages[i].origin;
        with.packages[i].origin =
            origin.empty() ? origin_of(recording, day, with.packages[i].batch) : origin;
    }
    return with;
}

/// \returns the row of the revision that holds
std::int64_t record_day(Recording& recording, const DayRecord& day, const Decision& decision) {
    auto& connection = recording.connection;
    if (decision.is_newest) {
        return decision.newest;
    }
    const bool is_new = decision.lineage == 0;
    const int lineage = is_new ? next_lineage(connection) : decision.lineage;
    const auto ordered =
        order_after(is_new ? 0 : last_order(connection, lineage), recording.print.at);
    const auto with = with_origins(recording, day, decision);
    const int revision = is_new ? 1 : last_revision(connection, lineage) + 1;
    const auto [row, packages] =
        insert_day(connection, with, lineage, revision, recording.print.at, ordered);
    for (std::size_t i = 0; i < packages.size(); ++i) {
        record_bags(recording, with.packages[i], packages[i], decision.packages[i].mended);
    }
    ++(is_new ? recording.recorded.new_days : recording.recorded.revisions);
    if (decision.newest != 0) {
        note_dropped(recording, decision.newest);
    }
    return row;
}

/// Whether no print has been of a bag: of its states none was noted but the first, that it was not
/// filled. What was undone, and where it lies, does not count.
Statement& unprinted_question(Connection& connection, std::int64_t bag) {
    return connection
        .statement("SELECT 1 FROM bag WHERE id = ?1 AND state = 'never filled' AND "
                   "(SELECT count(*) FROM bag_event e WHERE e.bag = ?1 AND e.state <> '' AND NOT "
                   "EXISTS (SELECT 1 FROM bag_event u WHERE u.bag = e.bag AND u.undoes = e.seq AND "
                   "u.station = e.station AND u.undoes <> 0)) = 1")
        .with(bag);
}

/// The bags that a print is of and that were there before it.
std::vector<std::int64_t> printed_again(const Recording& recording) {
    std::vector<std::int64_t> bags;
    for (const auto& id : ids_of(recording.print)) {
        const auto bag = is_printed(recording, id) ? recording.row_of(id) : 0;
        if (bag != 0 && !recording.new_bags.contains(bag)) {
            bags.push_back(bag);
        }
    }
    return bags;
}

/// The bags that a print is of are in the freezer, if none was of them before. This is no command
/// that could be undone, so it counts as the station's number 0.
void fill_printed(Recording& recording) {
    auto& connection = recording.connection;
    auto bags = printed_again(recording);
    for (const auto bag : bags) {
        unprinted_question(connection, bag).ahead();
    }
    std::erase_if(bags, [&](auto bag) { return !unprinted_question(connection, bag).next(); });
    for (const auto bag : bags) {
        add_event(connection, bag, {State::Frozen}, recording.print.at, recording.print.station, 0);
    }
}

/// What is decided now must be what was decided when the ids were made.
void require_as_settled(const DayRecord& day, const Decision& decision) {
    for (std::size_t i = 0; i < day.packages.size(); ++i) {
        const auto& package = day.packages[i];
        const bool doubtful =
            std::ranges::find(decision.doubts, i, &Doubt::package) != decision.doubts.end();
        if (doubtful || decision.packages[i].batch != package.batch) {
            clash(fmt::format("another print has bags of \"{}\" made {} meanwhile", package.dish,
                              kitchen::to_iso(package.made)));
        }
    }
}

/// Before anything is printed: none of its ids is on a bag of another batch.
void require_own_ids(const Recording& recording, const DayRecord& day, const Decision& decision) {
    for (std::size_t i = 0; i < day.packages.size() && !decision.is_newest; ++i) {
        auto package = day.packages[i];
        package.origin = decision.packages[i].origin;
        for (const auto& id : package.bags) {
            if (const auto known = recording.row_of(id)) {
                require_same_bag(recording.connection, known, package, decision.lineage, id);
            }
        }
    }
}

/// As they are decided and kept: at the station that prints them.
std::vector<DayRecord> days_of(const PrintRecord& print) {
    auto days = print.days;
    for (auto& day : days) {
        day.station = print.station.name;
    }
    return days;
}

std::vector<Decision> decide_all(const Recording& recording) {
    std::vector<Decision> decisions;
    for (const auto& day : days_of(recording.print)) {
        decisions.push_back(
            decide(recording.connection, day, recording.print.which, recording.bags));
        require_as_settled(day, decisions.back());
        require_own_ids(recording, day, decisions.back());
    }
    return decisions;
}

/// The key of a print that was given none; empty where this very print is recorded already.
std::string fresh_key(Connection& connection, const PrintRecord& print,
                      const std::vector<Decision>& decisions) {
    auto key = key_of(print);
    bool is_taken_key = has_print_key(connection, key);
    if (is_taken_key && std::ranges::all_of(decisions, &Decision::is_newest)) {
        return {};
    }
    while (is_taken_key) { // edited and edited back within a second
        key = hex_of(key);
        is_taken_key = has_print_key(connection, key);
    }
    return key;
}

/// What a print of new days asks, at once: a server answers all of it in one round trip.
void ask_ahead(Connection& connection, const PrintRecord& print) {
    ask_print_key_ahead(connection, print.key.empty() ? key_of(print) : print.key);
    for (const auto& day : days_of(print)) {
        ask_decision_ahead(connection, day);
    }
    bag_rows(connection, ids_of(print), When::Later);
    ask_seq_ahead(connection, print.station.name);
    ask_rows_ahead(connection);
}

/// The print itself, counted once more.
void record_times(Recording& recording, const std::vector<std::int64_t>& days,
                  const std::string& key) {
    auto& connection = recording.connection;
    const auto& print = recording.print;
    const bool is_of_new = recording.recorded.new_days + recording.recorded.revisions > 0;
    auto row = is_of_new ? 0 : print_row(connection, print.setup, days);
    if (row != 0) {
        connection.statement("UPDATE print SET last_at = ? WHERE id = ?")
            .with(print.at)
            .with(row)
            .run();
    } else {
        StoredPrint stored{print.at, print.at, print.setup, {}};
        std::ranges::transform(days, std::back_inserter(stored.days),
                               [](std::int64_t day) { return DayKey{day}; });
        recording.recorded.is_first_print = holds_no_print(connection);
        row = insert_print(connection, stored);
        recording.recorded.print_is_new = true;
    }
    insert_print_key(connection, row, key, print.at, print.station.name);
}

} // namespace

Recorded Archive::record(const PrintRecord& print, const std::function<void()>& publish) {
    auto& connection = *connection_;
    const Question question{connection};
    Transaction transaction{connection};
    ask_ahead(connection, print);
    bool is_known = !print.key.empty() && has_print_key(connection, print.key);
    Recording recording{connection, print, bag_rows(connection, ids_of(print))};
    const auto decisions = is_known ? std::vector<Decision>{} : decide_all(recording);
    const auto key = print.key.empty() ? fresh_key(connection, print, decisions) : print.key;
    is_known = is_known || key.empty();
    connection.rest();
    if (publish) {
        publish();
    }
    recording.seq = next_seq(connection, print.station.name);
    if (is_known) {
        recording.recorded.is_known = true;
        return recording.recorded;
    }
    std::vector<std::int64_t> days;
    for (std::size_t i = 0; i < decisions.size(); ++i) {
        days.push_back(record_day(recording, print.days[i], decisions[i]));
    }
    fill_printed(recording);
    record_times(recording, days, key);
    if (print.sheet) {
        put_sheet(connection, *print.sheet);
    }
    transaction.commit();
    return recording.recorded;
}

} // namespace thawslip::archive
