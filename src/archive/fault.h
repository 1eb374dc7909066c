#pragma once

#include <stdexcept>
#include <string>

namespace thawslip::archive {

/// Why the archive cannot be used. The words name the file and say what to do.
struct ArchiveFault {
    enum class Kind {
        Missing,     ///< there is no archive yet
        CannotOpen,  ///< no permission, no such folder
        ReadOnly,    ///< it may be read, not written
        Busy,        ///< another program holds it
        Away,        ///< the server that it is on cannot be reached
        Damaged,     ///< it is an archive, but broken
        NotOurs,     ///< it is some other file
        NewerSchema, ///< a later Thawslip wrote it
        Clash,       ///< an id that is printed on a bag is to be printed on another
        DiskFull,
        DiskFailed, ///< the system could not read or write, or a limit on the size of files is set
        Failed,     ///< anything else, in SQLite's words
    };
    Kind kind = Kind::Failed;
    std::string message; ///< lower case, no full stop
};

/// The same, thrown where an archive that was opened fails later: the system failed, and every
/// change that was under way has been taken back.
class ArchiveFailure : public std::runtime_error {
public:
    explicit ArchiveFailure(ArchiveFault fault)
        : std::runtime_error{fault.message}, fault_{std::move(fault)} {}
    const ArchiveFault& fault() const { return fault_; }

private:
    ArchiveFault fault_;
};

} // namespace thawslip::archive
