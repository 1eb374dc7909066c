#include "app/files/settings_file.h"

#include "app/archive_place.h"
#include "app/files/user_folders.h"
#include "base/folder.h"
#include "files/input_file.h"
#include "service/print/own_files.h"

#include <filesystem>
#include <fmt/format.h>
#include <vector>

namespace thawslip::app {
namespace {

service::Outcome<Settings> refused(const Diagnostic& why) {
    service::Outcome<Settings> outcome;
    outcome.messages.add_in_order({why}, {});
    return outcome;
}

/// A key whose value is the name of a file.
struct FileKey {
    const char* key;
    std::string* value;
    decltype(&file_place) place;
};

/// Those that are set: what they name counts from the settings' folder, wherever one stands.
std::vector<FileKey> file_keys(Settings& settings) {
    std::vector<FileKey> keys = {{"archive", &settings.archive, archive_place},
                                 {"goods", &settings.goods_file, file_place}};
    for (auto* job :
         {&settings.labels, &settings.finishing_cards, &settings.cook_day_cards, &settings.lists}) {
        if (service::is_file_name(job->stock)) {
            keys.push_back({"stock", &job->stock, file_place});
        }
    }
    std::erase_if(keys, [](const FileKey& key) { return key.value->empty(); });
    return keys;
}

/// Reads the cook's own table of goods.
service::Outcome<Settings> with_goods(service::Outcome<Settings> outcome) {
    const auto& file = outcome.value->goods_file;
    auto text = files::read_input(file, largest_settings);
    if (!text) {
        return refused(text.fault());
    }
    auto goods = wording::own_goods(text.value(), file);
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
    if (!outcome) {
        return outcome;
    }
    for (const auto& [key, value, place_of] : file_keys(*outcome.value)) {
        auto place = place_of(*value, folder_of(file));
        if (!place) {
            return refused(
                {Severity::Error, {file}, {}, fmt::format("{} = {}", key, place.fault()), {}});
        }
        *value = std::move(place).value();
    }
    return outcome.value->goods_file.empty() ? outcome : with_goods(std::move(outcome));
}

} // namespace thawslip::app
