#include "app/used_sheets.h"

#include "app/archive_place.h"
#include "app/clock.h"
#include "base/system_failure.h"
#include "service/print/used_sheet.h"

#include <fmt/format.h>
#include <ostream>

namespace thawslip::app {

std::function<std::optional<archive::UsedSheet>(const std::string& stock)>
used_sheets(const Settings& settings) {
    return [&settings](const std::string& stock) -> std::optional<archive::UsedSheet> {
        if (archive_file_if_known(settings).empty()) {
            return std::nullopt;
        }
        try {
            auto archive = existing_archive(settings, archive::Mode::Read);
            return archive ? archive->used_sheet(stock) : std::nullopt;
        } catch (const SystemFailure&) { // said where the print would be remembered
            return std::nullopt;
        }
    };
}

void note_sheet(const service::LaidOut& laid_out, const Settings& settings, Console console) {
    const auto sheet = service::stopped_at(laid_out, now_text());
    if (!sheet || !settings.record_prints || archive_file_if_known(settings).empty()) {
        return;
    }
    try {
        if (auto archive = existing_archive(settings, archive::Mode::Write)) {
            archive->use_sheet(*sheet);
        }
    } catch (const std::exception& failure) {
        console.err << fmt::format("caution: where this print stopped is not remembered, so "
                                   "--first-cell next does not count it: {}\n",
                                   failure.what());
    }
}

} // namespace thawslip::app
