#pragma once

#include "archive/archive.h"
#include "kitchen/bag_id.h"
#include "support/command.h"
#ifdef THAWSLIP_ON_SERVER
#include "support/postgres.h"
#include "support/skip.h"

#include <cstdlib>
#endif

#include <doctest/doctest.h>

namespace thawslip::test_support {

using namespace thawslip::archive;

#ifdef THAWSLIP_ON_SERVER
constexpr bool on_server = true;

inline PrivateServer& required_server() {
    if (test_server() == nullptr) {
        skip("this system has no PostgreSQL server");
        std::exit(0);
    }
    return *test_server();
}
#else
constexpr bool on_server = false;
#endif

/// Where an archive can be made. What stands in these files is built twice: for files, and, where
/// it is about no file, for a server (tests/unit/archive/on_server.cmake).
struct Scratch {
    ScratchFolder folder;
#ifdef THAWSLIP_ON_SERVER
    std::string path = required_server().new_kitchen();
#else
    std::string path = folder / "thawslip/archive.db";
#endif
};

inline kitchen::Date date(int year, unsigned month, unsigned day) {
    return {std::chrono::year{year}, std::chrono::month{month}, std::chrono::day{day}};
}

inline PackageRecord package(const std::string& dish, int bags,
                             kitchen::Date keep_until = date(2026, 12, 17)) {
    PackageRecord record{dish,
                         dish,
                         date(2026, 10, 17),
                         keep_until,
                         kitchen::DateBasis::SetByCook,
                         6,
                         {},
                         FoodRecord{{"celery"}, {"soup or stew"}},
                         ThawRecord{kitchen::ThawMethod::Refrigerator, std::chrono::hours{22}},
                         {}};
    for (int n = 1; n <= bags; ++n) {
        record.bags.push_back(kitchen::bag_id({dish, record.made, n}));
    }
    return record;
}

inline DayRecord day(const std::vector<PackageRecord>& packages,
                     const std::string& file = "/orchard/saturday.toml") {
    std::string description = "# day\n";
    for (const auto& p : packages) {
        description += p.dish + "\n";
    }
    return {date(2026, 10, 17), "Orchard house", file, description, packages};
}

inline PrintRecord print(const std::vector<DayRecord>& days,
                         const std::string& at = "2026-10-17T14:05:00") {
    return {at, {"labels", "letter-2x5-4x2in", "", "first_cell = 1\n", "face 1\n"}, days};
}

/// The same with the ids of its batches.
inline DayRecord with_ids(DayRecord day, const std::vector<kitchen::Batch>& batches) {
    for (std::size_t i = 0; i < batches.size(); ++i) {
        auto& package = day.packages[i];
        package.batch = batches[i];
        for (std::size_t n = 0; n < package.bags.size(); ++n) {
            package.bags[n] = kitchen::bag_id(
                {package.dish, package.made, static_cast<int>(n) + 1, package.batch});
        }
    }
    return day;
}

/// Opened for writing; the test fails where that does not work.
inline Archive opened(const std::string& path, Mode mode = Mode::Write) {
    auto result = Archive::open(path, mode, std::chrono::seconds{20});
    if (!result) {
        FAIL(result.fault().message);
    }
    return std::move(result).value();
}

} // namespace thawslip::test_support
