#pragma once

#include "archive/tables/database.h"

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

} // namespace thawslip::archive
