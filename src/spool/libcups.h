#pragma once

#include "base/loaded_library.h"

#include <cups/cups.h>
#include <cups/pwg.h>

namespace thawslip::spool {

// Every function of libcups that is used here, for the table below and for filling it.
// clang-format off
#define THAWSLIP_CUPS_FUNCTIONS(X) \
    X(cupsAddOption) X(cupsCancelDestJob) X(cupsCopyDestInfo) X(cupsCreateDestJob) \
    X(cupsEncryption) X(cupsFinishDestDocument) X(cupsFreeDestInfo) X(cupsFreeDests) \
    X(cupsFreeOptions) X(cupsGetDest) X(cupsGetDests2) X(cupsGetNamedDest) \
    X(cupsLastErrorString) X(cupsServer) X(cupsStartDestDocument) X(cupsWriteRequestData) \
    X(httpClose) X(httpConnect2) X(ippPort) X(pwgMediaForSize)
// clang-format on

/// The functions of libcups, by their own names. The library is loaded when a print is handed
/// over and not with the program: it brings TLS and a dozen further libraries, whose start alone
/// is a fifth of what ten labels cost, and most runs only write a file.
struct LibCups {
    THAWSLIP_CUPS_FUNCTIONS(THAWSLIP_MEMBER)
};

/// Loaded at the first call, for good. \returns nullptr where this system has no libcups
const LibCups* libcups();

} // namespace thawslip::spool
