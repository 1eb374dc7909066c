#include "app/desk/random_text.h"

#include "base/system_failure.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <string_view>
#include <sys/random.h>

namespace thawslip::app {
namespace {

constexpr std::string_view digits = "0123456789abcdef";
constexpr std::size_t bytes_of_a_text = 16;

} // namespace

std::string random_text() {
    std::array<unsigned char, bytes_of_a_text> bytes{};
    if (::getrandom(bytes.data(), bytes.size(), 0) != static_cast<ssize_t>(bytes.size())) {
        throw SystemFailure{"the system gives no random numbers, without which anybody could use "
                            "the desk"};
    }
    return fmt::format("{:02x}", fmt::join(bytes, ""));
}

bool is_random_text(const std::string& text) {
    return text.size() == 2 * bytes_of_a_text &&
           std::ranges::all_of(text, [](char c) { return digits.find(c) != digits.npos; });
}

} // namespace thawslip::app
