#include "http/libgnutls.h"

#include "http/library.h"

#include <optional>

namespace thawslip::http {
namespace {

std::optional<LibGnutls> load_gnutls() {
    // Version 30 is its ABI since 3.4; the library stays until the program ends.
    void* library = dlopen("libgnutls.so.30", RTLD_LAZY | RTLD_LOCAL);
    if (library == nullptr) {
        return std::nullopt;
    }
    LibGnutls functions;
    bool whole = true;
#define THAWSLIP_FIND(function)                                                                    \
    whole = find_function(library, #function, functions.function) && whole;
    THAWSLIP_GNUTLS_FUNCTIONS(THAWSLIP_FIND)
#undef THAWSLIP_FIND
    return whole ? std::optional{functions} : std::nullopt;
}

} // namespace

const LibGnutls* libgnutls() {
    static const auto functions = load_gnutls();
    return functions ? &*functions : nullptr;
}

} // namespace thawslip::http
