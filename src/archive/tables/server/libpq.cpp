#include "archive/tables/server/libpq.h"

namespace thawslip::archive {

const LibPq* libpq() {
    // Version 5 is libpq's ABI since PostgreSQL 8.2.
    static const auto loaded =
        load_functions<LibPq>("libpq.so.5", [](const LoadedLibrary& library, LibPq& functions) {
            return true THAWSLIP_PQ_FUNCTIONS(THAWSLIP_FIND);
        });
    return loaded ? &*loaded : nullptr;
}

} // namespace thawslip::archive
