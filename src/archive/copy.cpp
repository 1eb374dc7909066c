#include "archive/copy.h"

#include <sqlite3.h>

namespace thawslip::archive {
namespace {

struct FreeImage {
    void operator()(unsigned char* image) const { sqlite3_free(image); }
};

/// Says in the header that no log is kept: a database in memory can keep none (SQLite, "Database
/// File Format", 1.3.3, file format version numbers; "Deserialize a database").
void forget_log(unsigned char* image, sqlite3_int64 size) {
    constexpr sqlite3_int64 header = 100;
    if (size >= header) {
        image[18] = 1;
        image[19] = 1;
    }
}

} // namespace

Database copy_in_memory(const Database& database, std::chrono::milliseconds patience) {
    sqlite3_int64 size = 0;
    // Read in one transaction, what stands in the log included ("Serialize a database").
    std::unique_ptr<unsigned char, FreeImage> image{
        sqlite3_serialize(database.handle(), "main", &size, 0)};
    if (!image) {
        const int code = sqlite3_errcode(database.handle());
        throw ArchiveFailure{fault_of(code == SQLITE_OK ? SQLITE_NOMEM : code, database.path(),
                                      sqlite3_errmsg(database.handle()))};
    }
    forget_log(image.get(), size);
    auto copy = Database::in_memory(database.path(), patience);
    // Frees the image itself, also where it fails.
    const int code =
        sqlite3_deserialize(copy.handle(), "main", image.release(), size, size,
                            SQLITE_DESERIALIZE_FREEONCLOSE | SQLITE_DESERIALIZE_RESIZEABLE);
    if (code != SQLITE_OK) {
        throw ArchiveFailure{fault_of(code, database.path(), sqlite3_errstr(code))};
    }
    return copy;
}

} // namespace thawslip::archive
