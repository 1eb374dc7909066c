// How long, how large: the whole program, from a day's file to a PDF on disk, for 10 to 100 000
// labels. Times are medians of several runs on an otherwise idle machine; nothing here is a test.

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fmt/format.h>
#include <fstream>
#include <string>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>
#include <vector>

namespace {

namespace fs = std::filesystem;

/// Four dishes with as many bags as make up the count.
std::string day_of(int labels) {
    std::string day = "[day]\nmade = 2026-10-17\nkitchen = \"Orchard house\"\n";
    int left = labels;
    for (int dish = 0; left > 0; ++dish) {
        const int bags = std::min({left, 200, std::max(labels / 4, 1)});
        left -= bags;
        day += fmt::format("\n[[package]]\ndish = \"Squash and red lentil stew {}\"\n"
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
    return day;
}

struct Run {
    double seconds = 0.0;
    double processor = 0.0; ///< seconds of it, on all cores together
    long kilobytes = 0;     ///< most memory that was resident
};

Run run(const std::vector<std::string>& words) {
    std::vector<char*> arguments;
    for (const auto& word : words) {
        arguments.push_back(const_cast<char*>(word.c_str()));
    }
    arguments.push_back(nullptr);
    std::fflush(stdout); // or the child would write it too
    const auto start = std::chrono::steady_clock::now();
    const pid_t child = fork();
    if (child == 0) {
        std::freopen("/dev/null", "w", stdout);
        execv(arguments[0], arguments.data());
        _exit(127);
    }
    int state = 0;
    rusage usage{};
    wait4(child, &state, 0, &usage);
    if (!WIFEXITED(state) || WEXITSTATUS(state) != 0) {
        fmt::print(stderr, "the program failed\n");
        std::exit(1);
    }
    const std::chrono::duration<double> time = std::chrono::steady_clock::now() - start;
    const auto seconds = [](const timeval& t) {
        return static_cast<double>(t.tv_sec) + static_cast<double>(t.tv_usec) * 1e-6;
    };
    return {time.count(), seconds(usage.ru_utime) + seconds(usage.ru_stime), usage.ru_maxrss};
}

/// The day files of a run: at most 100 dishes stand in one.
std::vector<std::string> write_days(const fs::path& folder, int labels) {
    constexpr int most_in_a_file = 20'000;
    std::vector<std::string> files;
    for (int written = 0; written < labels; written += most_in_a_file) {
        auto day = day_of(std::min(labels - written, most_in_a_file));
        const auto date = fmt::format("2026-10-{:02}", 1 + files.size());
        day.replace(day.find("2026-10-17"), 10, date);
        const auto file = folder / fmt::format("day-{}-{}.toml", labels, files.size());
        std::ofstream{file} << day;
        files.push_back(file.string());
    }
    return files;
}

} // namespace

int main(int argc, char** argv) {
    if (argc < 2) {
        fmt::print(stderr, "usage: labels_bench THAWSLIP [MOST]\n");
        return 2;
    }
    const int most = argc > 2 ? std::atoi(argv[2]) : 10'000;
    const fs::path folder = fs::temp_directory_path() / fmt::format("thawslip-bench-{}", getpid());
    fs::create_directory(folder);
    fmt::print("{:>8} {:>10} {:>12} {:>12} {:>14} {:>12}\n", "labels", "ms", "processor ms",
               "us a label", "bytes a label", "memory kB");
    for (int labels = 10; labels <= most; labels *= 10) {
        const auto pdf = (folder / "labels.pdf").string();
        std::vector<std::string> words{argv[1], "labels"};
        for (const auto& file : write_days(folder, labels)) {
            words.push_back(file);
        }
        words.insert(words.end(), {"-o", pdf});
        std::vector<Run> runs;
        for (int i = labels <= 1000 ? 9 : 3; i > 0; --i) {
            runs.push_back(run(words));
        }
        std::ranges::sort(runs, {}, &Run::seconds);
        const auto& median = runs[runs.size() / 2];
        const auto bytes = static_cast<double>(fs::file_size(pdf));
        fmt::print("{:>8} {:>10.1f} {:>12.1f} {:>12.1f} {:>14.1f} {:>12}\n", labels,
                   median.seconds * 1e3, median.processor * 1e3, median.processor * 1e6 / labels,
                   bytes / labels, median.kilobytes);
    }
    fs::remove_all(folder);
}
