#include "app/desk/machine.h"

#include "app/archive_place.h"
#include "app/clock.h"
#include "app/commands/deliver.h"
#include "app/desk/draft_folder.h"
#include "app/desk/photo_child.h"
#include "app/desk/prints.h"
#include "app/desk/private_folder.h"
#include "app/desk/random_text.h"
#include "app/desk/settings_for_page.h"
#include "app/files/data_folder.h"
#include "app/files/output_guard.h"
#include "app/server_archive.h"
#include "app/station.h"
#include "app/used_sheets.h"
#include "archive/address.h"
#include "files/shelf.h"

#include <fmt/format.h>
#include <memory>
#include <sstream>

namespace thawslip::app {
namespace {

using SettingsNow = std::function<service::Outcome<Settings>()>;

/// The settings for what goes on without a page that could show their faults: printing asked for
/// by one that has seen them right.
Settings right_settings(const SettingsNow& settings) {
    auto now = settings();
    if (!now) {
        throw SystemFailure{to_text(now.messages)};
    }
    return *std::move(now.value);
}

/// The archive as a copy that nothing changes. What is wrong with it is said where something is
/// printed or looked up.
std::optional<archive::Archive> archive_copy(const Settings& settings) {
    const auto file = archive_file_if_known(settings);
    if (file.empty()) {
        return std::nullopt;
    }
    auto archive = archive::Archive::open(file, archive::Mode::Copy);
    return archive ? std::optional{std::move(archive).value()} : std::nullopt;
}

service::Surroundings surroundings_for_desk(const Settings& settings) {
    auto around =
        files::surroundings_in(find_data_folder, {[settings] { return archive_copy(settings); },
                                                  station_now().name,
                                                  {},
                                                  service::Doubts::Mention,
                                                  service::Stock::Noted});
    around.used_sheet = [settings](const std::string& stock) {
        return used_sheets(settings)(stock);
    };
    return around;
}

std::vector<std::string> printers(std::string& why) {
    auto names = spool::printers();
    if (!names) {
        why = why_no_printer(names.fault());
        return {};
    }
    return std::move(names).value();
}

std::optional<archive::Archive> archive_for_desk(const Settings& settings, archive::Mode mode,
                                                 const desk::Changes& changes) {
    if (archive_file_if_known(settings).empty()) {
        return std::nullopt;
    }
    if (archive::is_address(settings.archive) && !changes.is_all_here()) {
        std::ostringstream nobody; // the page says what it shows; `archive send` says what failed
        exchange_with_server(settings, {nobody, nobody});
    }
    return existing_archive(settings, mode);
}

void add_prints(desk::Machine& machine, const std::string& folder, const SettingsNow& settings) {
    machine.printers = printers;
    machine.print = [settings, place = machine.days.place](const desk::PrintWish& wish) {
        return print_for_desk(wish, place(wish.day), right_settings(settings));
    };
    machine.reprint = [settings](const desk::ReprintWish& wish) {
        return reprint_for_desk(wish, right_settings(settings));
    };
    machine.print_door_list = [settings](const Look& look, const desk::Destination& to) {
        return door_list_for_desk(look, to, right_settings(settings));
    };
    machine.back_up = [settings, folder] {
        return back_up_for_desk(folder, right_settings(settings));
    };
    machine.export_archive = [settings, folder] {
        return export_for_desk(folder, right_settings(settings));
    };
}

/// What a day's file must not be. Settings that cannot be read leave the usual places.
WhyKept keeper(const SettingsNow& settings) {
    return [settings](const std::string& file) {
        return why_kept(file, {file, {}}, settings().value.value_or(Settings{}));
    };
}

} // namespace

desk::Machine machine_for(const DeskPlace& place, const SettingsNow& settings,
                          const std::string& settings_file) {
    desk::Machine machine;
    machine.now = now_here;
    machine.clock = system_clock;
    machine.moment = moment_now;
    machine.settings = settings;
    machine.settings_file = settings_for_page(settings_file);
    machine.surroundings = surroundings_for_desk;
    machine.changes = std::make_shared<desk::Changes>(random_text());
    machine.archive = [changes = machine.changes](const Settings& of, archive::Mode mode) {
        return archive_for_desk(of, mode, *changes);
    };
    machine.days = day_folder(place, keeper(settings));
    machine.drafts = draft_folder(state_folder() + "/drafts", place.folder);
    machine.photo_texts = [readers = std::make_shared<PhotoReaders>()](const std::string& picture) {
        return readers->texts_in(picture);
    };
    add_prints(machine, place.folder, settings);
    return machine;
}

} // namespace thawslip::app
