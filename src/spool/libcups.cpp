#include "spool/libcups.h"

namespace thawslip::spool {

const LibCups* libcups() {
    // Version 2 is CUPS's ABI since 1.2.
    static const auto loaded = load_functions<LibCups>(
        "libcups.so.2", [](const LoadedLibrary& library, LibCups& functions) {
            return true THAWSLIP_CUPS_FUNCTIONS(THAWSLIP_FIND);
        });
    return loaded ? &*loaded : nullptr;
}

} // namespace thawslip::spool
