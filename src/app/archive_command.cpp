#include "app/archive_against_days.h"
#include "app/archive_bags.h"
#include "app/archive_commands.h"
#include "app/archive_folder.h"
#include "app/archive_place.h"
#include "app/counted.h"
#include "app/files/output_guard.h"
#include "app/whole_folder.h"
#include "archive/restore.h"

#include <fmt/format.h>
#include <optional>
#include <ostream>

namespace thawslip::app {
namespace {

/// Adds what `contents` hold and this archive does not, and says what that was.
ExitStatus add(const archive::Contents& contents, const std::string& from,
               archive::Kitchens kitchens, const Settings& settings, Console console) {
    const auto merged = open_archive(settings, archive::Mode::Write).merge(contents, kitchens);
    console.out << fmt::format("{}: added {}, {}, {}; {} took the later state\n",
                               archive_file(settings), counted(merged.days, "description"),
                               counted(merged.bags, "bag"), counted(merged.prints, "print"),
                               counted(merged.states, "bag"));
    for (const auto& id : merged.clashes) {
        console.err << fmt::format("caution: bag {} of {} was left out: here that id is on another "
                                   "bag, or on one that may be another\n",
                                   id, from);
    }
    if (!merged.clashes.empty()) {
        console.err << (kitchens == archive::Kitchens::MayDiffer
                            ? "    hint: --same-kitchen if both archives are of one kitchen; if "
                              "they are of two, "
                            : "    hint: ")
                    << "what was left out needs new labels; with a kitchen_number of its own in "
                       "the settings, or a name in its days, each kitchen prints ids of its own\n";
    }
    return ExitStatus::Done;
}

/// What comes from others must be what its own descriptions say.
std::optional<ExitStatus> refuse_untrue(const archive::Contents& contents, const std::string& from,
                                        Console console) {
    const auto wrong = held_against_days(contents);
    for (const auto& one : wrong) {
        console.err << fmt::format("error: {}: {}\n", from, one);
    }
    if (wrong.empty()) {
        return std::nullopt;
    }
    console.err << "    hint: nothing of it was added; where it comes from: thawslip archive "
                   "repair\n";
    return ExitStatus::Refused;
}

void tell_kept(const archive::Replaced& replaced, Console console) {
    if (!replaced.kept.empty()) {
        console.out << fmt::format("the archive of before is kept as {}\n", replaced.kept);
    }
}

/// What the archive of before holds and the restored one does not: a merge into a copy of it tells.
void tell_left_behind(const std::string& place, const std::string& kept, Console console) {
    auto before = archive::Archive::open(kept, archive::Mode::Copy);
    auto now = archive::Archive::open(place, archive::Mode::Copy);
    if (!before || !now) {
        console.err << fmt::format("caution: what it held cannot be compared: {}\n",
                                   (before ? now : before).fault().message);
        return;
    }
    try {
        const auto held = std::move(before).value().contents();
        const auto merged = std::move(now).value().merge(held);
        const std::pair<int, const char*> parts[] = {
            {merged.bags + static_cast<int>(merged.clashes.size()), "bag"},
            {merged.states, "later state"},
            {merged.days, "description"},
            {merged.prints, "print"}};
        std::string missing;
        for (const auto& [count, noun] : parts) {
            if (count > 0) {
                missing += (missing.empty() ? "" : ", ") + counted(count, noun);
            }
        }
        if (!missing.empty()) {
            console.err << fmt::format(
                "caution: not in this one, but in the archive of before: {}\n"
                "    hint: thawslip archive merge {} adds them; without that, "
                "ids of its bags are given again\n",
                missing, kept);
        }
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
    case Kind::DiskFull:
    case Kind::DiskFailed: break;
    }
    return ExitStatus::SystemFailed;
}

} // namespace

ExitStatus archive_check(const Settings& settings, Console console) {
    auto archive = existing_archive(settings, archive::Mode::Read);
    if (!archive) {
        console.out << "there is no archive yet\n";
        return ExitStatus::Done;
    }
    auto wrong = archive->check();
    if (wrong.empty()) {
        for (const auto& one : held_against_days(*archive)) {
            wrong.push_back(one.what);
        }
    }
    for (const auto& one : wrong) {
        console.err << "error: " << one << "\n";
    }
    if (!wrong.empty()) {
        console.err << "    hint: put a backup in its place with: thawslip archive restore FILE; "
                       "without one: thawslip archive repair\n";
        return ExitStatus::SystemFailed;
    }
    console.out << fmt::format("{}: sound, {}\n", archive_file(settings),
                               counted(archive->bags(archive::Which::All).size(), "bag"));
    return ExitStatus::Done;
}

ExitStatus archive_restore(const std::string& file, const Settings& settings, Console console) {
    try {
        const auto place = archive_file(settings);
        const auto replaced = archive::restore(place, file);
        console.out << fmt::format("{}: restored from {}\n", place, file);
        tell_kept(replaced, console);
        if (!replaced.kept.empty()) {
            tell_left_behind(place, replaced.kept, console);
        }
        return ExitStatus::Done;
    } catch (const archive::ArchiveFailure& failure) {
        console.err << "error: " << failure.what() << "\n";
        return status_of(failure);
    }
}

ExitStatus archive_repair(const Settings& settings, Console console) {
    const auto place = archive_file(settings);
    const auto replaced = archive::repair(place, rebuild_from_days);
    for (const auto& one : replaced.left) {
        console.err << "error: " << one << "\n";
    }
    for (const auto& one : replaced.mended) {
        console.out << "repaired: " << one << "\n";
    }
    tell_kept(replaced, console);
    if (!replaced.left.empty()) {
        console.err
            << "    hint: this cannot be rebuilt; a backup has it: thawslip archive restore "
               "FILE\n";
        return ExitStatus::SystemFailed;
    }
    console.out << fmt::format(
        "{}: {}\n", place, replaced.mended.empty() ? "sound, nothing to repair" : "sound again");
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
        console.err << "error: there is no archive yet\n";
        return ExitStatus::Refused;
    }
    console.out << fmt::format("{}: a copy of {}\n", file, archive_file(settings));
    return ExitStatus::Done;
}

ExitStatus archive_merge(const std::string& file, archive::Kitchens kitchens,
                         const Settings& settings, Console console) {
    auto other = archive::Archive::open(file, archive::Mode::Copy);
    if (!other) {
        console.err << "error: " << other.fault().message << "\n";
        return ExitStatus::Refused;
    }
    auto there = std::move(other).value();
    if (const auto wrong = there.check(); !wrong.empty()) {
        console.err << fmt::format("error: {} is damaged: {}\n", file, wrong.front());
        return ExitStatus::Refused;
    }
    const auto contents = there.contents();
    if (const auto refused = refuse_untrue(contents, file, console)) {
        return *refused;
    }
    return add(contents, file, kitchens, settings, console);
}

ExitStatus archive_export(const std::string& folder, const Settings& settings, Console console) {
    if (const auto refused = refuse_output({folder, {}}, settings, console)) {
        return *refused;
    }
    auto archive = existing_archive(settings, archive::Mode::Read);
    if (!archive) {
        console.err << "error: there is no archive yet\n";
        return ExitStatus::Refused;
    }
    if (holds_something(folder)) {
        console.err << fmt::format("error: {} is there already and is no empty folder; nothing was "
                                   "written\n",
                                   folder);
        return ExitStatus::Refused;
    }
    for (const auto& day : archive->days()) {
        if (day.is_rotten) {
            console.err << fmt::format("error: {}; nothing was written\n", rotten_text(day));
            return ExitStatus::Refused;
        }
    }
    const auto contents = archive->contents();
    write_archive_folder(contents, folder);
    console.out << fmt::format(
        "{}: {}, {}, {}\n", folder, counted(contents.days.size(), "description"),
        counted(contents.bags.size(), "bag"), counted(contents.prints.size(), "print"));
    return ExitStatus::Done;
}

ExitStatus archive_import(const std::string& folder, archive::Kitchens kitchens,
                          const Settings& settings, Console console) {
    const auto contents = read_archive_folder(folder);
    if (!contents) {
        console.err << contents.fault();
        return ExitStatus::Refused;
    }
    if (const auto refused = refuse_untrue(contents.value(), folder, console)) {
        return *refused;
    }
    return add(contents.value(), folder, kitchens, settings, console);
}

} // namespace thawslip::app
