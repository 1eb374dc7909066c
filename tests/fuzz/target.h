#pragma once

#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string_view>

/// What libFuzzer hands each input to (LLVM, "libFuzzer – a library for coverage-guided fuzz
/// testing").
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace thawslip::fuzz {

inline std::string_view text_of(const std::uint8_t* data, std::size_t size) {
    return {reinterpret_cast<const char*>(data), size};
}

/// A promise that holds for every input. Stands in every build, unlike an assert.
inline void hold(bool promise, const char* words) {
    if (!promise) {
        std::fprintf(stderr, "broken promise: %s\n", words);
        std::abort();
    }
}

} // namespace thawslip::fuzz
