#include "app/archive_commands.h"
#include "app/archive_folder.h"
#include "app/archive_place.h"
#include "app/files/output_guard.h"
#include "app/progress_line.h"
#include "app/whole_folder.h"
#include "archive/address.h"
#include "archive/restore.h"
#include "archive/server_sql.h"
#include "base/counted.h"
#include "service/archive/archive_days.h"
#include "service/archive/exchange.h"
#include "service/messages.h"

#include <filesystem>
#include <fmt/format.h>
#include <optional>
#include <ostream>

namespace thawslip::app {
namespace {

/// Adds to the archive in use, and says what that was.
ExitStatus add(const service::Outcome<archive::Contents>& contents, const std::string& from,
               archive::Kitchens kitchens, const Settings& settings, Console console) {
    console.err << to_text(contents.messages);
    if (!contents) {
        return ExitStatus::Refused;
    }
    auto archive = open_archive(settings, archive::Mode::Write);
    const auto outcome = service::add_contents(archive, *contents.value, from, kitchens);
    const auto& merged = *outcome.value;
    console.out << fmt::format("{}: added {}, {}, {}; {} updated to the later state\n",
                               archive_file(settings), counted(merged.days, "description"),
                               counted(merged.bags, "bag"), counted(merged.prints, "print"),
                               counted(merged.states, "bag"));
    console.err << to_text(outcome.messages);
    return ExitStatus::Done;
}

void show_kept(const archive::Replaced& replaced, Console console) {
    if (!replaced.kept.empty()) {
        console.out << fmt::format("the archive of before is kept as {}\n", replaced.kept);
    }
}

/// What the archive of before holds and the restored one does not: a merge into a copy of it tells.
void show_left_behind(const std::string& place, const std::string& kept, Console console) {
    auto before = archive::Archive::open(kept, archive::Mode::Copy);
    auto now = archive::Archive::open(place, archive::Mode::Copy);
    if (!before || !now) {
        console.err << fmt::format("caution: what it held cannot be compared: {}\n",
                                   (before ? now : before).fault().message);
        return;
    }
    try {
        auto held = std::move(before).value();
        auto holds = std::move(now).value();
        console.err << to_text(service::left_behind(held, holds, kept));
    } catch (const archive::ArchiveFailure& failure) {
        console.err << fmt::format("caution: what it held cannot be compared: {}\n",
                                   failure.what());
    }
}

/// Whether the user named something that cannot be, or the system failed.
ExitStatus status_of(const archive::ArchiveFailure& failure) {
    using Kind = archive::ArchiveFault::Kind;
    switch (failure.fault().kind) {
    case Kind::Missing:
    case Kind::Damaged:
    case Kind::NotOurs:
    case Kind::NewerSchema:
    case Kind::Clash:
    case Kind::Failed: return ExitStatus::Refused;
    case Kind::CannotOpen:
    case Kind::ReadOnly:
    case Kind::Busy:
    case Kind::Away:
    case Kind::DiskFull:
    case Kind::DiskFailed: break;
    }
    return ExitStatus::SystemFailed;
}

constexpr std::chrono::minutes patience_to_check{2};

ExitStatus check_one(archive::Archive& archive, const std::string& place, Console console) {
    const auto wrong = service::faults_of(archive, progress_line("reading descriptions"));
    console.err << to_text(wrong);
    if (wrong.have_errors()) {
        return ExitStatus::SystemFailed;
    }
    console.out << fmt::format("{}: sound, {}\n", place,
                               counted(archive.bags(archive::Which::All).size(), "bag"));
    return ExitStatus::Done;
}

/// What is wrong with a file that nothing can be rebuilt from is not to be answered with "repair".
archive::Replaced repaired(const std::string& place) {
    try {
        return archive::repair(place, service::rebuild_from_days);
    } catch (const archive::ArchiveFailure& failure) {
        if (failure.fault().kind != archive::ArchiveFault::Kind::Damaged) {
            throw;
        }
        throw SystemFailure{fmt::format("the archive {} is so damaged that nothing of it can be "
                                        "rebuilt; a backup has it: thawslip archive restore FILE",
                                        place)};
    }
}

} // namespace

ExitStatus archive_check(const Settings& settings, Console console) {
    auto archive = existing_archive(settings, archive::Mode::Read);
    if (!archive) {
        console.out << no_archive_text(settings) << "\n";
        return ExitStatus::Done;
    }
    const auto here = check_one(*archive, archive_file(settings), console);
    if (!archive::is_address(settings.archive)) {
        return here;
    }
    auto there = archive::Archive::open(settings.archive, archive::Mode::Read, patience_to_check);
    if (!there) {
        throw SystemFailure{there.fault().message};
    }
    auto server = std::move(there).value();
    const auto status = check_one(server, archive::shown_address(settings.archive), console);
    return here == ExitStatus::Done ? status : here;
}

ExitStatus archive_restore(const std::string& file, const Settings& settings, Console console) {
    try {
        const auto place = archive_file(settings);
        const auto replaced = archive::restore(place, file);
        console.out << fmt::format("{}: restored from {}\n", place, file);
        show_kept(replaced, console);
        if (!replaced.kept.empty()) {
            show_left_behind(place, replaced.kept, console);
        }
        return ExitStatus::Done;
    } catch (const archive::ArchiveFailure& failure) {
        console.err << "error: " << failure.what() << "\n";
        return status_of(failure);
    }
}

ExitStatus archive_repair(const Settings& settings, Console console) {
    const auto place = archive_file(settings);
    if (std::error_code error; !std::filesystem::exists(place, error)) {
        console.err << "error: " << no_archive_text(settings) << "\n";
        return ExitStatus::Refused;
    }
    const auto replaced = repaired(place);
    for (const auto& one : replaced.left) {
        console.err << "error: " << one << "\n";
    }
    for (const auto& one : replaced.repaired) {
        console.out << "repaired: " << one << "\n";
    }
    show_kept(replaced, console);
    if (!replaced.left.empty()) {
        console.err
            << "    hint: this cannot be rebuilt; a backup has it: thawslip archive restore "
               "FILE\n";
        return ExitStatus::SystemFailed;
    }
    console.out << fmt::format(
        "{}: {}\n", place, replaced.repaired.empty() ? "sound, nothing to repair" : "sound again");
    return ExitStatus::Done;
}

ExitStatus archive_backup(const std::string& file, const Settings& settings, Console console) {
    if (const auto refused = refuse_output({file, {".db"}}, settings, console)) {
        return *refused;
    }
    if (const auto fault = archive::Archive::back_up(archive_file(settings), file)) {
        if (fault->kind != archive::ArchiveFault::Kind::Missing) {
            throw SystemFailure{fault->message};
        }
        console.err << "error: " << fault->message << "\n";
        return ExitStatus::Refused;
    }
    console.out << fmt::format("{}: a copy of {}\n", file, archive_file(settings));
    return ExitStatus::Done;
}

ExitStatus archive_merge(const std::string& file, archive::Kitchens kitchens,
                         const Settings& settings, Console console) {
    auto other = archive::Archive::open(file, archive::Mode::Copy);
    if (!other) {
        const bool is_there = other.fault().kind != archive::ArchiveFault::Kind::Missing;
        console.err << "error: "
                    << (is_there ? other.fault().message
                                 : fmt::format("there is no file {}; nothing was merged", file))
                    << "\n";
        return ExitStatus::Refused;
    }
    auto there = std::move(other).value();
    return add(service::contents_to_merge(there, file, progress_line("reading descriptions")), file,
               kitchens, settings, console);
}

ExitStatus archive_sql(const Settings& /*settings*/, Console console) {
    console.out << archive::server_sql();
    return ExitStatus::Done;
}

ExitStatus archive_export(const std::string& folder, const Settings& settings, Console console) {
    if (const auto refused = refuse_output({folder, {}}, settings, console)) {
        return *refused;
    }
    auto archive = needed_archive(settings, archive::Mode::Read, console);
    if (!archive) {
        return ExitStatus::Refused;
    }
    if (holds_something(folder)) {
        console.err << fmt::format("error: {} already exists and is not empty; nothing was "
                                   "written\n",
                                   folder);
        return ExitStatus::Refused;
    }
    const auto outcome = service::contents_to_export(*archive);
    console.err << to_text(outcome.messages);
    if (!outcome) {
        return ExitStatus::Refused;
    }
    const auto& contents = *outcome.value;
    write_archive_folder(contents, folder, progress_line("writing files"));
    console.out << fmt::format(
        "{}: {}, {}, {}\n", folder, counted(contents.days.size(), "description"),
        counted(contents.bags.size(), "bag"), counted(contents.prints.size(), "print"));
    return ExitStatus::Done;
}

ExitStatus archive_import(const std::string& folder, archive::Kitchens kitchens,
                          const Settings& settings, Console console) {
    auto contents = read_archive_folder(folder);
    if (contents) {
        contents = service::held_to_be_true(*std::move(contents.value), folder,
                                            progress_line("reading descriptions"));
    }
    return add(contents, folder, kitchens, settings, console);
}

} // namespace thawslip::app
