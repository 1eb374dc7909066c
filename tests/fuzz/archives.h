#pragma once

#include "archive/archive.h"
#include "base/shown.h"
#include "fuzz/target.h"
#include "kitchen/bag_id.h"

#include <filesystem>
#include <fstream>
#include <optional>
#include <string>
#include <unistd.h>

namespace thawslip::fuzz {

/// A folder in memory that is gone when the program is.
class Memory {
public:
    Memory() {
        std::error_code error;
        const auto shared = std::filesystem::is_directory("/dev/shm", error)
                                ? std::filesystem::path{"/dev/shm"}
                                : std::filesystem::temp_directory_path();
        folder_ = shared / ("thawslip-fuzz-" + std::to_string(::getpid()));
        std::filesystem::create_directories(folder_);
    }
    Memory(const Memory&) = delete;
    Memory& operator=(const Memory&) = delete;
    ~Memory() {
        std::error_code error;
        std::filesystem::remove_all(folder_, error);
    }
    std::string file(const std::string& name) const { return (folder_ / name).string(); }

    /// Takes a file and what SQLite keeps beside it, or a folder, away.
    void remove(const std::string& name) const {
        std::error_code error;
        for (const char* companion : {"", "-wal", "-shm", "-journal"}) {
            std::filesystem::remove_all(file(name) + companion, error);
        }
    }

private:
    std::filesystem::path folder_;
};

inline void write(const std::string& file, std::string_view bytes) {
    std::ofstream{file, std::ios::binary} << bytes;
}

/// An archive of one day, of two bags, that was printed once.
inline void make_archive(const std::string& path) {
    using namespace std::chrono;
    archive::PackageRecord package;
    package.dish = "Quince and barley pottage";
    package.words = "quince and barley pottage";
    package.made = year{2026} / 10 / 17;
    package.keep_until = year{2027} / 1 / 17;
    package.servings = 4;
    package.weight = kitchen::Mass{1500.0};
    package.food = archive::FoodRecord{{"celery"}, {"soup or stew"}};
    package.thaw = archive::ThawRecord{kitchen::ThawMethod::Refrigerator, hours{24}};
    for (int number = 1; number <= 2; ++number) {
        package.bags.push_back(kitchen::bag_id({package.dish, package.made, number}));
    }
    archive::PrintRecord print;
    print.at = "2026-10-17T14:05:00";
    print.setup = {"labels", "a4-full", "", "paper = \"a4\"\n", "look\n", {}};
    archive::DayRecord day;
    day.made = package.made;
    day.kitchen = "Orchard house";
    day.file = "/orchard/day.toml";
    day.description = "[day]\nmade = 2026-10-17\n";
    day.packages = {package};
    print.days = {day};
    archive::Archive::open(path, archive::Mode::Write).value().record(print);
}

/// What came from outside goes into an archive of its own, which is sound before and after.
inline void hold_merged(const Memory& memory, const archive::Contents& contents) {
    memory.remove("own.db");
    auto own = archive::Archive::open(memory.file("own.db"), archive::Mode::Write).value();
    try {
        own.merge(contents);
    } catch (const archive::ArchiveFailure& failure) {
        hold(failure.what()[0] != '\0', "a refusal says why");
    }
    hold(own.check().empty(), "what was let in leaves an archive sound");
    for (const auto& bag : own.bags(archive::Which::All)) {
        hold(is_shown_line(bag.dish) && is_shown_line(bag.id) && is_shown_line(bag.changed),
             "what was let in may be shown");
        hold(bag.servings > 0 && bag.of > 0 && bag.made.ok() && bag.keep_until.ok(),
             "what was let in can be");
    }
}

} // namespace thawslip::fuzz
