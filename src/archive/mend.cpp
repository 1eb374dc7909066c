#include "archive/archive.h"
#include "archive/connection.h"
#include "base/folder.h"

#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <fcntl.h>
#include <fmt/format.h>
#include <sqlite3.h>
#include <unistd.h>

namespace thawslip::archive {
namespace {

struct FinishBackup {
    void operator()(sqlite3_backup* backup) const { sqlite3_backup_finish(backup); }
};

[[noreturn]] void fail(const std::string& file) {
    throw ArchiveFailure{{ArchiveFault::Kind::CannotOpen,
                          fmt::format("cannot make {}: {}", file, std::strerror(errno))}};
}

/// A file of another name beside the backup, gone again unless it takes the backup's name.
class Draft {
public:
    explicit Draft(const std::string& file)
        : file_{file}, name_{folder_of(file) + "/.thawslip-XXXXXX"} {
        const int descriptor = ::mkostemp(name_.data(), O_CLOEXEC); // of mode 0600
        if (descriptor < 0) {
            fail(file);
        }
        ::close(descriptor);
    }
    Draft(const Draft&) = delete;
    Draft& operator=(const Draft&) = delete;
    ~Draft() {
        ::unlink(name_.c_str());
        ::unlink((name_ + "-journal").c_str());
    }
    const std::string& name() const { return name_; }

    /// Takes the name, unless there is such a file by now; not all file systems can do both at
    /// once (Linux manual pages, rename(2), RENAME_NOREPLACE).
    void take_name() const {
        const bool renamed =
            ::renameat2(AT_FDCWD, name_.c_str(), AT_FDCWD, file_.c_str(), RENAME_NOREPLACE) == 0;
        if (!renamed && (errno != EINVAL || ::access(file_.c_str(), F_OK) == 0 ||
                         ::rename(name_.c_str(), file_.c_str()) != 0)) {
            fail(file_);
        }
        sync_folder(folder_of(file_));
    }

private:
    std::string file_;
    std::string name_;
};

void copy(const Database& from, const Database& to) {
    const std::unique_ptr<sqlite3_backup, FinishBackup> backup{
        sqlite3_backup_init(to.handle(), "main", from.handle(), "main")};
    // All pages in one step: a copy in pieces starts again whenever somebody writes (SQLite,
    // "SQLite Backup API").
    const int code = backup ? sqlite3_backup_step(backup.get(), -1) : SQLITE_ERROR;
    if (code != SQLITE_DONE) {
        throw ArchiveFailure{fault_of(code, to.path(), sqlite3_errstr(code))};
    }
}

} // namespace

std::vector<std::string> Archive::check() {
    const Question question{*connection_};
    std::vector<std::string> wrong;
    auto integrity = connection_->database().prepare("PRAGMA integrity_check");
    while (integrity.next()) {
        if (integrity.text(0) != "ok") {
            wrong.push_back(integrity.text(0));
        }
    }
    auto keys = connection_->database().prepare("PRAGMA foreign_key_check");
    while (keys.next()) {
        wrong.push_back(fmt::format("row {} of {} names a row of {} that is not there",
                                    keys.integer(1), keys.text(0), keys.text(2)));
    }
    auto ids = connection_->database().prepare(
        "SELECT id FROM bag WHERE (SELECT count(*) FROM bag_id WHERE bag = bag.id AND newest = 1) "
        "<> 1");
    while (ids.next()) {
        wrong.push_back(fmt::format("bag {} has no id, or several", ids.integer(0)));
    }
    return wrong;
}

void Archive::back_up(const std::string& file) {
    if (::access(file.c_str(), F_OK) == 0) {
        errno = EEXIST;
        fail(file);
    }
    const Draft draft{file};
    {
        const Database copy_of_it{draft.name(), Access::ReadWrite, std::chrono::seconds{5}};
        copy_of_it.run("PRAGMA synchronous = FULL");
        copy(connection_->database(), copy_of_it);
    }
    draft.take_name();
}

} // namespace thawslip::archive
