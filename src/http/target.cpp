#include "http/target.h"

#include "base/letters.h"
#include "base/utf8.h"

#include <algorithm>

namespace thawslip::http {
namespace {

enum class Plus { Plus, Space };

std::optional<int> hexadecimal(char c) {
    if (is_digit(c)) {
        return c - '0';
    }
    const char small = to_lower(c);
    return small >= 'a' && small <= 'f' ? std::optional{small - 'a' + 10} : std::nullopt;
}

/// The byte that two digits mean.
std::optional<char> byte_of(std::string_view digits) {
    if (digits.size() < 2) {
        return std::nullopt;
    }
    const auto high = hexadecimal(digits[0]);
    const auto low = hexadecimal(digits[1]);
    return high && low ? std::optional{static_cast<char>(*high * 16 + *low)} : std::nullopt;
}

std::optional<std::string> decoded(std::string_view text, Plus plus) {
    std::string bytes;
    for (std::size_t at = 0; at < text.size(); ++at) {
        auto byte = std::optional{text[at]};
        if (text[at] == '%') {
            byte = byte_of(text.substr(at + 1, 2));
            at += 2;
        } else if (text[at] == '+' && plus == Plus::Space) {
            byte = ' ';
        }
        if (!byte || *byte == '\0') {
            return std::nullopt;
        }
        bytes += *byte;
    }
    return first_invalid_utf8(bytes) ? std::nullopt : std::optional{std::move(bytes)};
}

/// RFC 3986, section 2: a URI is of ASCII characters, and no control character or blank is one; a
/// fragment is never sent (RFC 9110, section 7.1).
bool may_be_sent(char c) {
    return c > ' ' && c < '\x7F' && c != '#';
}

bool has_control(std::string_view path) {
    return std::any_of(path.begin(), path.end(),
                       [](char c) { return static_cast<unsigned char>(c) < ' ' || c == '\x7F'; });
}

std::optional<std::map<std::string, std::string>> read_query(std::string_view text) {
    std::map<std::string, std::string> query;
    while (!text.empty()) {
        const auto pair = text.substr(0, text.find('&'));
        text.remove_prefix(std::min(text.size(), pair.size() + 1));
        const auto equals = std::min(pair.find('='), pair.size());
        const auto name = decoded(pair.substr(0, equals), Plus::Space);
        const auto value = decoded(pair.substr(std::min(pair.size(), equals + 1)), Plus::Space);
        if (!name || !value) {
            return std::nullopt;
        }
        if (!pair.empty()) {
            query[*name] = *value;
        }
    }
    return query;
}

/// Takes "http://HOST" from the beginning: a server must know this form too, though only proxies
/// send it (RFC 9112, section 3.2.2).
std::string take_host(std::string_view& text) {
    constexpr std::string_view scheme = "http://";
    if (!same_but_for_case(text.substr(0, scheme.size()), scheme)) {
        return {};
    }
    const auto end = std::min(text.find_first_of("/?", scheme.size()), text.size());
    auto host = std::string{text.substr(scheme.size(), end - scheme.size())};
    text.remove_prefix(end);
    return host;
}

} // namespace

std::optional<Target> read_target(std::string_view text) {
    if (!std::all_of(text.begin(), text.end(), may_be_sent)) {
        return std::nullopt;
    }
    Target target;
    target.host = take_host(text);
    const auto question = std::min(text.find('?'), text.size());
    const bool is_left_out = question == 0 && !target.host.empty();
    if (!text.starts_with('/') && !is_left_out) {
        return std::nullopt;
    }
    auto path = decoded(text.substr(0, question), Plus::Plus);
    auto query = read_query(text.substr(std::min(text.size(), question + 1)));
    if (!path || !query || has_control(*path)) {
        return std::nullopt;
    }
    target.path = path->empty() ? "/" : *std::move(path); // RFC 9112, section 3.2.1
    target.query = *std::move(query);
    return target;
}

} // namespace thawslip::http
