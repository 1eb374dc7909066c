// How long a cook waits for the page: from the start of the program to the first page, from an edit
// to the answer with its labels, a frame of a camera; and what the program takes while nobody asks.
// All in one run, beside what the same machine takes to print the same day by the command. Nothing
// here is a test.
//
// usage: desk_bench [LABELS]

#include "conformance/desk/running_desk.h"
#include "days.h"

#include <algorithm>
#include <chrono>
#include <fmt/format.h>
#include <fstream>
#include <functional>

namespace {

using namespace thawslip::test_support;
using thawslip::json::Json;
using Clock = std::chrono::steady_clock;

double milliseconds(const std::function<void()>& work) {
    const auto start = Clock::now();
    work();
    return std::chrono::duration<double, std::milli>(Clock::now() - start).count();
}

struct Spread {
    double middle = 0.0;
    double late = 0.0; ///< 95 of 100 are faster
};

Spread spread(int times, const std::function<void(int)>& work) {
    std::vector<double> all;
    for (int i = 0; i < times; ++i) {
        all.push_back(milliseconds([&] { work(i); }));
    }
    std::ranges::sort(all);
    return {all[all.size() / 2], all[all.size() * 95 / 100]};
}

/// What a process has for itself, in MiB (proc(5), smaps_rollup).
double memory_of(pid_t process, const std::string& key) {
    std::ifstream file{fmt::format("/proc/{}/smaps_rollup", process)};
    for (std::string line; std::getline(file, line);) {
        if (line.starts_with(key)) {
            return std::stod(line.substr(key.size())) / 1024.0;
        }
    }
    return 0.0;
}

void show(const char* what, const Spread& taken, double command) {
    fmt::print("{:<44} {:>9.1f} {:>9.1f} {:>10.3f}\n", what, taken.middle, taken.late,
               taken.middle / command);
}

/// A frame of a camera that sees no code.
std::string empty_frame(int width, int height) {
    std::string frame;
    for (int y = 0; y < height; ++y) {
        for (int x = 0; x < width; ++x) {
            frame += static_cast<char>((x * 3 + y * 5) % 200);
        }
    }
    return frame;
}

} // namespace

int main(int argc, char** argv) {
    const int labels = argc > 1 ? std::stoi(argv[1]) : 14;
    const User user;
    write_file(user.day("bench.toml"), thawslip::bench::day_of(labels, 0));
    const auto day = shell_word(user.day("bench.toml"));
    const auto command = spread(9, [&](int) {
        user.thawslip("labels " + day + " --no-archive -o " + shell_word(user.home / "x.pdf"));
    });
    fmt::print("{:<44} {:>9} {:>9} {:>10}\n", "", "p50 ms", "p95 ms", "command=1");
    show("the command `labels`, start to PDF on disk", command, command.middle);
    show("start to the first page",
         spread(9,
                [&](int) {
                    const RunningDesk desk{user};
                    desk.get("/");
                }),
         command.middle);

    const RunningDesk desk{user};
    const auto idle_first = memory_of(desk.process(), "Pss:");
    show("state, asked again", spread(20, [&](int) { desk.get("/api/state"); }), command.middle);
    const int number = desk.number_of("bench.toml");
    const auto text =
        json_of(desk.get("/api/day/" + std::to_string(number))).at("text").get<std::string>();
    const auto check = [&](int edit) {
        return json_of(desk.post("/api/check", {{"number", number},
                                                {"text", text + fmt::format("\n# {}\n", edit)},
                                                {"what", "labels"},
                                                {"look", Json::object()}}));
    };
    check(-1); // what comes with the program is read once
    show("an edit, checked and laid out", spread(60, [&](int edit) { check(edit); }),
         command.middle);
    const auto prints = check(0).at("prints");
    if (!prints.empty()) {
        const auto path = "/api/print/" + prints.at(0).at("hash").get<std::string>() + ".svg";
        show("one label drawn", spread(60, [&](int) { desk.get(path); }), command.middle);
    }
    const auto frame = empty_frame(1280, 720);
    show("a frame of 1280 x 720 without a code",
         spread(40,
                [&](int) { desk.post_bytes("/api/read?as=frame&width=1280&height=720", frame); }),
         command.middle);
    fmt::print("\nmemory, proportional: {:.1f} MiB before the first question, {:.1f} MiB after "
               "(private {:.1f} MiB)\n",
               idle_first, memory_of(desk.process(), "Pss:"),
               memory_of(desk.process(), "Private_Dirty:"));
}
