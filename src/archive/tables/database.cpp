#include "archive/tables/database.h"

#include <filesystem>
#include <fmt/format.h>
#include <sqlite3.h>

namespace thawslip::archive {
namespace {

namespace fs = std::filesystem;

/// A path as a URI in which nothing is left to chance (SQLite, "Uniform Resource Identifiers").
std::string uri_of(const std::string& path, Access access) {
    // An absolute path, so that what begins with ":" is a file's name and no name of SQLite's; of
    // slashes in a row one, for after two of them a host would be named (RFC 8089).
    std::string uri = "file:";
    for (const char c : fs::absolute(path).string()) {
        if (c == '/' && uri.ends_with('/')) {
            continue;
        }
        if (c == '%' || c == '?' || c == '#') {
            uri += fmt::format("%{:02x}", static_cast<unsigned char>(c));
        } else {
            uri += c;
        }
    }
    return access == Access::Unchanging ? uri + "?immutable=1" : uri;
}

int flags_of(Access access) {
    const int shared = SQLITE_OPEN_URI | SQLITE_OPEN_NOMUTEX | SQLITE_OPEN_EXRESCODE;
    return shared | (access == Access::ReadWrite ? SQLITE_OPEN_READWRITE : SQLITE_OPEN_READONLY);
}

std::string words_of(ArchiveFault::Kind kind, const std::string& path, std::string_view detail) {
    using Kind = ArchiveFault::Kind;
    switch (kind) {
    case Kind::Missing: return fmt::format("there is no archive at {}", path);
    case Kind::CannotOpen: return fmt::format("cannot open the archive {}: {}", path, detail);
    case Kind::ReadOnly: return fmt::format("the archive {} may not be written: {}", path, detail);
    case Kind::Busy:
        return fmt::format("another program is writing the archive {}; nothing was changed, try "
                           "again in a moment",
                           path);
    case Kind::Damaged:
        return fmt::format("the archive {} is damaged ({}); put a backup in its place with: "
                           "thawslip archive restore FILE; without one, rebuild what can be "
                           "rebuilt with: thawslip archive repair",
                           path, detail);
    case Kind::NotOurs: return fmt::format("{} is no archive of thawslip", path);
    case Kind::NewerSchema:
        return fmt::format("the archive {} was written by a later thawslip ({}); nothing was "
                           "changed",
                           path, detail);
    case Kind::Clash:
    case Kind::Away: return std::string{detail};
    case Kind::DiskFull:
        return fmt::format(
            "no room left on the disk of the archive {}; nothing was changed, and it "
            "can still be read and backed up to another disk",
            path);
    case Kind::DiskFailed:
        return fmt::format("the disk of the archive {} could not be read or written ({}); nothing "
                           "was changed",
                           path, detail);
    case Kind::Failed: break;
    }
    return fmt::format("the archive {} failed: {}", path, detail);
}

ArchiveFault::Kind kind_of(int code) {
    using Kind = ArchiveFault::Kind;
    if (code == SQLITE_IOERR_SHMSIZE) { // no room for what stands beside the file while it is open
        return Kind::DiskFull;
    }
    switch (code & 0xFF) { // the primary code: SQLite, "Result and Error Codes"
    case SQLITE_BUSY:
    case SQLITE_PROTOCOL: // others came first again and again
    case SQLITE_LOCKED: return Kind::Busy;
    case SQLITE_READONLY: return Kind::ReadOnly;
    case SQLITE_CANTOPEN:
    case SQLITE_PERM:
    case SQLITE_AUTH: return Kind::CannotOpen;
    case SQLITE_CORRUPT: return Kind::Damaged;
    case SQLITE_NOTADB: return Kind::NotOurs;
    case SQLITE_FULL: return Kind::DiskFull;
    case SQLITE_IOERR: return Kind::DiskFailed;
    default: return Kind::Failed;
    }
}

} // namespace

ArchiveFault fault_of(int code, const std::string& path, std::string_view detail) {
    if ((code & 0xFF) == SQLITE_INTERRUPT) {
        return {ArchiveFault::Kind::Damaged,
                fmt::format("the archive {} asks for more work than its size explains; nothing was "
                            "taken from it",
                            path)};
    }
    const auto kind = kind_of(code);
    return {kind, words_of(kind, path, detail)};
}

void CloseDatabase::operator()(sqlite3* handle) const {
    sqlite3_close_v2(handle);
}

void FinalizeStatement::operator()(sqlite3_stmt* handle) const {
    sqlite3_finalize(handle);
}

FileStatement::FileStatement(sqlite3* database, const std::string& path, std::string_view sql)
    : database_{database}, path_{&path} {
    sqlite3_stmt* handle = nullptr;
    const int code = sqlite3_prepare_v3(database, sql.data(), static_cast<int>(sql.size()),
                                        SQLITE_PREPARE_PERSISTENT, &handle, nullptr);
    handle_.reset(handle);
    require(code);
}

void FileStatement::require(int code) const {
    if (code != SQLITE_OK && code != SQLITE_ROW && code != SQLITE_DONE) {
        throw ArchiveFailure{fault_of(code, *path_, sqlite3_errmsg(database_))};
    }
}

FileStatement& FileStatement::again() {
    sqlite3_reset(handle_.get()); // tells again what the last step already told
    bound_ = 0;
    return *this;
}

FileStatement& FileStatement::with(std::int64_t value) {
    require(sqlite3_bind_int64(handle_.get(), ++bound_, value));
    return *this;
}

FileStatement& FileStatement::with(double value) {
    require(sqlite3_bind_double(handle_.get(), ++bound_, value));
    return *this;
}

FileStatement& FileStatement::with(std::string_view text) {
    require(sqlite3_bind_text64(handle_.get(), ++bound_, text.data(), text.size(), SQLITE_TRANSIENT,
                                SQLITE_UTF8));
    return *this;
}

FileStatement& FileStatement::with_bytes(std::string_view bytes) {
    require(
        sqlite3_bind_blob64(handle_.get(), ++bound_, bytes.data(), bytes.size(), SQLITE_TRANSIENT));
    return *this;
}

FileStatement& FileStatement::with_nothing() {
    require(sqlite3_bind_null(handle_.get(), ++bound_));
    return *this;
}

bool FileStatement::next() {
    const int code = sqlite3_step(handle_.get());
    require(code);
    return code == SQLITE_ROW;
}

void FileStatement::run() {
    while (next()) {
    }
    again();
}

std::int64_t FileStatement::integer(int column) const {
    return sqlite3_column_int64(handle_.get(), column);
}

double FileStatement::real(int column) const {
    return sqlite3_column_double(handle_.get(), column);
}

std::string FileStatement::text(int column) const {
    const void* bytes = sqlite3_column_blob(handle_.get(), column);
    const int size = sqlite3_column_bytes(handle_.get(), column);
    return bytes == nullptr
               ? std::string{}
               : std::string{static_cast<const char*>(bytes), static_cast<std::size_t>(size)};
}

bool FileStatement::is_nothing(int column) const {
    return sqlite3_column_type(handle_.get(), column) == SQLITE_NULL;
}

Database::Database(const std::string& path, Access access, std::chrono::milliseconds patience)
    : Database{path, uri_of(path, access), flags_of(access), patience} {}

Database Database::in_memory(std::string path, std::chrono::milliseconds patience) {
    return {std::move(path), ":memory:", SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, patience};
}

Database::Database(std::string path, const std::string& uri, int flags,
                   std::chrono::milliseconds patience)
    : path_{std::make_unique<std::string>(std::move(path))} {
    sqlite3* handle = nullptr;
    const int code = sqlite3_open_v2(uri.c_str(), &handle, flags, nullptr);
    handle_.reset(handle);
    if (code != SQLITE_OK) {
        throw ArchiveFailure{fault_of(code, *path_, sqlite3_errstr(code))};
    }
    sqlite3_busy_timeout(handle, static_cast<int>(patience.count()));
    // A file may come from anywhere: its own views and triggers get no say, and no statement may
    // break it (SQLite, "Defense Against The Dark Arts").
    sqlite3_db_config(handle, SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
    sqlite3_db_config(handle, SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0, nullptr);
    sqlite3_db_config(handle, SQLITE_DBCONFIG_ENABLE_VIEW, 0, nullptr);
    sqlite3_db_config(handle, SQLITE_DBCONFIG_ENABLE_TRIGGER, 0, nullptr);
    constexpr int longest_value = 1 << 27; // twice what a file of the cook's own may have
    sqlite3_limit(handle, SQLITE_LIMIT_LENGTH, longest_value);
}

void Database::run(const std::string& sql) const {
    const int code = sqlite3_exec(handle(), sql.c_str(), nullptr, nullptr, nullptr);
    if (code != SQLITE_OK) {
        throw ArchiveFailure{fault_of(code, *path_, sqlite3_errmsg(handle()))};
    }
}

std::int64_t Database::number(std::string_view sql) const {
    auto statement = prepare(sql);
    return statement.next() ? statement.integer(0) : 0;
}

namespace {

constexpr int steps_a_call = 100'000;

int spend(void* left) {
    return --*static_cast<std::int64_t*>(left) < 0 ? 1 : 0;
}

} // namespace

WorkLimit::WorkLimit(const Database& database) : database_{database} {
    // Sound archives take some thousand steps a page; the largest that fits a page is no exception.
    constexpr std::int64_t calls_a_page = 2;
    constexpr std::int64_t calls_at_least = 1000;
    left_ = calls_at_least + calls_a_page * database.number("PRAGMA page_count");
    sqlite3_progress_handler(database.handle(), steps_a_call, spend, &left_);
}

WorkLimit::~WorkLimit() {
    sqlite3_progress_handler(database_.handle(), 0, nullptr, nullptr);
}

FileTransaction::FileTransaction(const Database& database) : database_{database} {
    database_.run("BEGIN IMMEDIATE");
}

FileTransaction::~FileTransaction() {
    if (open_) {
        // Fails only where SQLite has already taken everything back by itself.
        sqlite3_exec(database_.handle(), "ROLLBACK", nullptr, nullptr, nullptr);
    }
}

void FileTransaction::commit() {
    database_.run("COMMIT");
    open_ = false;
}

} // namespace thawslip::archive
