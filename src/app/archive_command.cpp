#include "app/archive_commands.h"
#include "app/archive_place.h"

#include <fmt/format.h>
#include <ostream>

namespace thawslip::app {

ExitStatus archive_check(const Settings& settings, Console console) {
    auto archive = existing_archive(settings, archive::Mode::Read);
    if (!archive) {
        console.out << "there is no archive yet\n";
        return ExitStatus::Done;
    }
    const auto wrong = archive->check();
    for (const auto& one : wrong) {
        console.err << "error: " << one << "\n";
    }
    if (!wrong.empty()) {
        return ExitStatus::SystemFailed;
    }
    console.out << fmt::format("{}: sound, {} bags\n", archive_file(settings),
                               archive->bags(archive::Which::All).size());
    return ExitStatus::Done;
}

ExitStatus archive_backup(const std::string& file, const Settings& settings, Console console) {
    auto archive = existing_archive(settings, archive::Mode::Read);
    if (!archive) {
        console.err << "error: there is no archive yet\n";
        return ExitStatus::Refused;
    }
    archive->back_up(file);
    console.out << fmt::format("{}: a copy of {}\n", file, archive_file(settings));
    return ExitStatus::Done;
}

ExitStatus archive_merge(const std::string& file, const Settings& settings, Console console) {
    auto other = archive::Archive::open(file, archive::Mode::Read);
    if (!other) {
        console.err << "error: " << other.fault().message << "\n";
        return ExitStatus::Refused;
    }
    const auto contents = std::move(other).value().contents();
    const auto merged = open_archive(settings, archive::Mode::Write).merge(contents);
    console.out << fmt::format("{}: added {} descriptions, {} bags, {} prints; {} bags took the "
                               "later state\n",
                               archive_file(settings), merged.days, merged.bags, merged.prints,
                               merged.states);
    for (const auto& id : merged.clashes) {
        console.err << fmt::format("caution: bag {} was left out: here that id is on a bag whose "
                                   "food is another, or may be; the one of {} needs a new label "
                                   "under another name\n",
                                   id, file);
    }
    return ExitStatus::Done;
}

} // namespace thawslip::app
