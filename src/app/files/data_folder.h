#pragma once

#include "files/data_folder.h"
#include "service/print/surroundings.h"

namespace thawslip::app {

/// The folder named by THAWSLIP_DATA; else share/thawslip beside the program's bin/, so that an
/// installed tree can be moved. (A build tree has links there to the source's own files.)
/// \throws SystemFailure when it is not there
files::DataFolder find_data_folder();

/// What a print asks for, from the disk and from that folder.
service::Surroundings surroundings(service::IdSource ids = {});

} // namespace thawslip::app
