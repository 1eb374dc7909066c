#include "app/archive_place.h"

#include "app/exit_status.h"

#include <cstdlib>

namespace thawslip::app {

std::string archive_file(const Settings& settings) {
    if (!settings.archive.empty()) {
        return settings.archive;
    }
    const char* data = std::getenv("XDG_DATA_HOME");
    const char* home = std::getenv("HOME");
    // The specification has relative paths ignored.
    if (data != nullptr && data[0] == '/') {
        return std::string{data} + "/thawslip/archive.db";
    }
    if (home != nullptr && home[0] == '/') {
        return std::string{home} + "/.local/share/thawslip/archive.db";
    }
    throw SystemFailure{"no place for the archive is known: neither XDG_DATA_HOME nor HOME is an "
                        "absolute path; name one with --archive, or print with --no-archive"};
}

archive::Archive open_archive(const Settings& settings, archive::Mode mode) {
    auto archive = archive::Archive::open(archive_file(settings), mode);
    if (!archive) {
        throw SystemFailure{archive.fault().message};
    }
    return std::move(archive).value();
}

std::optional<archive::Archive> existing_archive(const Settings& settings, archive::Mode mode) {
    // Opened for reading first, so that asking about nothing makes no file.
    auto archive = archive::Archive::open(archive_file(settings), archive::Mode::Read);
    if (!archive && archive.fault().kind == archive::ArchiveFault::Kind::Missing) {
        return std::nullopt;
    }
    if (!archive) {
        throw SystemFailure{archive.fault().message};
    }
    return mode == archive::Mode::Read ? std::move(archive).value() : open_archive(settings, mode);
}

} // namespace thawslip::app
