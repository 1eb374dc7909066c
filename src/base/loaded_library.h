#pragma once

#include <optional>

namespace thawslip {

/// A library of the system that is loaded when it is first needed, and stays until the program
/// ends.
class LoadedLibrary {
public:
    /// \param file as the loader knows it: "libcups.so.2"
    explicit LoadedLibrary(const char* file);

    bool is_there() const { return handle_ != nullptr; }

    /// Finds one of its functions. \returns whether it is there
    template <class Function>
    bool find(const char* name, Function& function) const {
        // POSIX, dlsym(): a pointer to a function may be had through a pointer to an object.
        function = reinterpret_cast<Function>(symbol(name));
        return function != nullptr;
    }

private:
    void* symbol(const char* name) const;

    void* handle_;
};

// For a library whose functions are named once, in a list X(one) X(other): what that list is given.
// clang-format off
#define THAWSLIP_MEMBER(function) decltype(&::function) function = nullptr; // NOLINT: a name
#define THAWSLIP_FIND(function) && library.find(#function, functions.function)
// clang-format on

/// A library's functions, by their own names; nothing where this system has not all of them.
/// \param find fills them in, and says whether it could
template <class Functions, class Find>
std::optional<Functions> load_functions(const char* file, const Find& find) {
    const LoadedLibrary library{file};
    Functions functions;
    return library.is_there() && find(library, functions) ? std::optional{functions} : std::nullopt;
}

} // namespace thawslip
