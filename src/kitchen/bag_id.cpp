#include "kitchen/bag_id.h"

#include "base/letters.h"
#include "base/utf8.h"

#include <cassert>
#include <fmt/format.h>

namespace thawslip::kitchen {
namespace {

constexpr std::string_view symbols = "0123456789ABCDEFGHJKMNPQRSTVWXYZ*~$=U";
constexpr std::size_t payload_symbols = 8;
constexpr std::size_t kitchen_symbols = 3;
constexpr std::size_t id_symbols = payload_symbols + 1;
constexpr std::size_t long_id_symbols = kitchen_symbols + id_symbols;
constexpr unsigned bits_per_symbol = 5;
constexpr unsigned base = 32;
constexpr unsigned modulus = 37;
constexpr unsigned day_bits = 12;  // 4096 days
constexpr unsigned hash_bits = 28; // together the 40 bits of eight symbols

char symbol_of(std::uint64_t value) {
    return symbols[static_cast<std::size_t>(value)];
}

/// The value of a symbol, read as Crockford advises: case ignored, O is 0, I and L are 1;
/// `base` for what is no symbol.
unsigned value_of(char typed) {
    const char capital = to_upper(typed);
    const char meant = capital == 'O' ? '0' : capital == 'I' || capital == 'L' ? '1' : capital;
    const auto found = symbols.substr(0, base).find(meant);
    return found == std::string_view::npos ? base : static_cast<unsigned>(found);
}

/// Folds a hash to `hash_bits` by exclusive or, as its authors advise for short hashes.
std::uint64_t fold(std::uint64_t hash) {
    constexpr std::uint64_t mask = (std::uint64_t{1} << hash_bits) - 1;
    return (hash ^ (hash >> hash_bits) ^ (hash >> (2 * hash_bits))) & mask;
}

std::uint64_t day_class(Date date) {
    const auto days = std::chrono::sys_days{date}.time_since_epoch().count();
    return static_cast<std::uint64_t>(days) % (std::uint64_t{1} << day_bits);
}

std::string in_symbols(std::uint64_t number, std::size_t count) {
    std::string text(count, '0');
    for (std::size_t i = count; i-- > 0; number >>= bits_per_symbol) {
        text[i] = symbol_of(number % base);
    }
    return text;
}

/// \pre it has nine symbols, or twelve
std::string with_dashes(std::string_view id) {
    std::string text;
    for (std::size_t i = 0; i < id.size(); ++i) {
        text += i > 0 && i % 3 == 0 ? "-" : "";
        text += id[i];
    }
    return text;
}

/// What is hashed. The unit separator keeps "dish 1" bag 2 apart from "dish" bag 12. The bag number
/// comes first: what is hashed early is mixed best. The first batch of a kitchen that has neither
/// name nor number is named as bags were before batches had an identity.
std::string identity_of(const BagName& name, int attempt) {
    auto identity =
        fmt::format("{}\x1F{}\x1F{}\x1F{}", name.number, attempt, to_iso(name.made), name.dish);
    const auto& [kitchen_number, kitchen, number, size] = name.batch;
    if (name.batch != Batch{}) {
        identity += fmt::format("\x1F{}\x1F{}\x1F{}", number, kitchen_number, kitchen);
    }
    if (size != 0) {
        identity += fmt::format("\x1Fsize {}", size);
    }
    return identity;
}

bool is_passed_over(char c) {
    return c == '-' || c == ' ' || c == '\t' || c == '\r' || c == '\n';
}

Failure<BagIdFault> not_a_symbol(std::string_view typed, std::size_t offset) {
    std::string found = "a byte that is not UTF-8";
    if (!first_invalid_utf8(typed)) {
        auto end = offset;
        found = name_of(next_code_point(typed, end));
    }
    return Failure{BagIdFault{
        BagIdFault::Kind::NotASymbol, offset,
        fmt::format("{} never stands in a bag id; expected digits and letters other than U", found),
        0}};
}

Failure<BagIdFault> wrong_length(std::size_t length, std::size_t offset) {
    return Failure{BagIdFault{
        BagIdFault::Kind::WrongLength, offset,
        fmt::format(
            "{} letters and digits; expected {}, as in K7Q-2M4-9XW, or {} where the kitchen "
            "has a number",
            length, id_symbols, long_id_symbols),
        0}};
}

} // namespace

std::uint64_t fnv_1a(std::string_view bytes, std::uint64_t hash) {
    for (const char byte : bytes) {
        hash ^= static_cast<unsigned char>(byte);
        hash *= 0x00000100000001B3U;
    }
    return hash;
}

char crockford_check(std::string_view payload) {
    unsigned remainder = 0;
    for (const char symbol : payload) {
        assert(value_of(symbol) < base);
        remainder = (remainder * base + value_of(symbol)) % modulus;
    }
    return symbol_of(remainder);
}

std::string bag_id(const BagName& name, int attempt) {
    const auto kitchen =
        name.batch.kitchen_number == 0
            ? std::string{}
            : in_symbols(static_cast<std::uint64_t>(name.batch.kitchen_number), kitchen_symbols);
    for (auto hash = fnv_1a(identity_of(name, attempt));;
         hash = fnv_1a(fmt::format("{:016x}", hash))) {
        const auto payload =
            kitchen + in_symbols((fold(hash) << day_bits) | day_class(name.made), payload_symbols);
        const char check = crockford_check(payload);
        if (symbols.find(check) < base) {
            return with_dashes(payload + check);
        }
    }
}

std::string fresh_bag_id(const BagName& name, std::set<std::string>& taken) {
    for (int attempt = 0;; ++attempt) {
        if (const auto [id, is_new] = taken.insert(bag_id(name, attempt)); is_new) {
            return *id;
        }
    }
}

Result<std::string, BagIdFault> parse_bag_id(std::string_view typed) {
    std::string id;
    std::size_t last = 0;
    for (std::size_t i = 0; i < typed.size(); ++i) {
        if (is_passed_over(typed[i])) {
            continue;
        }
        const auto value = value_of(typed[i]);
        if (value == base) {
            return not_a_symbol(typed, i);
        }
        id += symbol_of(value);
        last = i;
    }
    if (id.size() != id_symbols && id.size() != long_id_symbols) {
        return wrong_length(id.size(), last);
    }
    // The check does not see leading zeros: what is meant is the same with them or without.
    if (id.size() == long_id_symbols && id.starts_with("000")) {
        id.erase(0, kitchen_symbols);
    }
    const char check = crockford_check(std::string_view{id}.substr(0, id.size() - 1));
    if (check == id.back()) {
        return with_dashes(id);
    }
    auto message = fmt::format("\"{}\" is not a bag id: its last character does not match the "
                               "others",
                               with_dashes(id));
    const bool may_stand = symbols.find(check) < base;
    if (may_stand) {
        message += fmt::format("; \"{}\" would", check);
    }
    return Failure{BagIdFault{BagIdFault::Kind::WrongCheck, last, std::move(message),
                              may_stand ? check : '\0'}};
}

} // namespace thawslip::kitchen
