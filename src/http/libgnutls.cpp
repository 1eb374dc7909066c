#include "http/libgnutls.h"

namespace thawslip::http {

const LibGnutls* libgnutls() {
    // Version 30 is its ABI since 3.4.
    static const auto loaded = load_functions<LibGnutls>(
        "libgnutls.so.30", [](const LoadedLibrary& library, LibGnutls& functions) {
            return true THAWSLIP_GNUTLS_FUNCTIONS(THAWSLIP_FIND);
        });
    return loaded ? &*loaded : nullptr;
}

} // namespace thawslip::http
