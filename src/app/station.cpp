#include "app/station.h"

#include "app/clock.h"
#include "kitchen/bag_id.h"

#include <array>
#include <ctime>
#include <fmt/format.h>
#include <fstream>
#include <unistd.h>

namespace thawslip::app {
namespace {

std::string first_line_of(const char* file) {
    std::ifstream stream{file};
    std::string line;
    std::getline(stream, line);
    return line;
}

/// The machine's own name for itself (machine-id(5)), else the one it has in the network.
std::string machine() {
    auto id = first_line_of("/etc/machine-id");
    if (id.empty()) {
        std::array<char, 256> name{};
        ::gethostname(name.data(), name.size() - 1);
        id = name.data();
    }
    return id;
}

std::int64_t uptime() {
    std::timespec time{};
    return ::clock_gettime(CLOCK_BOOTTIME, &time) == 0 ? std::int64_t{time.tv_sec} : 0;
}

} // namespace

service::Moment moment_now() {
    return {now_text(), station_now()};
}

service::Now now_here() {
    return {today(), now(),
            system_clock(now() - std::chrono::days{30}, now() + std::chrono::days{400})};
}

archive::Station station_now() {
    // machine-id(5) asks that the id itself be kept from others: a hash of it is as good here.
    archive::Station station{
        fmt::format("{:016x}", kitchen::fnv_1a("thawslip station " + machine()))};
    if (const auto fixed = fixed_clock()) {
        station.clock = *fixed;
        return station;
    }
    station.clock = std::time(nullptr);
    station.boot = first_line_of("/proc/sys/kernel/random/boot_id");
    station.uptime = uptime();
    return station;
}

} // namespace thawslip::app
