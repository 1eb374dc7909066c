#include "server.h"

#include <array>
#include <chrono>
#include <csignal>
#include <cups/cups.h>
#include <fcntl.h>
#include <filesystem>
#include <fmt/format.h>
#include <spawn.h>
#include <stdexcept>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

extern char** environ;

namespace thawslip::test_support {
namespace {

namespace fs = std::filesystem;

// Keys of both files: cupsd.conf(5), cups-files.conf(5).
constexpr const char* settings = R"(LogLevel warn
Listen {0}/socket
Browsing No
WebInterface No
<Location />
  Order allow,deny
  Allow all
</Location>
<Policy default>
  JobPrivateAccess all
  JobPrivateValues none
  <Limit All>
    Order allow,deny
    Allow all
  </Limit>
</Policy>
)";

constexpr const char* places = R"(ServerRoot {0}/root
ServerBin {0}/bin
StateDir {0}/state
CacheDir {0}/cache
RequestRoot {0}/requests
TempDir {0}/tmp
ErrorLog {0}/log
AccessLog {0}/access
PageLog {0}/pages
)";

/// {0}: what kind of a printer the kitchen's is
constexpr const char* all_queues = R"(<{0} kitchen>
DeviceURI keep:/here
State Idle
Accepting Yes
</{0}>
<Printer office>
DeviceURI keep:/here
State Idle
Accepting Yes
</Printer>
<Printer broken>
DeviceURI keep:/here
State Idle
Accepting No
</Printer>
)";

/// Called by the server as backend(7) says: job, user, title, copies, options, file.
constexpr const char* backend = R"(#!/bin/sh
[ $# -eq 0 ] && exit 0
kept={0}/kept/$1
cat "${{6:--}}" >"$kept.pdf"
printf %s "$3" >"$kept.title"
printf %s "$4" >"$kept.copies"
printf %s "$5" >"$kept.options"
)";

void set_up(const std::string& folder, Queues queues, const std::string& more) {
    for (const char* name :
         {"root", "bin/backend", "bin/daemon", "state", "cache", "requests", "tmp", "kept"}) {
        fs::create_directories(folder + "/" + name);
    }
    write_file(folder + "/root/cupsd.conf", fmt::format(settings, folder) + more);
    write_file(folder + "/root/cups-files.conf", fmt::format(places, folder));
    if (queues != Queues::None) {
        const auto* kitchen = queues == Queues::KitchenIsUsual ? "DefaultPrinter" : "Printer";
        write_file(folder + "/root/printers.conf", fmt::format(all_queues, kitchen));
    }
    const auto program = folder + "/bin/backend/keep";
    write_file(program, fmt::format(backend, folder));
    fs::permissions(program, fs::perms::owner_all); // so it runs as whoever runs the server
    fs::create_symlink(CUPS_EXEC, folder + "/bin/daemon/cups-exec"); // what starts back-ends
}

pid_t start(const std::string& folder) {
    const std::string configuration = folder + "/root/cupsd.conf";
    const std::string files = folder + "/root/cups-files.conf";
    std::string words[] = {CUPSD, "-f", "-c", configuration, "-s", files};
    std::array<char*, 7> argv{};
    for (std::size_t i = 0; i < std::size(words); ++i) {
        argv[i] = words[i].data();
    }
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    const auto said = folder + "/said";
    posix_spawn_file_actions_addopen(&actions, STDOUT_FILENO, said.c_str(),
                                     O_WRONLY | O_CREAT | O_TRUNC, 0600);
    posix_spawn_file_actions_adddup2(&actions, STDOUT_FILENO, STDERR_FILENO);
    pid_t process = -1;
    const int failed = ::posix_spawn(&process, CUPSD, &actions, nullptr, argv.data(), environ);
    posix_spawn_file_actions_destroy(&actions);
    return failed == 0 ? process : -1;
}

http_t* connect(const std::string& address) {
    return httpConnect2(address.c_str(), 0, nullptr, AF_UNSPEC, HTTP_ENCRYPTION_NEVER, 1, 1000,
                        nullptr);
}

template <class Condition>
bool wait_for(const Condition& condition) {
    using namespace std::chrono_literals;
    for (int tries = 0; tries < 400; ++tries) {
        if (condition()) {
            return true;
        }
        std::this_thread::sleep_for(50ms);
    }
    return false;
}

} // namespace

Server::Server(Queues queues, const std::string& more) {
    set_up(folder_.path().string(), queues, more);
    process_ = start(folder_.path().string());
    answers_ = process_ > 0 && wait_for([this] {
                   if (::waitpid(process_, nullptr, WNOHANG) != 0) {
                       process_ = -1; // it gave up: see log()
                       return true;
                   }
                   auto* server = connect(address());
                   httpClose(server);
                   return server != nullptr;
               }) &&
               process_ > 0;
}

Server::~Server() {
    if (process_ > 0) {
        ::kill(process_, SIGTERM);
        ::waitpid(process_, nullptr, 0);
    }
}

std::string Server::log() const {
    return read_file(folder_ / "said") + read_file(folder_ / "log");
}

Server::Arrived Server::arrived(int job) const {
    const auto kept = folder_ / ("kept/" + std::to_string(job));
    // The options are written last.
    if (!wait_for([&kept] { return fs::exists(kept + ".options"); })) {
        throw std::runtime_error{"the job never arrived: " + log()};
    }
    return {read_file(kept + ".pdf"), read_file(kept + ".options"), read_file(kept + ".title"),
            read_file(kept + ".copies")};
}

std::map<std::string, std::string> Server::attributes(int job) const {
    auto* server = connect(address());
    auto* request = ippNewRequest(IPP_OP_GET_JOB_ATTRIBUTES);
    ippAddString(request, IPP_TAG_OPERATION, IPP_TAG_URI, "printer-uri", nullptr,
                 "ipp://localhost/printers/kitchen");
    ippAddInteger(request, IPP_TAG_OPERATION, IPP_TAG_INTEGER, "job-id", job);
    auto* response = cupsDoRequest(server, request, "/");
    std::map<std::string, std::string> told;
    for (auto* one = ippFirstAttribute(response); one != nullptr;
         one = ippNextAttribute(response)) {
        std::array<char, 1024> value{};
        ippAttributeString(one, value.data(), value.size());
        if (ippGetName(one) != nullptr) {
            told.emplace(ippGetName(one), value.data());
        }
    }
    ippDelete(response);
    httpClose(server);
    return told;
}

} // namespace thawslip::test_support
