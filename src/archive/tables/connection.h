#pragma once

#include "archive/tables/statement.h"

#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <variant>

namespace thawslip::archive {

/// An open archive with every statement that was used, prepared once: a file of SQLite's, or one
/// kitchen on a server. This and Statement are all that the queries see of either, so each query
/// stands once. What the engines differ in is asked with `is_file`.
class Connection {
public:
    explicit Connection(Database database) : engine_{std::move(database)} {}
    explicit Connection(Server server) : engine_{std::move(server)} {}

    /// \param sql a literal: its address is remembered
    Statement& statement(std::string_view sql);

    bool is_file() const { return std::holds_alternative<Database>(engine_); }
    /// For what is about a file and its pages. Throws ArchiveFailure of an archive on a server.
    const Database& database() const;
    /// The file's path, or the server's address, as messages show it.
    const std::string& place() const;

    /// Lets go of the file: a statement that stands at a row holds it as it was then.
    void rest() noexcept;

    enum class For { Reading, Writing };
    /// Begins a transaction: for reading of one moment, for writing with the lock that keeps every
    /// other writer of this archive out.
    void begin(For what);
    void commit();
    void roll_back() noexcept;

    /// The row that a table's next row is called by: one more than the last, within a transaction
    /// that writes. \param last "SELECT coalesce(max(id), 0) FROM …", a literal
    std::int64_t next_row(std::string_view last);

private:
    std::variant<Database, Server> engine_;
    std::map<std::string_view, Statement> statements_; ///< go before the engine does
    std::map<std::string_view, std::int64_t> last_rows_;
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

/// All or nothing: what is not committed is taken back, also after a crash.
class Transaction {
public:
    explicit Transaction(Connection& connection, Connection::For what = Connection::For::Writing)
        : connection_{connection} {
        connection_.begin(what);
    }
    Transaction(const Transaction&) = delete;
    Transaction& operator=(const Transaction&) = delete;
    ~Transaction() {
        if (open_) {
            connection_.roll_back();
        }
    }
    void commit() {
        connection_.rest();
        connection_.commit();
        open_ = false;
    }

private:
    Connection& connection_;
    bool open_ = true;
};

} // namespace thawslip::archive
