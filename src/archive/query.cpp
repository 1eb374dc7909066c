#include "archive/archive.h"
#include "archive/tables/columns.h"
#include "archive/tables/rows.h"
#include "base/list.h"
#include "kitchen/bag_id.h"

#include <algorithm>
#include <fmt/format.h>
#include <set>
#include <tuple>
#include <unordered_map>

namespace thawslip::archive {
namespace {

// A literal that is put together from literals, so that each whole statement is one too.
#define THAWSLIP_BAG_COLUMNS                                                                       \
    "SELECT p.dish, p.words, p.made, p.keep_until, p.basis, p.servings, p.grams, p.allergens, "    \
    "p.classes, p.thaw, p.thaw_minutes, p.place, p.bags, p.day, p.size, p.id, i.id, b.number, "    \
    "b.state, b.changed, b.place "                                                                 \
    "FROM bag b JOIN package p ON p.id = b.package JOIN bag_id i ON i.bag = b.id AND "             \
    "i.newest = 1 "

/// What all bags of a package share.
Bag shared_of_bags(const Statement& row) {
    const auto package = package_at(row, 0);
    Bag bag;
    bag.dish = package.dish;
    bag.servings = package.servings;
    bag.made = package.made;
    bag.keep_until = package.keep_until;
    bag.basis = package.basis;
    bag.weight = package.weight;
    bag.thaw = package.thaw;
    bag.classes = package.food ? package.food->classes : std::vector<std::string>{};
    if (package.food) {
        bag.allergens = package.food->allergens;
    }
    bag.of = static_cast<int>(row.integer(12));
    bag.day = DayKey{row.integer(13)};
    bag.size = static_cast<int>(row.integer(14));
    bag.place = package.place;
    return bag;
}

Bag bag_at(const Statement& row, Bag bag) {
    bag.id = row.text(16);
    bag.number = static_cast<int>(row.integer(17));
    bag.state = state_of(row.text(18)).value_or(State::Frozen);
    bag.changed = row.text(19);
    if (!row.is_nothing(20)) {
        bag.place = row.text(20);
    }
    return bag;
}

Bag bag_at(const Statement& row) {
    return bag_at(row, shared_of_bags(row));
}

/// The bags of a package that was found, the soonest number first.
struct OfPackage {
    Bag any; ///< what they share
    std::int64_t row = 0;
    std::vector<Bag> bags;
};

/// Bags by the keep-until dates, names and rows of their packages. Here and not by the engine: a
/// package is read and compared once then, not for each of its bags.
std::vector<Bag> soonest_first(Statement& rows) {
    std::unordered_map<std::int64_t, std::size_t> known;
    std::vector<OfPackage> packages;
    while (rows.next()) {
        const auto package = rows.integer(15);
        const auto [at, is_new] = known.try_emplace(package, packages.size());
        if (is_new) {
            packages.push_back({shared_of_bags(rows), package, {}});
        }
        packages[at->second].bags.push_back(bag_at(rows, packages[at->second].any));
    }
    std::ranges::sort(packages, {}, [](const OfPackage& one) {
        return std::tie(one.any.keep_until, one.any.dish, one.row);
    });
    std::vector<Bag> bags;
    for (auto& package : packages) {
        std::ranges::stable_sort(package.bags, {}, &Bag::number);
        std::ranges::move(package.bags, std::back_inserter(bags));
    }
    return bags;
}

/// What stands between signs that are neither letters nor digits.
std::vector<std::string> searched_words(std::string_view text) {
    std::vector<std::string> words;
    bool is_inside = false;
    for (const char c : text) {
        const bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
                            (c >= '0' && c <= '9') || static_cast<unsigned char>(c) >= 0x80;
        if (letter && !is_inside) {
            words.emplace_back();
        }
        if (letter) {
            words.back() += c;
        }
        is_inside = letter;
    }
    return words;
}

/// What FTS5 is asked for: each word a quoted string with a star, so that no letter of it is
/// taken for an operator (SQLite, "FTS5 Extension", full-text query syntax).
std::string prefix_query(const std::vector<std::string>& words) {
    return fmt::format("\"{}\"*", fmt::join(words, "\"* \""));
}

/// The same for a server, a pattern a line: a word begins at the start or behind a sign of ASCII
/// that is neither letter nor digit (PostgreSQL 15, 9.7.3, "POSIX Regular Expressions").
std::string patterns(const std::vector<std::string>& words) {
    constexpr std::string_view start = R"((^|[\x01-\x2f\x3a-\x40\x5b-\x60\x7b-\x7f]))";
    return fmt::format("{}{}", start, fmt::join(words, fmt::format("\n{}", start)));
}

#define THAWSLIP_BY_INDEX                                                                          \
    "WHERE b.package IN (SELECT rowid FROM dish_words WHERE dish_words MATCH ?) "
// By a query of its own, so that the patterns are parted once, not for each package.
#define THAWSLIP_BY_PATTERN "WHERE p.words ~ ALL ((SELECT string_to_array(?, chr(10)))::text[]) "

Statement& with_words(Connection& connection, const std::vector<std::string>& words, Which which) {
    if (connection.is_file()) {
        auto& rows = which == Which::All
                         ? connection.statement(THAWSLIP_BAG_COLUMNS THAWSLIP_BY_INDEX
                                                "AND b.state <> 'renamed'")
                         : connection.statement(THAWSLIP_BAG_COLUMNS THAWSLIP_BY_INDEX
                                                "AND b.state = 'frozen'");
        return rows.with(prefix_query(words));
    }
    auto& rows = which == Which::All ? connection.statement(THAWSLIP_BAG_COLUMNS THAWSLIP_BY_PATTERN
                                                            "AND b.state <> 'renamed'")
                                     : connection.statement(THAWSLIP_BAG_COLUMNS THAWSLIP_BY_PATTERN
                                                            "AND b.state = 'frozen'");
    return rows.with(patterns(words));
}

StoredDay day_at(Connection& connection, const Statement& row) {
    StoredDay day{DayKey{row.integer(0)},
                  static_cast<int>(row.integer(1)),
                  static_cast<int>(row.integer(2)),
                  date_of(row.text(3)),
                  row.text(4),
                  row.text(5),
                  row.text(6),
                  row.text(7),
                  {},
                  hash_of_description(row.text(7)) != row.integer(8)};
    day.batches = mapped(packages_of(connection, row.integer(0)), &PackageRecord::batch);
    return day;
}

StoredPrint print_at(Connection& connection, const Statement& row) {
    StoredPrint print{row.text(1),
                      row.text(2),
                      {row.text(3), row.text(4), row.text(5), row.text(6), row.text(7),
                       files_of_print(connection, row.integer(0))},
                      {},
                      static_cast<int>(row.integer(8))};
    auto& days = connection.statement("SELECT day FROM print_day WHERE print = ? ORDER BY position")
                     .with(row.integer(0));
    while (days.next()) {
        print.days.push_back(DayKey{days.integer(0)});
    }
    return print;
}

std::vector<StoredPrint> all_prints(Connection& connection, Statement& rows) {
    std::vector<StoredPrint> prints;
    while (rows.next()) {
        prints.push_back(print_at(connection, rows));
    }
    return prints;
}

constexpr std::string_view id_symbols = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";

/// Every id that is one slip away from what was typed: of what one slip makes, the check symbol
/// lets few pass.
std::set<std::string> one_slip_away(const std::string& typed) {
    std::set<std::string> ids;
    const auto add = [&ids](const std::string& id) {
        if (auto read = kitchen::parse_bag_id(id)) {
            ids.insert(std::move(read).value());
        }
    };
    add(typed);
    for (std::size_t i = 0; i <= typed.size(); ++i) {
        for (const char symbol : id_symbols) {
            add(typed.substr(0, i) + symbol + typed.substr(i));
            if (i < typed.size()) {
                add(typed.substr(0, i) + symbol + typed.substr(i + 1));
            }
        }
        if (i < typed.size()) {
            add(typed.substr(0, i) + typed.substr(i + 1));
        }
        if (i + 1 < typed.size()) {
            auto swapped = typed;
            std::swap(swapped[i], swapped[i + 1]);
            add(swapped);
        }
    }
    return ids;
}

/// Ids that end as typed, where the kitchen's symbols were left out.
std::set<std::string> without_kitchen(Connection& connection, std::string_view typed) {
    std::set<std::string> ids;
    if (typed.size() == 9) {
        auto& rows = connection
                         .statement("SELECT id FROM bag_id WHERE length(id) = 15 AND "
                                    "replace(substr(id, 5), '-', '') = ?")
                         .with(typed);
        while (rows.next()) {
            ids.insert(rows.text(0));
        }
    }
    return ids;
}

} // namespace

Bag bag_as_it_is(Connection& connection, std::int64_t bag) {
    auto& row = connection.statement(THAWSLIP_BAG_COLUMNS "WHERE b.id = ?").with(bag);
    return row.next() ? bag_at(row) : Bag{};
}

std::optional<Bag> Archive::bag(const std::string& id) {
    const Question question{*connection_};
    const auto row = living_bag(*connection_, id);
    return row != 0 ? std::optional{bag_as_it_is(*connection_, row)} : std::nullopt;
}

std::vector<Bag> Archive::bags(Which which) {
    const Question question{*connection_};
    return soonest_first(
        which == Which::All
            ? connection_->statement(THAWSLIP_BAG_COLUMNS "WHERE b.state <> 'renamed'")
            : connection_->statement(THAWSLIP_BAG_COLUMNS "WHERE b.state = 'frozen'"));
}

std::vector<Bag> Archive::find(std::string_view words, Which which) {
    const auto wanted = searched_words(words);
    if (wanted.empty()) {
        return {};
    }
    const Question question{*connection_};
    return soonest_first(with_words(*connection_, wanted, which));
}

std::vector<std::string> Archive::near_ids(std::string_view typed) {
    constexpr std::size_t longest = 15; // one slip leads from 11, 12 or 13 symbols to 12
    std::vector<std::string> found;
    if (typed.size() <= longest) {
        const Question question{*connection_};
        auto near = one_slip_away(std::string{typed});
        near.merge(without_kitchen(*connection_, typed));
        for (const auto& id : near) {
            if (bag_row(*connection_, id) != 0) {
                found.push_back(id);
            }
        }
    }
    return found;
}

StoredDay Archive::day(DayKey key) {
    const Question question{*connection_};
    auto& row = connection_
                    ->statement("SELECT id, lineage, revision, made, kitchen, file, recorded, "
                                "description, hash FROM day WHERE id = ?")
                    .with(static_cast<std::int64_t>(key));
    return row.next() ? day_at(*connection_, row) : StoredDay{};
}

std::vector<StoredDay> Archive::revisions(int lineage) {
    const Question question{*connection_};
    auto& rows = connection_
                     ->statement("SELECT id, lineage, revision, made, kitchen, file, recorded, "
                                 "description, hash FROM day WHERE lineage = ? ORDER BY revision")
                     .with(lineage);
    std::vector<StoredDay> days;
    while (rows.next()) {
        days.push_back(day_at(*connection_, rows));
    }
    return days;
}

std::vector<StoredPrint> Archive::prints_of(DayKey day) {
    const Question question{*connection_};
    auto& rows = connection_
                     ->statement("SELECT id, first_at, last_at, what, stock, layout, settings, "
                                 "look, (SELECT count(*) FROM print_key WHERE print = print.id) "
                                 "FROM print WHERE id IN (SELECT print FROM print_day WHERE "
                                 "day = ?) ORDER BY id DESC")
                     .with(static_cast<std::int64_t>(day));
    return all_prints(*connection_, rows);
}

std::optional<PrintSetup> Archive::newest_setup(DayKey day) {
    const Question question{*connection_};
    auto& row = connection_
                    ->statement("SELECT what, stock, layout, settings, look FROM print WHERE id = "
                                "(SELECT max(print) FROM print_day WHERE day = ?)")
                    .with(static_cast<std::int64_t>(day));
    return row.next() ? std::optional{PrintSetup{
                            row.text(0), row.text(1), row.text(2), row.text(3), row.text(4), {}}}
                      : std::nullopt;
}

std::vector<StoredPrint> Archive::prints_on(kitchen::Date day) {
    const Question question{*connection_};
    // Any time of that day: "2026-10-17T…" sorts after "2026-10-17" and before "2026-10-17U".
    const auto from = kitchen::to_iso(day);
    auto& rows = connection_
                     ->statement("SELECT id, first_at, last_at, what, stock, layout, settings, "
                                 "look, (SELECT count(*) FROM print_key WHERE print = print.id) "
                                 "FROM print WHERE (first_at >= ?1 AND first_at < ?2) OR "
                                 "(last_at >= ?1 AND last_at < ?2) ORDER BY id")
                     .with(from)
                     .with(from + "U");
    return all_prints(*connection_, rows);
}

std::vector<std::pair<kitchen::Date, std::string>> Archive::days_printed() {
    const Question question{*connection_};
    auto& rows =
        connection_->statement("SELECT substr(first_at, 1, 10), what FROM print UNION "
                               "SELECT substr(last_at, 1, 10), what FROM print ORDER BY 1, 2");
    std::vector<std::pair<kitchen::Date, std::string>> days;
    while (rows.next()) {
        days.emplace_back(date_of(rows.text(0)), rows.text(1));
    }
    return days;
}

std::vector<Bag> Archive::bags_of(DayKey day) {
    const Question question{*connection_};
    auto& rows =
        connection_->statement(THAWSLIP_BAG_COLUMNS "WHERE p.day = ? ORDER BY p.position, b.number")
            .with(static_cast<std::int64_t>(day));
    std::vector<Bag> bags;
    while (rows.next()) {
        bags.push_back(bag_at(rows));
    }
    return bags;
}

} // namespace thawslip::archive
