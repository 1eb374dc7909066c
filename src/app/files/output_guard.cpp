#include "app/files/output_guard.h"

#include "app/archive_place.h"
#include "app/files/data_folder.h"
#include "base/nearest.h"
#include "base/place.h"

#include <algorithm>
#include <array>
#include <filesystem>
#include <fmt/format.h>
#include <fstream>
#include <ostream>

namespace thawslip::app {
namespace {

namespace fs = std::filesystem;

/// The beginning of a file that is there; empty for any other.
std::string head_of(const std::string& file) {
    constexpr std::size_t enough = 400;
    std::error_code error;
    if (!fs::is_regular_file(file, error)) {
        return {};
    }
    std::string head(enough, '\0');
    std::ifstream stream{file, std::ios::binary};
    stream.read(head.data(), static_cast<std::streamsize>(head.size()));
    head.resize(static_cast<std::size_t>(stream.gcount()));
    return head;
}

/// A database of SQLite begins so ("Database File Format", 1.3), whether it is the one in use or a
/// copy: nothing else keeps what was printed.
bool is_database(const std::string& file) {
    return head_of(file).starts_with("SQLite format 3");
}

/// A calendar (RFC 5545, 3.4) that something else than kitchen::calendar made: people add to
/// theirs.
bool is_others_calendar(const std::string& file) {
    const auto head = head_of(file);
    return head.starts_with("BEGIN:VCALENDAR") && head.find("PRODID:-//Thawslip//") == head.npos;
}

/// How render::svg begins a sheet.
bool is_own_sheet(const std::string& file) {
    const auto head = head_of(file);
    return head.starts_with("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=") &&
           head.find(" role=\"img\">\n<title>") != std::string::npos;
}

bool has_ending(const Output& output) {
    return output.endings.empty() || std::ranges::any_of(output.endings, [&](const auto& ending) {
               return output.file.ends_with(ending);
           });
}

std::string ending_fault(const Output& output) {
    return fmt::format("{} must end in {}", output.file, list_of(output.endings));
}

/// The archive's file and those that SQLite keeps beside it ("Temporary Files Used By SQLite", 2).
bool is_archive(const std::string& file, const std::string& archive) {
    return std::ranges::any_of(std::array{"", "-wal", "-shm", "-journal"}, [&](const char* suffix) {
        return !archive.empty() && is_same_place(file, archive + suffix);
    });
}

bool comes_with_program(const std::string& file) {
    try {
        const auto data = find_data_folder();
        return stands_in(file, data.layouts().string()) || stands_in(file, data.fonts().string());
    } catch (const SystemFailure&) {
        return false; // then there is nothing to be hurt
    }
}

bool is_any_of(const std::string& file, const std::vector<std::string>& others) {
    return std::ranges::any_of(others,
                               [&](const auto& other) { return is_same_place(file, other); });
}

} // namespace

std::string why_kept(const std::string& file, const Output& output, const Settings& settings) {
    if (is_any_of(file, output.made_from)) {
        return "a file that this is made from";
    }
    if (is_any_of(file, {settings.file, usual_settings_file()})) {
        return "the settings' file";
    }
    if (is_any_of(file, {settings.goods_file, settings.labels.stock, settings.finishing_cards.stock,
                         settings.cook_day_cards.stock, settings.lists.stock})) {
        return "a file that the settings name";
    }
    if (is_archive(file, archive_file_if_known(settings)) ||
        is_archive(file, archive_file_if_known({}))) {
        return "the archive's file, in which prints are recorded";
    }
    if (is_database(file)) {
        return "a database, an archive it may be";
    }
    if (is_others_calendar(file)) {
        return "a calendar that thawslip did not write";
    }
    return comes_with_program(file) ? "a file that comes with thawslip" : "";
}

namespace {

bool is_kept(const std::string& file, const Output& output, const Settings& settings,
             Console console) {
    const auto why = why_kept(file, output, settings);
    if (!why.empty()) {
        console.err << fmt::format("error: {} is {}; nothing written\n"
                                   "    hint: name another file\n",
                                   file, why);
    }
    return !why.empty();
}

bool is_there(const std::string& file) {
    std::error_code error;
    return fs::exists(fs::symlink_status(file, error));
}

/// Whoever looks at the folder would take them for sheets of this print.
void report_stale_sheets(const std::string& output, int sheets, Console console) {
    for (int sheet = sheets; is_own_sheet(sheet_file(output, sheet)); ++sheet) {
        console.err << fmt::format("caution: {} is of an earlier print and no sheet of this one: "
                                   "take it away\n",
                                   sheet_file(output, sheet));
    }
}

} // namespace

Output output_of(const PrintOptions& options) {
    Output output{options.output, print_endings, options.days};
    output.made_from.insert(output.made_from.end(), {options.look.stock, options.look.layout});
    return output;
}

std::optional<ExitStatus> refuse_output(const Output& output, const Settings& settings,
                                        Console console) {
    if (output.file.empty() || output.file == "-") {
        return std::nullopt;
    }
    if (is_kept(output.file, output, settings, console)) {
        return ExitStatus::Refused;
    }
    if (!has_ending(output)) {
        console.err << fmt::format("error: {}\n", ending_fault(output));
        return ExitStatus::Usage;
    }
    return std::nullopt;
}

std::string sheet_file(const std::string& output, int sheet) {
    const fs::path path{output};
    return sheet == 0
               ? output
               : (path.parent_path() / fmt::format("{}-{}.svg", path.stem().string(), sheet + 1))
                     .string();
}

std::optional<ExitStatus> refuse_sheets(const Output& output, int sheets, Overwrite overwrite,
                                        const Settings& settings, Console console) {
    if (!output.file.ends_with(".svg")) {
        return std::nullopt;
    }
    for (int sheet = 1; sheet < sheets; ++sheet) {
        const auto file = sheet_file(output.file, sheet);
        if (is_kept(file, output, settings, console)) {
            return ExitStatus::Refused;
        }
        if (overwrite == Overwrite::No && is_there(file) && !is_own_sheet(file)) {
            console.err << fmt::format("error: sheet {} would go to {}, which is another's file; "
                                       "nothing written\n"
                                       "    hint: name another file, or write over it with "
                                       "--overwrite\n",
                                       sheet + 1, file);
            return ExitStatus::Refused;
        }
    }
    report_stale_sheets(output.file, sheets, console);
    return std::nullopt;
}

} // namespace thawslip::app
