#include "archive/tables/server/faults.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace thawslip::archive {
namespace {

using Kind = ArchiveFault::Kind;

struct StateKind {
    std::string_view state; ///< a SQLSTATE, or the class that it begins with
    Kind kind;
};

constexpr std::array<StateKind, 21> kinds = {{
    {"08", Kind::Away},        // connection exception
    {"57P", Kind::Away},       // shut down, crashed, starting
    {"53300", Kind::Away},     // too many connections
    {"55P03", Kind::Busy},     // lock not available
    {"40", Kind::Busy},        // deadlock, serialization
    {"57014", Kind::Busy},     // statement timeout
    {"53100", Kind::DiskFull}, //
    {"58", Kind::DiskFailed},  // system error
    {"XX001", Kind::Damaged},  // data corrupted
    {"XX002", Kind::Damaged},  // index corrupted
    {"42501", Kind::ReadOnly}, // insufficient privilege
    {"25006", Kind::ReadOnly}, // read-only transaction: a standby
    {"28", Kind::CannotOpen},  // authorization
    {"3D", Kind::CannotOpen},  // no such database
    {"3F", Kind::Missing},     // no such schema
    {"42P01", Kind::Missing},  // no such table
    {"42883", Kind::Missing},  // no such function
    {"22021", Kind::Failed},   // not UTF-8
    {"23", Kind::Failed},      // constraint
    {"53", Kind::Failed},      // resources
    {"25", Kind::Failed},      // transaction state
}};

std::string one_line(std::string_view words) {
    std::string line{words};
    std::ranges::replace(line, '\n', ' ');
    std::erase(line, '\t');
    while (line.ends_with(' ') || line.ends_with('.')) {
        line.pop_back();
    }
    return line;
}

std::string server_words(Kind kind, const std::string& place, const std::string& detail) {
    switch (kind) {
    case Kind::Busy:
        return fmt::format("another program is writing the archive {}; nothing was changed, try "
                           "again in a moment",
                           place);
    case Kind::ReadOnly:
        return fmt::format("the archive {} may not be written by you: {}", place, detail);
    case Kind::CannotOpen: return fmt::format("cannot open the archive {}: {}", place, detail);
    case Kind::Missing:
        return fmt::format("there is no archive at {} ({}); who keeps the server makes one with "
                           "what `thawslip archive sql` prints",
                           place, detail);
    case Kind::DiskFull: return fmt::format("no room left on the disk of the server {}", place);
    case Kind::DiskFailed:
        return fmt::format("the disk of the server {} failed: {}", place, detail);
    case Kind::Damaged: return fmt::format("the archive {} is damaged: {}", place, detail);
    case Kind::NotOurs:
    case Kind::NewerSchema:
    case Kind::Clash:
    case Kind::Away:
    case Kind::Failed: break;
    }
    return fmt::format("the archive {} failed: {}", place, detail);
}

} // namespace

ArchiveFault away(const std::string& place, std::string_view why) {
    return {Kind::Away, fmt::format("the server of the archive {} cannot be reached: {}", place,
                                    one_line(why))};
}

ArchiveFault server_fault(std::string_view state, const std::string& place,
                          std::string_view detail) {
    const auto found = std::ranges::find_if(
        kinds, [state](const StateKind& row) { return state.starts_with(row.state); });
    const auto kind = state.empty()          ? Kind::Away
                      : found == kinds.end() ? Kind::Failed
                                             : found->kind;
    return kind == Kind::Away ? away(place, detail)
                              : ArchiveFault{kind, server_words(kind, place, one_line(detail))};
}

ArchiveFault connection_fault(const std::string& place, std::string_view detail) {
    const auto says = [detail](std::string_view words) {
        return detail.find(words) != std::string_view::npos;
    };
    const bool is_starting = says("database system is") || says("too many clients");
    const bool is_refused =
        says("FATAL:") || says("password") || says("certificate") || says("SSL");
    return is_refused && !is_starting
               ? ArchiveFault{Kind::CannotOpen,
                              server_words(Kind::CannotOpen, place, one_line(detail))}
               : away(place, detail);
}

} // namespace thawslip::archive
