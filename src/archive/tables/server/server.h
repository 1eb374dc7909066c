#pragma once

#include "archive/tables/server/session.h"

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::archive {

/// One statement for a server; as FileStatement (archive/tables/database.h), but rows come all at
/// once, and inside a transaction what gives no rows travels with the next question.
class ServerStatement {
public:
    /// \param sql as SQLite writes parameters: ? or ?1
    ServerStatement(Session& session, const bool& is_writing, std::string_view sql);

    void again();
    void with(std::int64_t value) { parameters_.emplace_back(value); }
    void with(double value) { parameters_.emplace_back(value); }
    void with(std::string_view text) { parameters_.emplace_back(std::string{text}); }
    void with_bytes(std::string_view bytes) { parameters_.emplace_back(Bytes{std::string{bytes}}); }
    void with_nothing() { parameters_.emplace_back(std::monostate{}); }

    bool next();
    void run();
    void ahead();

    std::int64_t integer(int column) const;
    double real(int column) const;
    std::string text(int column) const;
    bool is_nothing(int column) const;

private:
    Value value(int column) const;

    Session* session_;
    const bool* is_writing_;
    std::string sql_;
    std::vector<Parameter> parameters_;
    Rows rows_;
    std::size_t row_ = 0; ///< the one that it stands at, from 1; 0: not asked yet
};

/// One kitchen's archive on a PostgreSQL server.
class Server {
public:
    /// Reaches the server and chooses the kitchen. Throws ArchiveFailure: Missing where there is no
    /// archive or no such kitchen of whoever asks, NewerSchema, Away…
    Server(const Address& address, const Deadline& deadline);

    ServerStatement prepare(std::string_view sql) { return {*session_, *is_writing_, sql}; }
    const std::string& place() const { return session_->place(); }
    Session& session() { return *session_; }

    void begin_reading(); ///< of one moment
    /// Takes the kitchen's lock: whoever else writes to it waits. Throws ReadOnly where whoever
    /// asks may only read.
    void begin_writing();
    void commit();
    void roll_back();

private:
    std::unique_ptr<Session> session_; ///< its address outlives a move
    std::unique_ptr<bool> is_writing_;
};

} // namespace thawslip::archive
