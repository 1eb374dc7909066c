#pragma once

#include "app/commands.h"
#include "app/lay_out.h"
#include "archive/values.h"

#include <string>
#include <string_view>
#include <vector>

namespace thawslip::app {

/// How a print was made, as the archive keeps it: enough to make the same bytes again.
archive::PrintSetup print_setup(const std::string& what, const LaidOut& laid_out,
                                const PrintOptions& options, const Settings& settings);

/// The options and settings of a print in the archive, but for what to print and where to.
struct PrintedWith {
    PrintOptions options;
    Settings settings;
};
/// \throws SystemFailure where they cannot be read: a later Thawslip wrote them
PrintedWith printed_with(const archive::PrintSetup& setup);

/// What a print would be made with now, as PrintSetup::look has it: one line for the program, the
/// stock, each layout and each face, with a hash of its file.
std::string look_of(const LaidOut& laid_out, const PrintOptions& options);

/// "/orchard/my.toml has changed", "… is gone": which of the cook's own files are not on the disk
/// as they were kept.
std::vector<std::string> changed_files(const std::vector<archive::SetupFile>& files);

/// The names of what differs: "layout wide", "face ClearSans-Bold".
std::vector<std::string> changed_look(std::string_view then, std::string_view now);

} // namespace thawslip::app
