#include "app/desk/day_folder.h"

#include "app/desk/days_in.h"
#include "app/files/descriptor.h"
#include "app/files/text_if_there.h"
#include "app/files/user_folders.h"
#include "app/files/whole_file.h"
#include "base/place.h"
#include "base/system_failure.h"

#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <filesystem>
#include <fmt/format.h>
#include <memory>
#include <sys/file.h>
#include <unistd.h>

namespace thawslip::app {
namespace {

namespace fs = std::filesystem;

/// A description is some kilobytes; a megabyte is a mistake.
constexpr std::size_t largest_day = std::size_t{1} << 20U;

std::string whole_path(const std::string& path) {
    std::error_code error;
    const auto whole = fs::weakly_canonical(path, error);
    if (error) {
        throw SystemFailure{fmt::format("cannot open {}: {}", path, error.message())};
    }
    return whole.string();
}

/// Keeps other desks from a folder while it is open, not other programs, which know nothing of it.
int locked(const std::string& folder) {
    const int descriptor = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (descriptor < 0) {
        throw SystemFailure{fmt::format("cannot write in {}: {}", folder, std::strerror(errno))};
    }
    ::flock(descriptor, LOCK_EX); // not every file system has locks
    return descriptor;
}

std::optional<std::string> text_of(const std::string& file, const std::string& folder) {
    if (!stands_in(file, folder)) {
        return std::nullopt;
    }
    return text_if_there(file, largest_day);
}

void make_folder(const std::string& folder) {
    std::error_code error;
    fs::create_directories(folder, error);
    if (error) {
        throw SystemFailure{
            fmt::format("cannot create the folder {}: {}", folder, error.message())};
    }
}

void check_name(const std::string& name) {
    if (name.empty() || name.front() == '.' || name.find('/') != name.npos ||
        name.find('\0') != name.npos) {
        throw SystemFailure{fmt::format("\"{}\" is no name of a file in this folder", name)};
    }
}

/// The whole path of a file that may be changed.
std::string file_to_change(const std::string& folder, const std::string& name,
                           const WhyKept& why_kept) {
    check_name(name);
    auto file = (fs::path{folder} / name).string();
    if (!stands_in(file, folder)) {
        throw SystemFailure{fmt::format("{} leads out of the folder {}", name, folder)};
    }
    if (const auto why = why_kept(file); !why.empty()) {
        throw SystemFailure{fmt::format("{} is {}; nothing written", name, why)};
    }
    return file;
}

struct DayRemover {
    std::string folder;
    WhyKept why_kept;

    bool operator()(const std::string& name, const std::string& before) const {
        const auto file = file_to_change(folder, name, why_kept);
        const Descriptor lock{locked(folder)};
        if (text_of(file, folder) != before) {
            return false;
        }
        std::error_code error;
        fs::remove(file, error);
        if (error) {
            throw SystemFailure{fmt::format("cannot remove {}: {}", name, error.message())};
        }
        return true;
    }
};

struct DayWriter {
    std::string folder;
    WhyKept why_kept;

    bool operator()(const std::string& name, const std::optional<std::string>& before,
                    const std::string& text) const {
        check_name(name);
        make_folder(folder);
        const auto file = file_to_change(folder, name, why_kept);
        const Descriptor lock{locked(folder)};
        const auto is_as_before = [&] { return text_of(file, folder) == before; };
        if (!is_as_before()) {
            return false;
        }
        WholeFile whole{file};
        whole.write(text);
        return whole.commit_if(is_as_before);
    }
};

Result<DeskPlace, std::string> usual_place() {
    const auto documents = documents_folder();
    if (documents.empty()) {
        return Failure{std::string{"no folder for the days is known, for HOME is no absolute path; "
                                   "name one: thawslip desk FOLDER"}};
    }
    return DeskPlace{whole_path(documents + "/Thawslip"), {}};
}

} // namespace

Result<DeskPlace, std::string> desk_place(const std::string& named) {
    if (named.empty()) {
        return usual_place();
    }
    std::error_code error;
    const fs::path whole{whole_path(named)};
    if (fs::is_directory(whole, error)) {
        return DeskPlace{whole.string(), {}};
    }
    const bool is_file = fs::is_regular_file(whole, error);
    if (is_file && whole.extension() == ".toml") {
        return DeskPlace{whole.parent_path().string(), whole.filename().string()};
    }
    return Failure{fmt::format("{} is {}; expected a folder, or a day in one", named,
                               is_file                    ? "no day: its name does not end in .toml"
                               : fs::exists(whole, error) ? "neither a folder nor a file"
                                                          : "not there")};
}

desk::Folder day_folder(const DeskPlace& place, const WhyKept& why_kept) {
    const auto& folder = place.folder;
    return {folder,
            [days = std::make_shared<DaysIn>(folder, place.open)] { return days->names(); },
            [folder](const std::string& name) { return (fs::path{folder} / name).string(); },
            [folder](const std::string& name) {
                check_name(name);
                return text_of((fs::path{folder} / name).string(), folder);
            },
            DayWriter{folder, why_kept},
            DayRemover{folder, why_kept}};
}

} // namespace thawslip::app
