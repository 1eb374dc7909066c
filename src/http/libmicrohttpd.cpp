#include "http/libmicrohttpd.h"

namespace thawslip::http {

const LibMicrohttpd* libmicrohttpd() {
    // Version 12 is its ABI since 0.9.71.
    static const auto loaded = load_functions<LibMicrohttpd>(
        "libmicrohttpd.so.12", [](const LoadedLibrary& library, LibMicrohttpd& functions) {
            return true THAWSLIP_MHD_FUNCTIONS(THAWSLIP_FIND);
        });
    return loaded ? &*loaded : nullptr;
}

} // namespace thawslip::http
