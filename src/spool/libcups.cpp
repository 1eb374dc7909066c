#include "spool/libcups.h"

#include <dlfcn.h>
#include <optional>

namespace thawslip::spool {
namespace {

template <class Function>
bool find(void* library, const char* name, Function& function) {
    // POSIX, dlsym(): a pointer to a function may be had through a pointer to an object.
    function = reinterpret_cast<Function>(dlsym(library, name));
    return function != nullptr;
}

std::optional<LibCups> load() {
    // Version 2 is CUPS's ABI since 1.2; the library stays until the program ends.
    void* library = dlopen("libcups.so.2", RTLD_LAZY | RTLD_LOCAL);
    if (library == nullptr) {
        return std::nullopt;
    }
    LibCups cups;
    bool whole = true;
#define THAWSLIP_FIND(function) whole = find(library, #function, cups.function) && whole;
    THAWSLIP_CUPS_FUNCTIONS(THAWSLIP_FIND)
#undef THAWSLIP_FIND
    return whole ? std::optional{cups} : std::nullopt;
}

} // namespace

const LibCups* libcups() {
    static const auto cups = load();
    return cups ? &*cups : nullptr;
}

} // namespace thawslip::spool
