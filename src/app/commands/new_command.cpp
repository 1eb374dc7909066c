#include "app/clock.h"
#include "app/commands.h"
#include "app/commands/new_day_text.h"
#include "app/files/output_guard.h"
#include "app/files/whole_file.h"
#include "kitchen/date.h"

#include <filesystem>
#include <fmt/format.h>
#include <ostream>

namespace thawslip::app {
namespace {

std::string with_today(std::string text) {
    constexpr std::string_view slot = "@TODAY@";
    text.replace(text.find(slot), slot.size(), kitchen::to_iso(today()));
    return text;
}

} // namespace

ExitStatus new_day(const std::string& file, const Settings& settings, Console console) {
    if (const auto refused = refuse_output({file, {".toml"}}, settings, console)) {
        return *refused;
    }
    const auto text = with_today(std::string{new_day_text});
    std::error_code error;
    if (file != "-" && std::filesystem::exists(std::filesystem::symlink_status(file, error))) {
        console.err << fmt::format("error: {} already exists; nothing written\n"
                                   "    hint: name another file\n",
                                   file);
        return ExitStatus::Refused;
    }
    write_whole_file(file, text);
    if (file != "-") {
        console.out << fmt::format(
            "{0}: a day to start from. Change it, then: thawslip check {0}\n", file);
    }
    return ExitStatus::Done;
}

} // namespace thawslip::app
