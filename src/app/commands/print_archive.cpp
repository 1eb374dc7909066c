#include "app/commands/print_archive.h"

#include "app/archive_place.h"
#include "app/station.h"

#include <fmt/format.h>
#include <ostream>

namespace thawslip::app {
namespace {

using MaybeArchive = std::optional<archive::Archive>;

/// The archive that a print's ids must be asked of.
MaybeArchive archive_needed(const Settings& settings, const char* instead) {
    try {
        return existing_archive(settings, archive::Mode::Read);
    } catch (const SystemFailure& failure) {
        throw SystemFailure{fmt::format("nothing was printed, for the ids of the bags stand in the "
                                        "archive: {}\n    hint: {}",
                                        failure.what(), instead)};
    }
}

enum class IfUnreadable { Say, BeSilent };

/// The archive as a copy, for what it is not to remember: neither it nor its schema changes.
MaybeArchive archive_to_look_into(const Settings& settings, IfUnreadable how, Console console) {
    const auto file = archive_file_if_known(settings);
    if (file.empty()) {
        return std::nullopt;
    }
    auto archive = archive::Archive::open(file, archive::Mode::Copy);
    if (archive) {
        return std::move(archive).value();
    }
    if (archive.fault().kind != archive::ArchiveFault::Kind::Missing && how == IfUnreadable::Say) {
        console.err << fmt::format("caution: these ids may be on other bags already, for the "
                                   "archive cannot be asked: {}\n",
                                   archive.fault().message);
    }
    return std::nullopt;
}

MaybeArchive archive_for(const PrintOptions& options, const Settings& settings, Console console) {
    if (options.look.is_trial) {
        return archive_to_look_into(settings, IfUnreadable::BeSilent, console);
    }
    return settings.record_prints && options.record == Record::AsSettingsSay
               ? archive_needed(settings, "print with --no-archive to do without")
               : archive_to_look_into(settings, IfUnreadable::Say, console);
}

service::IdSource from(std::function<MaybeArchive()> open, const archive::WhichBatch& which,
                       service::Doubts doubts, service::Stock stock = service::Stock::Unasked) {
    return {std::move(open), station_now().name, which, doubts, stock};
}

} // namespace

service::IdSource ids_for_print(const PrintOptions& options, const Settings& settings,
                                Console console) {
    return from([&options, &settings, console] { return archive_for(options, settings, console); },
                options.which,
                options.look.is_trial ? service::Doubts::Ignore : service::Doubts::Ask);
}

service::IdSource ids_for_lists(const PrintOptions& options, const Settings& settings,
                                Console console) {
    if (options.look.is_trial) {
        return ids_for_print(options, settings, console);
    }
    return from(
        [&settings]() -> MaybeArchive {
            return archive_file_if_known(settings).empty() // no place: nothing has been printed
                       ? std::nullopt
                       : archive_needed(settings, "name another archive with --archive");
        },
        options.which, service::Doubts::AskForLists, service::Stock::Noted);
}

service::IdSource ids_to_look(const Settings& settings, Console console) {
    return from(
        [&settings, console] { return archive_to_look_into(settings, IfUnreadable::Say, console); },
        {}, service::Doubts::Mention, service::Stock::Noted);
}

} // namespace thawslip::app
