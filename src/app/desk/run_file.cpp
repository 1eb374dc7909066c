#include "app/desk/run_file.h"

#include "app/desk/private_folder.h"
#include "app/desk/random_text.h"
#include "base/system_failure.h"
#include "kitchen/bag_id.h"

#include <cerrno>
#include <chrono>
#include <cstring>
#include <fcntl.h>
#include <fmt/format.h>
#include <sstream>
#include <sys/file.h>
#include <sys/stat.h>
#include <thread>
#include <unistd.h>

namespace thawslip::app {
namespace {

/// A name without the folder's own: what a cook calls it is nobody's business.
std::string run_place(const std::string& folder) {
    return fmt::format("{}/desk-{:016x}", run_folder(), kitchen::fnv_1a(folder));
}

[[noreturn]] void fail_at(const std::string& place) {
    throw SystemFailure{fmt::format("cannot write {}: {}", place, std::strerror(errno))};
}

/// Whether the file behind a descriptor is still the one of that name: its desk may have taken it
/// away between opening and locking.
bool is_still_there(int descriptor, const std::string& place) {
    struct stat open {};
    struct stat named {};
    return ::fstat(descriptor, &open) == 0 && ::stat(place.c_str(), &named) == 0 &&
           open.st_ino == named.st_ino && open.st_dev == named.st_dev;
}

std::optional<RunningDesk> read_desk(int descriptor) {
    constexpr std::size_t enough = 200;
    std::string text(enough, '\0');
    const auto size = ::pread(descriptor, text.data(), text.size(), 0);
    std::istringstream words{text.substr(0, size > 0 ? static_cast<std::size_t>(size) : 0)};
    RunningDesk desk;
    words >> desk.process >> desk.port >> desk.key;
    return words && is_random_text(desk.key) ? std::optional{desk} : std::nullopt;
}

int open_file(const std::string& place) {
    const int descriptor = ::open(place.c_str(), O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW, 0600);
    if (descriptor < 0) {
        fail_at(place);
    }
    return descriptor;
}

} // namespace

RunFile::RunFile(std::string place, int descriptor)
    : place_{std::move(place)}, descriptor_{descriptor} {}

RunFile::~RunFile() {
    ::unlink(place_.c_str()); // while the lock is held: nobody else has it by then
    ::close(descriptor_);
}

std::unique_ptr<RunFile> RunFile::take(const std::string& folder,
                                       std::optional<RunningDesk>& other) {
    make_private_folder(run_folder());
    const auto place = run_place(folder);
    constexpr int attempts = 100; // five seconds: a desk that begins or ends takes less
    for (int attempt = 0; attempt < attempts; ++attempt) {
        const int descriptor = open_file(place);
        const bool is_ours = ::flock(descriptor, LOCK_EX | LOCK_NB) == 0;
        if (is_ours && is_still_there(descriptor, place)) {
            if (::ftruncate(descriptor, 0) != 0) { // what a desk that was killed has left
                fail_at(place);
            }
            return std::unique_ptr<RunFile>{new RunFile{place, descriptor}};
        }
        other = is_ours ? std::nullopt : read_desk(descriptor);
        ::close(descriptor);
        if (other) {
            return nullptr;
        }
        std::this_thread::sleep_for(std::chrono::milliseconds{50});
    }
    throw SystemFailure{
        fmt::format("another program holds {} and does not say where its page is", place)};
}

void RunFile::say(const RunningDesk& desk) {
    const auto text = fmt::format("{} {} {}\n", desk.process, desk.port, desk.key);
    if (::ftruncate(descriptor_, 0) != 0 ||
        ::pwrite(descriptor_, text.data(), text.size(), 0) != static_cast<ssize_t>(text.size())) {
        fail_at(place_);
    }
}

std::string codes_of(const std::string& folder) {
    return run_place(folder) + ".codes";
}

} // namespace thawslip::app
