#pragma once

#include "desk/machine.h"
#include "files/shelf.h"
#include "support/command.h"

#include <map>
#include <memory>
#include <stdexcept>
#include <string>
#include <vector>

namespace thawslip::test_support {

/// A computer for the desk without files, printers and clock: what it was asked is kept, and what
/// it answers is set. The archive alone is a file, in a scratch folder.
struct FakeMachine {
    std::map<std::string, std::string> days;
    std::map<std::string, std::string> drafts;
    service::Settings settings = [] {
        service::Settings usual;
        usual.kitchen.today = kitchen::Date{std::chrono::year{2026} / 10 / 17};
        return usual;
    }();
    std::optional<std::string> settings_text; ///< of their file, where there is one
    std::vector<std::string> printers = {"kitchen", "cellar"};
    std::string why_no_printer;
    std::vector<std::string> photo_texts; ///< of each photograph
    std::vector<desk::PrintWish> prints;  ///< what was to be printed
    std::vector<desk::ReprintWish> reprints;
    int door_lists = 0;
    int times_backed_up = 0;
    desk::Delivered delivered = {true, "printed", "%PDF-1.7"};
    /// Called before a day is written: another program that is faster.
    std::function<void()> before_write;
    ScratchFolder scratch;

    std::string archive_file() const { return scratch / "archive.sqlite"; }

    archive::Archive open_archive(archive::Mode mode = archive::Mode::Write) const {
        auto opened = archive::Archive::open(archive_file(), mode);
        if (!opened) {
            throw std::runtime_error{opened.fault().message};
        }
        return std::move(opened).value();
    }

    std::optional<archive::Archive> archive_if_there(archive::Mode mode) const {
        return std::filesystem::exists(archive_file()) ? std::optional{open_archive(mode)}
                                                       : std::nullopt;
    }
};

/// 12:00 of the day of the tests, where the clock shows UTC.
inline constexpr kitchen::Instant noon =
    std::chrono::sys_days{std::chrono::year{2026} / 10 / 17} + std::chrono::hours{12};

inline desk::Folder folder_of(FakeMachine& fake) {
    desk::Folder folder;
    folder.shown = "/days";
    folder.names = [&fake] {
        std::vector<std::string> names;
        for (const auto& [name, text] : fake.days) {
            names.push_back(name);
        }
        return names;
    };
    folder.place = [](const std::string& name) { return "/days/" + name; };
    folder.read = [&fake](const std::string& name) {
        const auto found = fake.days.find(name);
        return found == fake.days.end() ? std::nullopt : std::optional{found->second};
    };
    folder.write = [&fake, read = folder.read](const std::string& name,
                                               const std::optional<std::string>& before,
                                               const std::string& text) {
        if (fake.before_write) {
            fake.before_write();
        }
        const bool is_as_before = read(name) == before;
        if (is_as_before) {
            fake.days[name] = text;
        }
        return is_as_before;
    };
    folder.remove = [&fake, read = folder.read](const std::string& name,
                                                const std::string& before) {
        return read(name) == before && fake.days.erase(name) > 0;
    };
    return folder;
}

inline desk::Drafts drafts_of(FakeMachine& fake) {
    return {[&fake](const std::string& name) -> std::optional<std::string> {
                const auto found = fake.drafts.find(name);
                return found == fake.drafts.end() ? std::nullopt : std::optional{found->second};
            },
            [&fake](const std::string& name, const std::string& text) {
                text.empty() ? void(fake.drafts.erase(name)) : void(fake.drafts[name] = text);
            }};
}

/// Settings that are written are those of the machine.
inline desk::SettingsFile settings_file_of(FakeMachine& fake) {
    return {"/home/settings.toml", [&fake] { return fake.settings_text; },
            [&fake](const std::optional<std::string>& before, const std::string& text) {
                if (fake.before_write) {
                    fake.before_write();
                }
                if (fake.settings_text != before) {
                    return false;
                }
                fake.settings_text = text;
                const auto today = fake.settings.kitchen.today;
                fake.settings = *service::settings_from(text, "/home/settings.toml").value;
                fake.settings.kitchen.today = today;
                return true;
            }};
}

/// The machine that a desk is given. `fake` must outlive it.
inline desk::Machine machine_of(FakeMachine& fake) {
    desk::Machine machine;
    machine.now = [&fake] { return service::Now{*fake.settings.kitchen.today, noon, {}}; };
    machine.clock = [](kitchen::Instant, kitchen::Instant) { return kitchen::LocalClock{}; };
    machine.moment = [] { return service::Moment{"2026-10-17T12:00:00", {}}; };
    machine.settings = [&fake] { return service::Outcome<service::Settings>{fake.settings, {}}; };
    machine.settings_file = settings_file_of(fake);
    machine.surroundings = [&fake](const service::Settings&) {
        return files::surroundings_in(
            [] { return files::DataFolder{THAWSLIP_SOURCE_DIR}; },
            {[&fake] { return fake.archive_if_there(archive::Mode::Copy); },
             {},
             {},
             service::Doubts::Mention,
             service::Stock::Noted});
    };
    machine.archive = [&fake](const service::Settings&, archive::Mode mode) {
        return fake.archive_if_there(mode);
    };
    machine.days = folder_of(fake);
    machine.drafts = drafts_of(fake);
    machine.printers = [&fake](std::string& why) {
        why = fake.why_no_printer;
        return fake.printers;
    };
    machine.print = [&fake](const desk::PrintWish& wish) {
        fake.prints.push_back(wish);
        return fake.delivered;
    };
    machine.reprint = [&fake](const desk::ReprintWish& wish) {
        fake.reprints.push_back(wish);
        return fake.delivered;
    };
    machine.print_door_list = [&fake](const service::Look&, const desk::Destination&) {
        ++fake.door_lists;
        return fake.delivered;
    };
    machine.photo_texts = [&fake](const std::string&) {
        return service::Outcome<std::vector<std::string>>{fake.photo_texts, {}};
    };
    machine.back_up = machine.export_archive = [&fake] {
        ++fake.times_backed_up;
        return fake.delivered;
    };
    return machine;
}

} // namespace thawslip::test_support
