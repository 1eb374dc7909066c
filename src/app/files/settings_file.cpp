#include "app/files/settings_file.h"

#include "app/archive_place.h"
#include "app/files/user_folders.h"
#include "base/folder.h"
#include "files/input_file.h"

#include <filesystem>

namespace thawslip::app {
namespace {

service::Outcome<Settings> refused(const Diagnostic& why) {
    service::Outcome<Settings> outcome;
    outcome.messages.add_in_order({why}, {});
    return outcome;
}

/// Reads the cook's own table of goods, which lies where the settings say.
service::Outcome<Settings> with_goods(service::Outcome<Settings> outcome, const std::string& file) {
    const auto place = archive_place(outcome.value->goods_file, folder_of(file));
    if (!place) {
        return refused({Severity::Error, {file}, {}, "goods = " + place.fault(), {}});
    }
    auto text = files::read_input(place.value(), largest_settings);
    if (!text) {
        return refused(text.fault());
    }
    auto goods = wording::own_goods(text.value(), place.value());
    if (!goods) {
        service::Outcome<Settings> faulty;
        faulty.messages.add_in_order(goods.fault(), text.value());
        return faulty;
    }
    outcome.value->goods = std::make_shared<const wording::Goods>(std::move(goods).value());
    return outcome;
}

} // namespace

std::string usual_settings_file() {
    return user_place("XDG_CONFIG_HOME", ".config", "thawslip/settings.toml");
}

service::Outcome<Settings> load_settings(const std::string& file, Missing missing) {
    std::error_code error;
    if (missing == Missing::IsFine && (file.empty() || !std::filesystem::exists(file, error))) {
        return {Settings{}, {}};
    }
    auto text = files::read_input(file, largest_settings);
    if (!text) {
        return refused(text.fault());
    }
    auto outcome = service::settings_from(std::move(text).value(), file);
    if (outcome && !outcome.value->archive.empty()) {
        auto place = archive_place(outcome.value->archive, folder_of(file));
        if (!place) {
            return refused({Severity::Error, {file}, {}, "archive = " + place.fault(), {}});
        }
        outcome.value->archive = std::move(place).value();
    }
    return outcome && !outcome.value->goods_file.empty() ? with_goods(std::move(outcome), file)
                                                         : outcome;
}

} // namespace thawslip::app
