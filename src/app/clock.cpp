#include "app/clock.h"

#include "base/number_in.h"

#include <cstdlib>
#include <ctime>
#include <fmt/format.h>

namespace thawslip::app {

namespace {

std::optional<std::time_t> fixed_now() {
    const char* fixed = std::getenv("SOURCE_DATE_EPOCH");
    return fixed != nullptr ? number_in<std::time_t>(fixed) : std::nullopt;
}

std::tm local_now() {
    std::tm local{};
    if (const auto fixed = fixed_now()) {
        gmtime_r(&*fixed, &local);
        return local;
    }
    const std::time_t now = std::time(nullptr);
    localtime_r(&now, &local);
    return local;
}

} // namespace

std::optional<std::int64_t> fixed_clock() {
    const auto fixed = fixed_now();
    return fixed ? std::optional{std::int64_t{*fixed}} : std::nullopt;
}

std::string now_text() {
    const auto now = local_now();
    return fmt::format("{:04}-{:02}-{:02}T{:02}:{:02}:{:02}", now.tm_year + 1900, now.tm_mon + 1,
                       now.tm_mday, now.tm_hour, now.tm_min, now.tm_sec);
}

kitchen::Date today() {
    const auto local = local_now();
    return std::chrono::year{local.tm_year + 1900} /
           std::chrono::month{static_cast<unsigned>(local.tm_mon + 1)} /
           std::chrono::day{static_cast<unsigned>(local.tm_mday)};
}

kitchen::Instant now() {
    if (const auto fixed = fixed_now()) {
        return std::chrono::floor<std::chrono::minutes>(
            std::chrono::system_clock::from_time_t(*fixed));
    }
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
