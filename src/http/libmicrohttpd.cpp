#include "http/libmicrohttpd.h"

#include "http/library.h"

#include <optional>

namespace thawslip::http {
namespace {

std::optional<LibMicrohttpd> load_microhttpd() {
    // Version 12 is its ABI since 0.9.71; the library stays until the program ends.
    void* library = dlopen("libmicrohttpd.so.12", RTLD_LAZY | RTLD_LOCAL);
    if (library == nullptr) {
        return std::nullopt;
    }
    LibMicrohttpd functions;
    bool whole = true;
#define THAWSLIP_FIND(function)                                                                    \
    whole = find_function(library, #function, functions.function) && whole;
    THAWSLIP_MHD_FUNCTIONS(THAWSLIP_FIND)
#undef THAWSLIP_FIND
    return whole ? std::optional{functions} : std::nullopt;
}

} // namespace

const LibMicrohttpd* libmicrohttpd() {
    static const auto functions = load_microhttpd();
    return functions ? &*functions : nullptr;
}

} // namespace thawslip::http
