#include "http/libmicrohttpd.h"

#include <dlfcn.h>
#include <optional>

namespace thawslip::http {
namespace {

template <class Function>
bool find(void* library, const char* name, Function& function) {
    // POSIX, dlsym(): a pointer to a function may be had through a pointer to an object.
    function = reinterpret_cast<Function>(dlsym(library, name));
    return function != nullptr;
}

std::optional<LibMicrohttpd> load() {
    // Version 12 is its ABI since 0.9.71; the library stays until the program ends.
    void* library = dlopen("libmicrohttpd.so.12", RTLD_LAZY | RTLD_LOCAL);
    if (library == nullptr) {
        return std::nullopt;
    }
    LibMicrohttpd functions;
    bool whole = true;
#define THAWSLIP_FIND(function) whole = find(library, #function, functions.function) && whole;
    THAWSLIP_MHD_FUNCTIONS(THAWSLIP_FIND)
#undef THAWSLIP_FIND
    return whole ? std::optional{functions} : std::nullopt;
}

} // namespace

const LibMicrohttpd* libmicrohttpd() {
    static const auto functions = load();
    return functions ? &*functions : nullptr;
}

} // namespace thawslip::http
