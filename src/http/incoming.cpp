#include "http/incoming.h"

#include "base/letters.h"
#include "http/refusal.h"
#include "http/target.h"

#include <algorithm>
#include <charconv>
#include <map>

namespace thawslip::http {
namespace {

Method method_of(const std::string& name) {
    static const std::map<std::string, Method> methods = {
        {"GET", Method::Get}, {"HEAD", Method::Head}, {"POST", Method::Post}, {"PUT", Method::Put}};
    const auto found = methods.find(name);
    return found == methods.end() ? Method::Other : found->second;
}

/// With the colon, the blank and the line's end behind it.
std::size_t size_of(const std::vector<std::pair<std::string, std::string>>& headers) {
    constexpr std::size_t marks = 4;
    std::size_t size = 0;
    for (const auto& [name, value] : headers) {
        size += name.size() + value.size() + marks;
    }
    return size;
}

/// A header given twice is one list (RFC 9110, section 5.3). Of those that are no list, no guard
/// takes a list for a right value.
std::map<std::string, std::string>
by_name(const std::vector<std::pair<std::string, std::string>>& headers) {
    std::map<std::string, std::string> named;
    for (const auto& [name, value] : headers) {
        const auto [place, is_new] = named.emplace(lower(name), value);
        if (!is_new) {
            place->second += ", " + value;
        }
    }
    return named;
}

std::ptrdiff_t times(const Head& head, std::string_view name) {
    return std::count_if(head.headers.begin(), head.headers.end(),
                         [&](const auto& header) { return same_but_for_case(header.first, name); });
}

/// RFC 9110, section 5.6.2: what names may have.
bool is_token(std::string_view name) {
    constexpr std::string_view marks = "!#$%&'*+-.^_`|~";
    return !name.empty() && std::all_of(name.begin(), name.end(), [&](char c) {
        return is_letter_or_digit(c) || marks.find(c) != std::string_view::npos;
    });
}

/// RFC 9110, section 5.5: any character but a control character, and tabs.
bool is_value(std::string_view value) {
    return std::none_of(value.begin(), value.end(), [](char c) {
        return (static_cast<unsigned char>(c) < ' ' && c != '\t') || c == '\x7F';
    });
}

std::optional<Response> refuse_header(const Head& head) {
    const bool all_are = std::all_of(head.headers.begin(), head.headers.end(), [](const auto& it) {
        return is_token(it.first) && is_value(it.second);
    });
    return all_are ? std::nullopt : std::optional{last_refusal(400, "this is no header")};
}

/// Where two readers could take the same bytes for different requests (RFC 9112, sections 3.2, 6.1
/// and 6.3), and what we do not know.
std::optional<Response> refuse_framing(const Head& head, const Request& request) {
    const auto coding = header_of(request, "transfer-encoding");
    if (!coding.empty() && !same_but_for_case(coding, "chunked")) {
        return last_refusal(501, "a body may be chunked, and coded in no other way");
    }
    const bool has_two_ends = times(head, "transfer-encoding") + times(head, "content-length") > 1;
    if (times(head, "host") > 1 || has_two_ends) {
        return last_refusal(400, "a header that may be there once is there twice");
    }
    return std::nullopt;
}

std::optional<Response> refuse_size(const Head& head, const Limits& limits) {
    if (head.target.size() > limits.url) {
        return last_refusal(414, "the address is too long");
    }
    if (size_of(head.headers) > limits.headers) {
        return last_refusal(431, "the headers are too long");
    }
    if (head.version != "HTTP/1.1" && head.version != "HTTP/1.0") {
        return last_refusal(505, "expected HTTP/1.1");
    }
    return std::nullopt;
}

/// The length that the head says of the body; 0 where it says none.
std::size_t length_said(const Request& request) {
    const auto text = header_of(request, "content-length");
    std::size_t length = 0;
    const auto read = std::from_chars(text.data(), text.data() + text.size(), length);
    return read.ec == std::errc::result_out_of_range ? std::string::npos : length;
}

Response too_much() {
    return last_refusal(413, "this is more than may be sent here");
}

std::optional<Response> refuse_head(Incoming& incoming, const Head& head, const Terms& terms) {
    if (auto refused = refuse_size(head, terms.limits)) {
        return refused;
    }
    if (auto refused = refuse_header(head)) {
        return refused;
    }
    auto& request = incoming.request;
    request.headers = by_name(head.headers);
    auto target = read_target(head.target);
    if (!target) {
        return last_refusal(400, "this is no address");
    }
    request.path = std::move(target->path);
    request.query = std::move(target->query);
    if (!target->host.empty()) { // RFC 9112, section 3.2.2: counts instead of the header
        request.headers["host"] = std::move(target->host);
    }
    if (auto refused = refuse_framing(head, request)) {
        return refused;
    }
    return refuse(request, terms.guard);
}

} // namespace

Incoming take_head(const Head& head, const Terms& terms) {
    Incoming incoming;
    incoming.request.method = method_of(head.method);
    incoming.request.peer = head.peer;
    incoming.refused = refuse_head(incoming, head, terms);
    const auto length = length_said(incoming.request);
    if (!incoming.refused) {
        incoming.body_limit = std::min(terms.limits.body, terms.body_limit(incoming.request.path));
        if (length > incoming.body_limit) {
            incoming.refused = too_much();
        }
    }
    // Who asks first, and is refused, sends no body (RFC 9110, section 10.1.1).
    const bool asks_first = incoming.request.headers.contains("expect");
    incoming.is_over = incoming.refused && (asks_first || length > terms.limits.read_over);
    return incoming;
}

void take_body(Incoming& incoming, std::string_view piece, const Limits& limits) {
    incoming.length += piece.size();
    if (!incoming.refused && incoming.length > incoming.body_limit) {
        incoming.refused = too_much();
        incoming.request.body = std::string{}; // its memory is given back
    }
    if (!incoming.refused) {
        incoming.request.body += piece;
    }
    incoming.is_over = incoming.refused && incoming.length > limits.read_over;
}

} // namespace thawslip::http
