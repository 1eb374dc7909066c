#pragma once

#include "files/data_folder.h"
#include "service/print/surroundings.h"

#include <functional>

namespace thawslip::files {

/// What a print asks for, from the disk and from the folder of what comes with the program, which
/// is looked for when something in it is asked for.
service::Surroundings surroundings_in(const std::function<DataFolder()>& folder,
                                      service::IdSource ids = {});

} // namespace thawslip::files
