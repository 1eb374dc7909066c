#include "app/server_archive.h"

#include "app/archive_commands.h"
#include "app/archive_place.h"
#include "app/bag_text.h"
#include "app/clock.h"
#include "app/files/user_folders.h"
#include "app/station.h"
#include "archive/address.h"
#include "archive/exchange.h"
#include "base/counted.h"
#include "kitchen/bag_id.h"

#include <filesystem>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <ostream>

namespace thawslip::app {
namespace {

using archive::Archive;
using archive::ArchiveFault;
namespace fs = std::filesystem;

constexpr std::chrono::seconds short_budget{3};
constexpr std::chrono::minutes long_budget{10};
constexpr std::int64_t left_alone = 30; // seconds

/// The station's file, made where it is not there yet.
Archive open_station(const Settings& settings) {
    auto station = open_archive(settings, archive::Mode::Write);
    if (!station.link()) {
        station.put_link({archive::shown_address(settings.archive), {}, 0});
    }
    return station;
}

Result<archive::Exchanged, ArchiveFault> exchange_now(Archive& station, const Settings& settings,
                                                      std::chrono::milliseconds budget) {
    auto server = Archive::reach(settings.archive, budget);
    if (!server) {
        return Failure{server.fault()};
    }
    auto there = std::move(server).value();
    try {
        return archive::exchange(station, there);
    } catch (const archive::ArchiveFailure& failure) {
        return Failure{failure.fault()};
    }
}

/// The same; the file keeps when it was tried and how it went.
Result<archive::Exchanged, ArchiveFault>
exchange_and_note(Archive& station, const Settings& settings, std::chrono::milliseconds budget) {
    auto exchanged = exchange_now(station, settings, budget);
    auto link = station.link().value_or(archive::Link{});
    link.asked = exchanged ? now_text() : link.asked;
    link.tried = exchanged ? 0 : station_now().clock.value_or(0);
    station.put_link(link);
    return exchanged;
}

std::string of_when(const archive::Link& link) {
    return link.asked.empty() ? "nothing is known here of what others printed or noted"
                              : fmt::format("what others printed or noted is known up to {}",
                                            shown_moment(link.asked));
}

void say_away(const ArchiveFault& fault, const archive::Link& link, Console console) {
    console.err << fmt::format("caution: {}; {}; what is printed and noted now is kept here and "
                               "sent later\n",
                               fault.message, of_when(link));
}

void say_left_out(const std::vector<std::string>& clashes, const char* where, Console console) {
    if (!clashes.empty()) {
        console.err << fmt::format("caution: {} {}: their ids are on other bags there, or may be; "
                                   "print them again with --new-batch\n",
                                   fmt::join(clashes, ", "), where);
    }
}

void say_exchanged(const archive::Exchanged& exchanged, Console console) {
    if (exchanged.unsent) {
        console.err << fmt::format("caution: nothing was sent: {}\n", exchanged.unsent->message);
    }
    say_left_out(exchanged.sent.clashes, "cannot be sent", console);
    say_left_out(exchanged.fetched.clashes, "of others cannot be taken over here", console);
}

bool was_away_just_now(const archive::Link& link) {
    const auto clock = station_now().clock.value_or(0);
    return link.tried != 0 && clock >= link.tried && clock - link.tried < left_alone;
}

/// What changes with every change of the station's file.
std::string state_of_file(const std::string& file) {
    std::string state;
    for (const auto& part : {file, file + "-wal"}) {
        std::error_code error;
        const auto size = fs::file_size(part, error);
        const auto time = error ? fs::file_time_type{} : fs::last_write_time(part, error);
        state += error ? "-" : fmt::format("{} {};", size, time.time_since_epoch().count());
    }
    return state;
}

std::string added_text(const archive::Merged& merged) {
    return fmt::format("{}, {}, {}, {} with a later state", counted(merged.days, "description"),
                       counted(merged.bags, "bag"), counted(merged.prints, "print"),
                       counted(merged.states, "bag"));
}

} // namespace

std::string station_file(const std::string& address) {
    const auto read = archive::parse_address(address);
    return read ? user_place("XDG_DATA_HOME", ".local/share",
                             fmt::format("thawslip/server-{:016x}.db",
                                         kitchen::fnv_1a(read.value().identity)))
                : std::string{};
}

void exchange_with_server(const Settings& settings, Console console) {
    auto station = open_station(settings);
    const auto link = station.link().value_or(archive::Link{});
    if (link.asked == now_text() && !fixed_clock()) {
        return;
    }
    if (was_away_just_now(link)) {
        say_away({ArchiveFault::Kind::Away,
                  fmt::format("the server of the archive {} was away a moment ago", link.address)},
                 link, console);
        return;
    }
    const auto exchanged = exchange_and_note(station, settings, short_budget);
    exchanged ? say_exchanged(exchanged.value(), console)
              : say_away(exchanged.fault(), link, console);
}

bool exchange_quietly(const Settings& settings) {
    auto station = open_station(settings);
    return exchange_and_note(station, settings, short_budget).ok();
}

ExitStatus with_server(const std::function<ExitStatus(const Settings&, Console)>& command,
                       const Settings& settings, Console console) {
    exchange_with_server(settings, console);
    const auto file = archive_file(settings);
    const auto before = state_of_file(file);
    const auto status = command(settings, console);
    if (state_of_file(file) != before) {
        auto station = open_station(settings);
        if (!was_away_just_now(station.link().value_or(archive::Link{}))) {
            const auto exchanged = exchange_and_note(station, settings, short_budget);
            exchanged ? say_exchanged(exchanged.value(), console)
                      : say_away(exchanged.fault(), *station.link(), console);
        }
    }
    return status;
}

ExitStatus archive_send(const Settings& settings, Console console) {
    if (!archive::is_address(settings.archive)) {
        console.err << "error: the archive is a file: there is nothing to send it to; expected an "
                       "address, postgresql://…, in the settings or by --archive\n";
        return ExitStatus::Refused;
    }
    auto station = open_station(settings);
    const auto exchanged = exchange_and_note(station, settings, long_budget);
    if (!exchanged) {
        throw SystemFailure{exchanged.fault().message + "; nothing is lost: it is kept here"};
    }
    console.out << fmt::format("{}: sent {}\n", station.link()->address,
                               added_text(exchanged.value().sent));
    console.out << fmt::format("{}: taken over {}\n", station.link()->address,
                               added_text(exchanged.value().fetched));
    say_exchanged(exchanged.value(), console);
    return exchanged.value().unsent ? ExitStatus::SystemFailed : ExitStatus::Done;
}

} // namespace thawslip::app
