#include "base/loaded_library.h"

#include <dlfcn.h>

namespace thawslip {

LoadedLibrary::LoadedLibrary(const char* file) : handle_{::dlopen(file, RTLD_LAZY | RTLD_LOCAL)} {}

void* LoadedLibrary::symbol(const char* name) const {
    return ::dlsym(handle_, name);
}

} // namespace thawslip
