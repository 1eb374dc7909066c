#pragma once

#include "archive/fault.h"

#include <chrono>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

struct sqlite3;
struct sqlite3_stmt;

namespace thawslip::archive {

enum class Access { ReadOnly, ReadWrite, Unchanging };

/// What closes SQLite's handles. Out of line, so that only this folder's sources see sqlite3.h.
struct CloseDatabase {
    void operator()(sqlite3* handle) const;
};
struct FinalizeStatement {
    void operator()(sqlite3_stmt* handle) const;
};

/// One statement prepared by SQLite: bind from the first parameter on, step through the rows.
/// Compiled once, used often; `again()` makes it ready for the next use.
class FileStatement {
public:
    FileStatement(sqlite3* database, const std::string& path, std::string_view sql);

    /// Ready for new values, wherever it stood.
    FileStatement& again();
    FileStatement& with(std::int64_t value);
    FileStatement& with(int value) { return with(std::int64_t{value}); }
    FileStatement& with(double value);
    FileStatement& with(std::string_view text);
    FileStatement& with(const std::string& text) { return with(std::string_view{text}); }
    FileStatement& with(const char* text) { return with(std::string_view{text}); }
    FileStatement& with_bytes(std::string_view bytes);
    FileStatement& with_nothing();

    bool next();              ///< \returns whether there is a row
    void run();               ///< for what gives no rows
    void ahead() { again(); } ///< a file needs no round trip

    std::int64_t integer(int column) const;
    double real(int column) const;
    std::string text(int column) const; ///< of a text or of bytes
    bool is_nothing(int column) const;

private:
    void require(int code) const;

    sqlite3* database_;
    const std::string* path_;
    std::unique_ptr<sqlite3_stmt, FinalizeStatement> handle_;
    int bound_ = 0;
};

/// One open database file. Everything that fails throws ArchiveFailure.
class Database {
public:
    /// \param patience how long to wait for another program that is writing
    Database(const std::string& path, Access access, std::chrono::milliseconds patience);

    /// An empty one that is in no file. \param path what messages call it
    static Database in_memory(std::string path, std::chrono::milliseconds patience);

    FileStatement prepare(std::string_view sql) const { return {handle_.get(), *path_, sql}; }
    void run(const std::string& sql) const; ///< one or several statements without parameters
    std::int64_t number(std::string_view sql) const; ///< the first column of the first row
    const std::string& path() const { return *path_; }
    sqlite3* handle() const { return handle_.get(); }

private:
    Database(std::string path, const std::string& uri, int flags,
             std::chrono::milliseconds patience);

    std::unique_ptr<std::string> path_; ///< its address outlives a move
    std::unique_ptr<sqlite3, CloseDatabase> handle_;
};

/// All or nothing: what is not committed is taken back, also after a crash ("Atomic Commit In
/// SQLite", sqlite.org/atomiccommit.html; for the log, "Write-Ahead Logging", sqlite.org/wal.html).
class FileTransaction {
public:
    /// Takes the write lock at once, so that two programs never find out half-way.
    explicit FileTransaction(const Database& database);
    FileTransaction(const FileTransaction&) = delete;
    FileTransaction& operator=(const FileTransaction&) = delete;
    ~FileTransaction();
    void commit();

private:
    const Database& database_;
    bool open_ = true;
};

/// Until it goes out of scope, questions to a database end in ArchiveFailure when they take far
/// more steps than a file of its size explains: a stranger's file may ask for years of work.
class WorkLimit {
public:
    explicit WorkLimit(const Database& database);
    WorkLimit(const WorkLimit&) = delete;
    WorkLimit& operator=(const WorkLimit&) = delete;
    ~WorkLimit();

private:
    const Database& database_;
    std::int64_t left_; ///< calls of the handler
};

/// SQLite's result code in our words.
ArchiveFault fault_of(int code, const std::string& path, std::string_view detail);

} // namespace thawslip::archive
