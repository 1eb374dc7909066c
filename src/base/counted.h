#pragma once

#include <concepts>
#include <fmt/format.h>
#include <string>
#include <string_view>

namespace thawslip {

/// "1 bag", "3 bags": for nouns that take an s.
template <std::integral Number>
std::string counted(Number count, std::string_view noun) {
    return fmt::format("{} {}{}", count, noun, count == 1 ? "" : "s");
}

} // namespace thawslip
