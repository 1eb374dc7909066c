#include "thawslip/kitchen.h"

#include "files/shelf.h"
#include "library/parts.h"

#include <fmt/format.h>

namespace thawslip {

Kitchen::Kitchen(std::unique_ptr<KitchenParts> parts) : parts_{std::move(parts)} {}
Kitchen::Kitchen(Kitchen&&) noexcept = default;
Kitchen& Kitchen::operator=(Kitchen&&) noexcept = default;
Kitchen::~Kitchen() = default;

Outcome<Kitchen> open_kitchen(const std::string& data_folder, const std::string& settings,
                              const std::string& today) {
    const auto date = kitchen::parse_iso(today);
    if (!date && !today.empty()) {
        return library::refused<Kitchen>(fmt::format("\"{}\" is no date", today),
                                         {"write it as 2026-10-17"});
    }
    return library::outcome_of(
        service::settings_from(settings, "settings"), [&](service::Settings read) {
            read.kitchen.today = date;
            const auto folder = [data_folder] { return files::DataFolder{data_folder}; };
            return Kitchen{std::make_unique<KitchenParts>(
                KitchenParts{std::move(read), files::surroundings_in(folder)})};
        });
}

} // namespace thawslip
