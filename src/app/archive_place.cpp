#include "app/archive_place.h"

#include "app/exit_status.h"
#include "app/files/user_folders.h"
#include "app/server_archive.h"
#include "archive/address.h"

#include <filesystem>
#include <fmt/format.h>

namespace thawslip::app {

namespace {

std::string in_folder(const std::string& folder, const std::string& name) {
    return (std::filesystem::path{folder} / name).string();
}

} // namespace

Result<std::string, std::string> archive_place(const std::string& written,
                                               const std::string& folder) {
    if (archive::is_address(written)) {
        const auto address = archive::parse_address(written);
        return address ? Result<std::string, std::string>{written} : Failure{address.fault()};
    }
    if (written.starts_with(':')) { // SQLite's ":memory:" for one: nothing would be kept
        return Failure{fmt::format("\"{}\" is no file that an archive could be kept in", written)};
    }
    return file_place(written, folder);
}

Result<std::string, std::string> file_place(const std::string& written, const std::string& folder) {
    if (written.starts_with("~/")) {
        const auto home = folder_in("HOME");
        return home.empty()
                   ? Result<std::string, std::string>{Failure{fmt::format(
                         "\"{}\": HOME, for which ~ stands, is no absolute path", written)}}
                   : in_folder(home, written.substr(2));
    }
    if (written.starts_with('~')) {
        return Failure{fmt::format("\"{}\": ~ stands for the home folder only as \"~/\"; a file "
                                   "called so is \"./{}\"",
                                   written, written)};
    }
    return folder.empty() ? written : in_folder(folder, written);
}

std::string archive_file_if_known(const Settings& settings) {
    if (archive::is_address(settings.archive)) {
        return station_file(settings.archive);
    }
    if (!settings.archive.empty()) {
        return settings.archive;
    }
    return user_place("XDG_DATA_HOME", ".local/share", "thawslip/archive.db");
}

std::string archive_file(const Settings& settings) {
    auto file = archive_file_if_known(settings);
    if (file.empty()) {
        throw SystemFailure{"no place for the archive is known: neither XDG_DATA_HOME nor HOME is "
                            "an absolute path; name one with --archive"};
    }
    return file;
}

std::string no_archive_text(const Settings& settings) {
    return fmt::format("there is no archive at {}: nothing has been printed yet",
                       archive_file(settings));
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

std::optional<archive::Archive> needed_archive(const Settings& settings, archive::Mode mode,
                                               Console console) {
    auto archive = existing_archive(settings, mode);
    if (!archive) {
        console.err << "error: " << no_archive_text(settings) << "\n";
    }
    return archive;
}

} // namespace thawslip::app
