#include "desk/phones/pairing.h"

#include "base/letters.h"
#include "http/guard.h"

#include <algorithm>

namespace thawslip::desk {
namespace {

constexpr std::string_view symbols = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
constexpr std::size_t length = 8;

std::size_t digit_of(char c) {
    return static_cast<std::size_t>(is_digit(c) ? c - '0' : to_lower(c) - 'a' + 10);
}

char as_it_looks(char c) {
    switch (to_upper(c)) {
    case 'O': return '0';
    case 'I':
    case 'L': return '1';
    default: return to_upper(c);
    }
}

} // namespace

std::string pairing_code(std::string_view random) {
    std::string code;
    for (std::size_t at = 0; at < length; ++at) { // 32 divides the 256 that two digits can be
        const auto byte = digit_of(random[2 * at]) * 16 + digit_of(random[2 * at + 1]);
        code += symbols[byte % symbols.size()];
    }
    return code.insert(length / 2, 1, '-');
}

std::string typed_code(std::string_view text) {
    std::string code;
    for (const char c : text) {
        if (c != '-' && c != ' ') {
            code += as_it_looks(c);
        }
    }
    return code;
}

Pairing::Pairing(std::string code, SteadyTime now) : code_{std::move(code)}, until_{now + lasts} {}

bool Pairing::is_open(SteadyTime now) const {
    return tries_left_ > 0 && now < until_;
}

std::chrono::seconds Pairing::left(SteadyTime now) const {
    return is_open(now) ? std::chrono::ceil<std::chrono::seconds>(until_ - now)
                        : std::chrono::seconds{0};
}

bool Pairing::lets_in(std::string_view typed, SteadyTime now) {
    if (!is_open(now)) {
        tries_left_ = 0;
        return false;
    }
    const bool is_right = http::is_same_key(typed_code(typed), typed_code(code_));
    tries_left_ = is_right ? 0 : tries_left_ - 1;
    return is_right;
}

bool Tries::allow(SteadyTime now) {
    if (count_ == 0 || now - since_ >= span_) {
        since_ = now;
        count_ = 0;
    }
    count_ = std::min(count_ + 1, most_ + 1);
    return count_ <= most_;
}

} // namespace thawslip::desk
