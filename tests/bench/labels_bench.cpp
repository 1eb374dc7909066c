// How long, how large: the whole program, from a day's file to a PDF on disk, for 10 to 10 000
// labels; and beside it a reference program that draws the same sheets, called with the number of
// labels and the file to write. Medians of several runs; nothing here is a test.
//
// usage: labels_bench THAWSLIP [MOST [REFERENCE]]

#include "days.h"

#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <sys/resource.h>
#include <sys/wait.h>

namespace {

using namespace thawslip::bench;

struct Run {
    double seconds = 0.0;
    long kilobytes = 0; ///< most memory that was resident
};

Run run(const std::vector<std::string>& words) {
    std::vector<char*> arguments;
    for (const auto& word : words) {
        arguments.push_back(const_cast<char*>(word.c_str()));
    }
    arguments.push_back(nullptr);
    const auto start = std::chrono::steady_clock::now();
    std::fflush(stdout); // or the child would say it again
    const pid_t child = fork();
    if (child == 0) {
        if (std::freopen("/dev/null", "w", stdout) != nullptr &&
            std::freopen("/dev/null", "w", stderr) != nullptr) {
            execv(arguments[0], arguments.data());
        }
        _exit(127);
    }
    int state = 0;
    rusage usage{};
    wait4(child, &state, 0, &usage);
    constexpr int refused = 1; // an answer too: its words do not fit
    if (!WIFEXITED(state) || WEXITSTATUS(state) > refused) {
        fmt::print(stderr, "{} failed\n", words.front());
        std::exit(1);
    }
    const std::chrono::duration<double> time = std::chrono::steady_clock::now() - start;
    return {time.count(), usage.ru_maxrss};
}

Run median(const std::vector<std::string>& words, int labels) {
    std::vector<Run> runs;
    for (int i = labels <= 1000 ? 9 : 3; i > 0; --i) {
        runs.push_back(run(words));
    }
    std::ranges::sort(runs, {}, &Run::seconds);
    return runs[runs.size() / 2];
}

void tell(const char* who, int labels, const Run& run, const std::string& pdf) {
    const auto bytes = static_cast<double>(std::filesystem::file_size(pdf));
    fmt::print("{:<10} {:>8} {:>10.1f} {:>12.1f} {:>14.1f} {:>12}\n", who, labels,
               run.seconds * 1e3, run.seconds * 1e6 / labels, bytes / labels, run.kilobytes);
}

/// The largest day that is legal, which no label of the usual stock takes: 20 000 bags, answered.
void tell_largest_day(const std::string& thawslip, const Folder& folder) {
    for (const char* what : {"check", "labels"}) {
        std::vector<std::string> words{thawslip, what, write_largest_day(folder)};
        if (words[1] == "labels") {
            words.insert(words.end(), {"--no-archive", "-o", folder / "largest.pdf"});
        }
        const auto answered = run(words);
        fmt::print("{:<10} {:>8} {:>10.1f} {:>12} {:>14} {:>12}\n", what, "largest",
                   answered.seconds * 1e3, "", "", answered.kilobytes);
    }
}

} // namespace

int main(int argc, char** argv) {
    if (argc < 2) {
        fmt::print(stderr, "usage: labels_bench THAWSLIP [MOST [REFERENCE]]\n");
        return 2;
    }
    const int most = argc > 2 ? std::atoi(argv[2]) : 10'000;
    const std::string reference = argc > 3 ? argv[3] : "";
    const Folder folder;
    const auto pdf = folder / "labels.pdf";
    fmt::print("{:<10} {:>8} {:>10} {:>12} {:>14} {:>12}\n", "", "labels", "ms", "us a label",
               "bytes a label", "memory kB");
    for (int labels = 10; labels <= most; labels *= 10) {
        std::vector<std::string> words{argv[1], "labels", "--no-archive"};
        for (const auto& file : write_days(folder, labels)) {
            words.push_back(file);
        }
        words.insert(words.end(), {"-o", pdf});
        const auto own = median(words, labels);
        tell("thawslip", labels, own, pdf);
        if (!reference.empty()) {
            const auto other = median({reference, std::to_string(labels), pdf}, labels);
            tell("reference", labels, other, pdf);
            fmt::print("{:<10} {:>8} {:>10.2f} times as long\n", "", "",
                       other.seconds / own.seconds);
        }
    }
    tell_largest_day(argv[1], folder);
}
