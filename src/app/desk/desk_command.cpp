#include "app/desk/browser.h"
#include "app/desk/day_folder.h"
#include "app/desk/desk_options.h"
#include "app/desk/door.h"
#include "app/desk/house.h"
#include "app/desk/house_place.h"
#include "app/desk/machine.h"
#include "app/desk/once_code.h"
#include "app/desk/random_text.h"
#include "app/desk/run_file.h"
#include "app/desk/waiting.h"
#include "app/desk/watching.h"
#include "base/letters.h"
#include "desk/desk.h"
#include "http/server.h"

#include <algorithm>
#include <csignal>
#include <fmt/format.h>
#include <ostream>
#include <sys/wait.h>
#include <unistd.h>

namespace thawslip::app {
namespace {

/// As encodeURIComponent has it: all but what is unreserved (RFC 3986, 2.3) by its bytes.
std::string encoded(const std::string& text) {
    std::string link;
    for (const char c : text) {
        const bool stays = is_letter_or_digit(c) || c == '-' || c == '_' || c == '.' || c == '~';
        link += stays ? std::string{c} : fmt::format("%{:02X}", static_cast<unsigned char>(c));
    }
    return link;
}

/// \param what "key" or "once"
std::string link_to(const RunningDesk& desk, const char* what, const std::string& value,
                    const DeskPlace& place) {
    return fmt::format("http://127.0.0.1:{}/#{}={}{}", desk.port, what, value,
                       place.open.empty() ? "" : "&open=" + encoded(place.open));
}

/// Says where the page is, and opens it. \returns the process that opens it; -1 where none does
pid_t show_page(const RunningDesk& desk, const DeskPlace& place, std::string_view words,
                const DeskOptions& options, Console console) {
    console.out << fmt::format("The desk of {} {}:\n  {}\n", place.folder, words,
                               link_to(desk, "key", desk.key, place));
    console.out.flush();
    if (!options.opens_browser) {
        return -1;
    }
    const auto code = make_code(codes_of(place.folder));
    const auto opener = has_screen() ? open_in_browser(link_to(desk, "once", code, place)) : -1;
    if (opener < 0) {
        console.err << "note: no browser could be opened from here; open that link in one on this "
                       "computer\n";
    }
    return opener;
}

/// Once the process that opens the page has ended: says so where it could not, and is -1.
void look_after(pid_t& opener, Console console) {
    int status = 0;
    if (opener < 0 || ::waitpid(opener, &status, WNOHANG) == 0) {
        return;
    }
    opener = -1;
    if (!WIFEXITED(status) || WEXITSTATUS(status) != 0) {
        console.err << "note: the browser did not open; open the link above in one on this "
                       "computer\n";
    }
}

std::unique_ptr<http::Server> started(int port, const Door& door) {
    auto server = http::Server::start(
        {"127.0.0.1", port}, door.guard(),
        [&door](const http::Request& request) { return door.answer(request); }, desk::body_limit);
    if (!server) {
        throw SystemFailure{server.fault()};
    }
    return std::move(server).value();
}

std::string time_text(std::chrono::duration<double, std::ratio<60>> idle) {
    constexpr double hour = 60.0;
    return idle.count() < 2 * hour ? fmt::format("{:.4g} minutes", idle.count())
                                   : fmt::format("{:.4g} hours", idle.count() / hour);
}

/// What is said once, where it is asked for: what is sent over the air.
void say_house(const desk::Phones& phones, Console console) {
    console.out << fmt::format("Phones of the house may ask at {}; the page lets each in by a code "
                               "and a name.\n",
                               phones.origin());
    console.out << (phones.fingerprint().empty()
                        ? "Who is in the same network could listen to what they ask, and to their "
                          "keys.\n"
                        : "Their browsers warn of a certificate that they do not know; its SHA-256 "
                          "is\n  " +
                              phones.fingerprint() + "\n");
}

void serve(RunFile& run, const DeskPlace& place, const std::optional<http::Place>& house_at,
           const DeskOptions& options, const Waiting& waiting, Console console) {
    RunningDesk self{::getpid(), 0, random_text()};
    auto machine = machine_for(place, options.settings, options.settings_file);
    auto changes = machine.changes;
    std::string pem;
    if (house_at) {
        pem = options.encrypts ? house_certificate(*house_at, place.folder) : "";
        machine.phones = phones_of_house(*house_at, place.folder, pem);
    }
    auto phones = machine.phones;
    desk::Desk desk{std::move(machine)};
    const Door door{desk, self.key, codes_of(place.folder)};
    const auto server = started(options.port, door);
    const auto house = house_at ? std::make_unique<House>(*house_at, pem, desk, *phones)
                                : std::unique_ptr<House>{};
    const Watching watching{options.settings, *changes};
    self.port = server->port();
    run.say(self);
    auto opener = show_page(self, place, "is open", options, console);
    if (house_at) {
        say_house(*phones, console);
    }
    console.out << fmt::format(
        "It ends with Ctrl+C, with this terminal, or when nobody has used it "
        "for {}.\n",
        time_text(options.idle));
    console.out.flush();
    const auto end = waiting.wait(
        options.idle,
        [&] {
            return house ? std::max(server->last_request(), house->last_request())
                         : server->last_request();
        },
        [&] { look_after(opener, console); });
    if (end == End::Idle) {
        console.out << fmt::format("The desk has ended: nobody has used it for {}.\n",
                                   time_text(options.idle));
    }
}

} // namespace

ExitStatus desk(const DeskOptions& options, Console console) {
    const Waiting waiting;
    std::signal(SIGPIPE, SIG_IGN); // a page that is shut in the middle of an answer
    const auto found = desk_place(options.place);
    if (!found) {
        console.err << "error: " << found.fault() << "\n";
        return ExitStatus::Refused;
    }
    const auto& place = found.value();
    std::optional<http::Place> house_at;
    if (!options.house.empty()) {
        const auto read = house_place(options.house, own_addresses());
        if (!read) {
            console.err << "error: " << read.fault() << "\n";
            return ExitStatus::Refused;
        }
        house_at = read.value();
    }
    std::optional<RunningDesk> other;
    const auto run = RunFile::take(place.folder, other);
    if (!run) {
        show_page(*other, place, "is open already", options, console);
        if (house_at) {
            console.err
                << "note: whether phones are let in is said at its start: end it, and start it "
                   "again with --kitchen\n";
        }
        return ExitStatus::Done;
    }
    forget_codes(codes_of(place.folder));
    serve(*run, place, house_at, options, waiting, console);
    forget_codes(codes_of(place.folder));
    return ExitStatus::Done;
}

} // namespace thawslip::app
