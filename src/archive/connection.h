#pragma once

#include "archive/database.h"
#include "archive/values.h"

#include <map>
#include <string_view>

namespace thawslip::archive {

/// An open archive's database with every statement that was used, compiled once.
class Connection {
public:
    explicit Connection(Database database) : database_{std::move(database)} {}

    /// \param sql a literal: its address is remembered
    Statement& statement(std::string_view sql) {
        const auto found = statements_.find(sql);
        return found != statements_.end()
                   ? found->second.again()
                   : statements_.emplace(sql, database_.prepare(sql)).first->second;
    }
    const Database& database() const { return database_; }

    /// Lets go of the file: a statement that stands at a row holds it as it was then.
    void rest() {
        for (auto& [sql, statement] : statements_) {
            statement.again();
        }
    }

private:
    Database database_;
    std::map<std::string_view, Statement> statements_; ///< go before the database does
};

/// One question to the archive, or one change: at its end nothing holds the file any longer.
class Question {
public:
    explicit Question(Connection& connection) : connection_{connection} {}
    Question(const Question&) = delete;
    Question& operator=(const Question&) = delete;
    ~Question() { connection_.rest(); }

private:
    Connection& connection_;
};

/// Dates and weights as columns hold them.
kitchen::Date date_of(const std::string& iso);
std::string_view word_of(kitchen::DateBasis basis);
kitchen::DateBasis basis_of(std::string_view word);

/// The columns of a package, from `first` on: dish, words, made, keep_until, basis, servings,
/// grams. \returns the package without its bags
PackageRecord package_at(const Statement& row, int first);

// What recording and merging share. All inside a transaction of the caller.

/// What a description is found again by.
std::int64_t hash_of_description(std::string_view description);

/// Adds the day and its packages; their bags and ids are for the caller.
std::int64_t insert_day(Connection& connection, const DayRecord& day, int lineage, int revision,
                        const std::string& recorded);
/// The packages of a day in order, without ids; and their rows.
std::vector<PackageRecord> packages_of(Connection& connection, std::int64_t day);
std::vector<std::int64_t> package_rows(Connection& connection, std::int64_t day);
/// The row of the bag that has this id; 0 when there is none.
std::int64_t bag_row(Connection& connection, const std::string& id);
std::int64_t insert_bag(Connection& connection, std::int64_t package, int number, State state,
                        const std::string& changed);
void insert_id(Connection& connection, const std::string& id, std::int64_t bag, bool newest);
int next_lineage(Connection& connection);
int last_revision(Connection& connection, int lineage);

/// The print with this setup of these days; 0 when there is none.
std::int64_t print_row(Connection& connection, const PrintSetup& setup,
                       const std::vector<std::int64_t>& days);
void insert_print(Connection& connection, const StoredPrint& print);

} // namespace thawslip::archive
