#pragma once

#include "http/message.h"
#include "json/json.h"
#include "service/messages.h"

#include <exception>
#include <string>
#include <utility>

namespace thawslip::desk {

http::Response answer_with(const json::Json& value, int status = 200);

/// What messages look like to the page: ROUTES.md, at its top.
json::Json messages_for_page(const service::Messages& messages);

/// A refusal in words of ours.
http::Response refusal(int status, const std::string& text);
/// A refusal by what a use case says.
http::Response refusal(const service::Messages& messages);

/// Thrown where a request is understood and cannot be answered: that refusal is its answer.
struct Refused : std::exception {
    explicit Refused(service::Messages why) : messages{std::move(why)} {}
    service::Messages messages;
};

/// The value of an outcome. \throws Refused where it has none
template <class T>
const T& needed(const service::Outcome<T>& outcome) {
    if (!outcome) {
        throw Refused{outcome.messages};
    }
    return *outcome.value;
}

} // namespace thawslip::desk
