#pragma once

#include "app/data_folder.h"
#include "app/surroundings.h"

#include <functional>

namespace thawslip::app {

/// What a print asks for, from the disk and from the folder of what comes with the program, which
/// is looked for when something in it is asked for.
Surroundings surroundings(IdSource ids = {});

/// The same from another folder.
Surroundings surroundings_in(const std::function<DataFolder()>& folder, IdSource ids = {});

} // namespace thawslip::app
