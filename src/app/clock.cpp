#include "app/clock.h"

#include <ctime>

namespace thawslip::app {

kitchen::Date today() {
    const std::time_t now = std::time(nullptr);
    std::tm local{};
    localtime_r(&now, &local);
    return std::chrono::year{local.tm_year + 1900} /
           std::chrono::month{static_cast<unsigned>(local.tm_mon + 1)} /
           std::chrono::day{static_cast<unsigned>(local.tm_mday)};
}

kitchen::Instant now() {
    return std::chrono::floor<std::chrono::minutes>(std::chrono::system_clock::now());
}

namespace {

std::chrono::minutes system_offset(kitchen::Instant instant) {
    const auto seconds = static_cast<std::time_t>(
        std::chrono::duration_cast<std::chrono::seconds>(instant.time_since_epoch()).count());
    std::tm local{};
    localtime_r(&seconds, &local);
    return std::chrono::minutes{local.tm_gmtoff / 60};
}

/// The first minute of (from, to] that has the offset of `to`. \pre `from` has another
kitchen::Instant change_between(kitchen::Instant from, kitchen::Instant to) {
    const auto after = system_offset(to);
    while (to - from > std::chrono::minutes{1}) {
        const auto middle = from + (to - from) / 2;
        (system_offset(middle) == after ? to : from) = middle;
    }
    return to;
}

} // namespace

kitchen::LocalClock system_clock(kitchen::Instant from, kitchen::Instant to) {
    constexpr std::chrono::hours step{12}; // no zone changes its clock twice within a day
    tzset();
    kitchen::LocalClock clock{system_offset(from), {}};
    auto offset = clock.offset;
    for (auto at = from; at < to; at += step) {
        const auto next = system_offset(at + step);
        if (next != offset) {
            clock.changes.push_back({change_between(at, at + step), next});
            offset = next;
        }
    }
    return clock;
}

} // namespace thawslip::app
