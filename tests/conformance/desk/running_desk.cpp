#include "running_desk.h"

#include <array>
#include <chrono>
#include <csignal>
#include <fcntl.h>
#include <filesystem>
#include <fmt/format.h>
#include <regex>
#include <spawn.h>
#include <stdexcept>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

namespace thawslip::test_support {
namespace {

/// What the program is started with, and nothing else of this computer's.
std::vector<std::string> environment_of(const User& user) {
    std::map<std::string, std::string> all{{"HOME", user.home.path().string()},
                                           {"XDG_RUNTIME_DIR", user.home / "run"},
                                           {"TMPDIR", user.home / "tmp"},
                                           {"PATH", "/usr/bin:/bin"},
                                           {"LC_ALL", "C.UTF-8"},
                                           {"TZ", "UTC"},
                                           {"SOURCE_DATE_EPOCH", "1792238400"}, // 2026-10-17
                                           {"CUPS_SERVER", user.home / "no-server"}};
    for (const auto& [name, value] : user.environment) {
        all[name] = value;
    }
    std::vector<std::string> lines;
    for (const auto& [name, value] : all) {
        lines.push_back(name + "=" + value);
    }
    return lines;
}

std::vector<char*> pointers(std::vector<std::string>& texts) {
    std::vector<char*> all;
    for (auto& text : texts) {
        all.push_back(text.data());
    }
    all.push_back(nullptr);
    return all;
}

/// Signals that ask a program to end, which whoever runs the tests may ignore: nohup(1), or a
/// script that has them in its background.
sigset_t ends_of_a_program() {
    sigset_t ends;
    ::sigemptyset(&ends);
    for (const int number : {SIGHUP, SIGINT, SIGTERM}) {
        ::sigaddset(&ends, number);
    }
    return ends;
}

pid_t start(const User& user, std::vector<std::string> words, const std::string& said,
            int ignored) {
    auto environment = environment_of(user);
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_addopen(&actions, STDIN_FILENO, "/dev/null", O_RDONLY, 0);
    posix_spawn_file_actions_addopen(&actions, STDOUT_FILENO, said.c_str(),
                                     O_WRONLY | O_CREAT | O_TRUNC | O_APPEND, 0600);
    posix_spawn_file_actions_adddup2(&actions, STDOUT_FILENO, STDERR_FILENO);
    posix_spawnattr_t manner;
    posix_spawnattr_init(&manner);
    auto ends = ends_of_a_program();
    const auto before = ignored == 0 ? SIG_ERR : std::signal(ignored, SIG_IGN);
    if (ignored != 0) {
        ::sigdelset(&ends, ignored);
    }
    posix_spawnattr_setsigdefault(&manner, &ends);
    posix_spawnattr_setflags(&manner, POSIX_SPAWN_SETSIGDEF);
    pid_t process = -1;
    const int fault = ::posix_spawn(&process, THAWSLIP_PROGRAM, &actions, &manner,
                                    pointers(words).data(), pointers(environment).data());
    posix_spawnattr_destroy(&manner);
    posix_spawn_file_actions_destroy(&actions);
    if (ignored != 0) {
        std::signal(ignored, before);
    }
    if (fault != 0) {
        throw std::runtime_error{"the program cannot be started"};
    }
    return process;
}

constexpr std::chrono::milliseconds step{10};
constexpr int many_steps = 6000; // a minute: no timing is tested, only that it comes at all

} // namespace

User::User() {
    for (const auto* folder : {"days", "run", "tmp"}) {
        std::filesystem::create_directory(home / folder);
    }
}

Outcome User::thawslip(const std::string& words) const {
    std::string command = "env -i";
    for (const auto& line : environment_of(*this)) {
        command += " " + shell_word(line);
    }
    return run(command + " " + THAWSLIP_PROGRAM + " " + words);
}

RunningDesk::RunningDesk(const User& user, std::vector<std::string> words, int ignored) {
    if (words.empty()) {
        words = {user.days()};
    }
    words.insert(words.begin(), {"thawslip", "desk", "--no-open"});
    process_ = start(user, words, said_ / "said", ignored);
    static const std::regex link{R"(http://127\.0\.0\.1:(\d+)/#key=([0-9a-f]+))"};
    for (int i = 0; i < many_steps; ++i) {
        const auto text = said();
        if (std::smatch found; std::regex_search(text, found, link)) {
            port_ = std::stoi(found[1]);
            key_ = found[2];
            return;
        }
        int state = 0;
        if (::waitpid(process_, &state, WNOHANG) == process_) {
            process_ = -1;
            break;
        }
        std::this_thread::sleep_for(step);
    }
    throw std::runtime_error{"the desk does not open: " + said()};
}

RunningDesk::~RunningDesk() {
    if (process_ > 0) {
        ::kill(process_, SIGKILL);
        ::waitpid(process_, nullptr, 0);
    }
}

void RunningDesk::signal(int number) const {
    ::kill(process_, number);
}

int RunningDesk::end() {
    int state = 0;
    for (int i = 0; i < many_steps; ++i) {
        if (::waitpid(process_, &state, WNOHANG) == process_) {
            process_ = -1;
            return WIFEXITED(state) ? WEXITSTATUS(state) : 128 + WTERMSIG(state);
        }
        std::this_thread::sleep_for(step);
    }
    throw std::runtime_error{"the desk does not end: " + said()};
}

std::map<std::string, std::string> RunningDesk::headers(bool changes) const {
    std::map<std::string, std::string> all{
        {"Host", host()}, {"Thawslip-Key", key_}, {"Sec-Fetch-Site", "same-origin"}};
    if (changes) {
        all["Origin"] = "http://" + host();
        all["Content-Type"] = "application/json";
    }
    return all;
}

Reply RunningDesk::send(const std::string& method, const std::string& path,
                        const std::map<std::string, std::string>& headers,
                        const std::string& body) const {
    auto request = fmt::format("{} {} HTTP/1.1\r\n", method, path);
    for (const auto& [name, value] : headers) {
        request += fmt::format("{}: {}\r\n", name, value);
    }
    if (!body.empty() || method == "POST" || method == "PUT") {
        request += fmt::format("Content-Length: {}\r\n", body.size());
    }
    auto reply = ask(port_, request + "\r\n" + body);
    if (!reply) {
        throw std::runtime_error{"no answer to " + method + " " + path};
    }
    return *std::move(reply);
}

Reply RunningDesk::get(const std::string& path) const {
    return send("GET", path, headers(false));
}

Reply RunningDesk::post(const std::string& path, const json::Json& body) const {
    return send("POST", path, headers(true), body.dump());
}

Reply RunningDesk::put(const std::string& path, const json::Json& body,
                       const std::string& if_match) const {
    auto all = headers(true);
    if (!if_match.empty()) {
        all["If-Match"] = if_match;
    }
    return send("PUT", path, all, body.dump());
}

Reply RunningDesk::post_bytes(const std::string& path, const std::string& bytes) const {
    auto all = headers(true);
    all["Content-Type"] = "application/octet-stream";
    return send("POST", path, all, bytes);
}

int RunningDesk::number_of(const std::string& day) const {
    const auto state = json_of(get("/api/state"));
    for (const auto& one : state.at("days")) {
        if (one.at("name") == day) {
            return one.at("number").get<int>();
        }
    }
    return 0;
}

json::Json json_of(const Reply& reply) {
    return json::parsed(reply.body);
}

} // namespace thawslip::test_support
