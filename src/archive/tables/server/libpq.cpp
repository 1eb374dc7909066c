#include "archive/tables/server/libpq.h"

#include <dlfcn.h>
#include <optional>

namespace thawslip::archive {
namespace {

template <class Function>
bool find_in(void* library, const char* name, Function& function) {
    // POSIX, dlsym(): a pointer to a function may be had through a pointer to an object.
    function = reinterpret_cast<Function>(dlsym(library, name));
    return function != nullptr;
}

std::optional<LibPq> load_libpq() {
    // Version 5 is libpq's ABI since PostgreSQL 8.2; the library stays until the program ends.
    void* library = dlopen("libpq.so.5", RTLD_LAZY | RTLD_LOCAL);
    if (library == nullptr) {
        return std::nullopt;
    }
    LibPq functions;
    bool whole = true;
#define THAWSLIP_FIND(function) whole = find_in(library, #function, functions.function) && whole;
    THAWSLIP_PQ_FUNCTIONS(THAWSLIP_FIND)
#undef THAWSLIP_FIND
    return whole ? std::optional{functions} : std::nullopt;
}

} // namespace

const LibPq* libpq() {
    static const auto functions = load_libpq();
    return functions ? &*functions : nullptr;
}

} // namespace thawslip::archive
