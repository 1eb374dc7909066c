#include "archive/address.h"

#include <algorithm>
#include <charconv>
#include <fmt/format.h>
#include <optional>
#include <vector>

namespace thawslip::archive {
namespace {

constexpr std::string_view schemes[] = {"postgresql://", "postgres://"};

std::size_t length_of_scheme(std::string_view place) {
    for (const auto scheme : schemes) {
        if (place.starts_with(scheme)) {
            return scheme.size();
        }
    }
    return 0;
}

/// Where the host begins: behind the last "@" before the parameters, whatever a password holds.
std::size_t start_of_host(std::string_view address) {
    const auto scheme = length_of_scheme(address);
    const auto at = address.substr(0, address.find('?')).rfind('@');
    return at == std::string_view::npos || at < scheme ? scheme : at + 1;
}

std::vector<std::string_view> parts_of(std::string_view text, char sign) {
    std::vector<std::string_view> parts;
    while (!text.empty()) {
        const auto end = std::min(text.find(sign), text.size());
        parts.push_back(text.substr(0, end));
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return parts;
}

/// RFC 3986, 2.1, percent-encoding; nothing where it is broken.
std::optional<std::string> decoded(std::string_view text) {
    std::string plain;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text[i] != '%') {
            plain += text[i];
            continue;
        }
        int byte = 0;
        const char* const digits = text.data() + i + 1;
        const auto left = std::min<std::size_t>(2, text.size() - i - 1);
        const auto read = std::from_chars(digits, digits + left, byte, 16);
        if (read.ptr != digits + 2 || byte == 0) {
            return std::nullopt;
        }
        plain += static_cast<char>(byte);
        i += 2;
    }
    return plain;
}

bool is_secret(std::string_view parameter) {
    // Read as libpq reads it: a name may be percent-encoded, too.
    const auto name = decoded(parameter.substr(0, parameter.find('='))).value_or("");
    return name.find("password") != std::string::npos && name != "passfile";
}

std::string with_parameters(std::string_view front, const std::vector<std::string_view>& kept) {
    return kept.empty() ? std::string{front} : fmt::format("{}?{}", front, fmt::join(kept, "&"));
}

std::vector<std::string_view> parameters_of(std::string_view address) {
    const auto question = address.find('?');
    return question == std::string_view::npos ? std::vector<std::string_view>{}
                                              : parts_of(address.substr(question + 1), '&');
}

/// Where a database is.
std::string identity_of(std::string_view written, const std::vector<std::string_view>& kept) {
    const auto host = start_of_host(written);
    std::string identity{written.substr(host, written.find('?') - host)};
    for (const std::string_view part : {"host=", "hostaddr=", "port=", "dbname="}) {
        const auto found = std::ranges::find_if(
            kept, [part](std::string_view one) { return one.starts_with(part); });
        identity += "\x1F";
        identity += found != kept.end() ? *found : std::string_view{};
    }
    return identity + "\x1F";
}

} // namespace

bool is_address(std::string_view place) {
    return length_of_scheme(place) != 0;
}

std::string shown_address(std::string_view address) {
    const auto scheme = length_of_scheme(address);
    const auto host = start_of_host(address);
    const auto user = address.substr(scheme, host - scheme);
    std::string shown{address.substr(0, scheme)};
    shown += user.substr(0, std::min(user.find(':'), user.find('@')));
    shown += host == scheme ? "" : "@";
    shown += address.substr(host, address.find('?') - host);
    auto kept = parameters_of(address);
    std::erase_if(kept, is_secret);
    return with_parameters(shown, kept);
}

Result<Address, std::string> parse_address(std::string_view written) {
    Address address{{}, {}, {}, shown_address(written)};
    const auto scheme = length_of_scheme(written);
    const auto user = written.substr(scheme, start_of_host(written) - scheme);
    auto kept = parameters_of(written);
    if (user.find(':') != std::string_view::npos || std::ranges::any_of(kept, is_secret)) {
        return Failure{fmt::format("the address {} has a password in it, which others would read; "
                                   "expected none: it belongs into ~/.pgpass, in a line "
                                   "host:port:database:user:password, mode 0600",
                                   address.shown)};
    }
    for (const auto parameter : kept) {
        if (parameter.starts_with("kitchen=")) {
            const auto name = decoded(parameter.substr(parameter.find('=') + 1));
            if (!name || name->empty()) {
                return Failure{fmt::format("the address {} names no kitchen; expected "
                                           "kitchen=NAME, with %20 for a space",
                                           address.shown)};
            }
            address.kitchen = *name;
        }
    }
    std::erase_if(kept, [](std::string_view one) { return one.starts_with("kitchen="); });
    address.identity = identity_of(written, kept) + address.kitchen;
    address.uri = with_parameters(written.substr(0, written.find('?')), kept);
    return address;
}

} // namespace thawslip::archive
