#pragma once

#include <algorithm>
#include <filesystem>
#include <fmt/format.h>
#include <fstream>
#include <string>
#include <unistd.h>
#include <vector>

namespace thawslip::bench {

/// A folder that is gone when the benchmark is.
class Folder {
public:
    Folder()
        : path_{std::filesystem::temp_directory_path() /
                fmt::format("thawslip-bench-{}", ::getpid())} {
        std::filesystem::create_directory(path_);
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    ~Folder() { std::filesystem::remove_all(path_); }

    std::string operator/(const std::string& name) const { return (path_ / name).string(); }

private:
    std::filesystem::path path_;
};

/// A day of four dishes, or of more with 200 bags each, that makes `labels` labels in all.
inline std::string day_of(int labels, int day) {
    auto text = fmt::format("[day]\nmade = 2026-10-{:02}\nkitchen = \"Orchard house\"\n", day + 1);
    int left = labels;
    for (int dish = 0; left > 0; ++dish) {
        const int bags = std::min({left, 200, std::max(labels / 4, 1)});
        left -= bags;
        text += fmt::format("\n[[package]]\ndish = \"Squash and red lentil stew {}\"\n"
                            "servings = 6\nbags = {}\nfood = \"soup or stew\"\n"
                            "contains = [\"celery\"]\n"
                            "[[package.finish]]\nadd = \"1 l vegetable stock\"\n"
                            "when = \"at the start\"\n"
                            "[[package.finish]]\nadd = \"200 g baby spinach\"\n"
                            "when = \"last 10 min\"\nbag = \"small bag taped to this one\"\n"
                            "[package.cook]\nin = \"slow cooker\"\nsetting = \"low\"\n"
                            "time = \"7-9 h\"\nuntil = \"74 °C\"\n",
                            dish, bags);
    }
    return text;
}

/// Writes the days that make `labels` labels: a file holds 20 000 at most, 100 dishes.
inline std::vector<std::string> write_days(const Folder& folder, int labels) {
    constexpr int most_in_a_file = 20'000;
    std::vector<std::string> files;
    for (int written = 0; written < labels; written += most_in_a_file) {
        const int day = static_cast<int>(files.size());
        const auto file = folder / fmt::format("day-{}-{}.toml", labels, day);
        std::ofstream{file} << day_of(std::min(labels - written, most_in_a_file), day);
        files.push_back(file);
    }
    return files;
}

/// Writes the largest day that is legal: 100 dishes of 200 bags, each with 40 finishing
/// ingredients.
inline std::string write_largest_day(const Folder& folder) {
    const auto file = folder / "largest.toml";
    std::ofstream out{file};
    out << "[day]\nmade = 2026-10-17\n";
    for (int dish = 0; dish < 100; ++dish) {
        out << fmt::format("[[package]]\ndish = \"Squash stew {}\"\nservings = 6\nbags = 200\n"
                           "food = \"soup or stew\"\n",
                           dish);
        for (int finish = 0; finish < 40; ++finish) {
            out << fmt::format("[[package.finish]]\nadd = \"{} g leek\"\nwhen = \"at the start\"\n",
                               finish + 1);
        }
    }
    return file;
}

} // namespace thawslip::bench
