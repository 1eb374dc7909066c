#pragma once

#include "archive/values.h"
#include "base/result.h"
#include "service/print/printing.h"

#include <string>
#include <string_view>
#include <vector>

namespace thawslip::service {

/// How a print was made, as the archive keeps it: enough to make the same bytes again. Files are
/// named as in `look`.
archive::PrintSetup print_setup(What what, const LaidOut& laid_out, const Look& look,
                                const Settings& settings);

/// The look and settings of a print in the archive.
struct PrintedWith {
    Look look;
    Settings settings;
};
/// Its fault says in words why they cannot be read: a later Thawslip wrote them.
Result<PrintedWith, std::string> printed_with(const archive::PrintSetup& setup);

/// What a print would be made with now, as PrintSetup::look has it: one line for the program, the
/// stock, each layout and each face, with a hash of its file.
std::string look_of(const LaidOut& laid_out);

/// The names of what differs from what it was then: "layout wide", "face ClearSans-Bold". What was
/// not part of it then, as another stock, is none of them.
std::vector<std::string> changed_look(std::string_view then, std::string_view now);

} // namespace thawslip::service
