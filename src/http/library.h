#pragma once

#include <dlfcn.h>

namespace thawslip::http {

/// Finds a function of a library that was loaded. \returns whether it is there
template <class Function>
bool find_function(void* library, const char* name, Function& function) {
    // POSIX, dlsym(): a pointer to a function may be had through a pointer to an object.
    function = reinterpret_cast<Function>(dlsym(library, name));
    return function != nullptr;
}

} // namespace thawslip::http
