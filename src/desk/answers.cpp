#include "desk/answers.h"

#include "desk/page_hints.h"
#include "json/value.h"

namespace thawslip::desk {
namespace {

json::Json message_for_page(const Diagnostic& what) {
    return {{"severity", severity_word(what.severity)},
            {"text", page_text(what.message, what.key)},
            {"hints", page_hints(what.hints)},
            {"key", what.key.text()},
            {"line", what.where.line},
            {"column", what.where.column},
            {"length", what.where.length}};
}

} // namespace

http::Response answer_with(const json::Json& value, int status) {
    return {status, "application/json", json::to_text(value)};
}

json::Json messages_for_page(const service::Messages& messages) {
    return json::list_of(messages.all(), [](const service::Message& message) {
        return message_for_page(message.what);
    });
}

http::Response refusal(int status, const std::string& text) {
    return answer_with(
        {{"messages",
          json::Json::array({message_for_page(Diagnostic{Severity::Error, {}, {}, text, {}})})}},
        status);
}

http::Response refusal(const service::Messages& messages) {
    constexpr int unprocessable = 422; // RFC 9110, 15.5.21: understood, and refused
    return answer_with({{"messages", messages_for_page(messages)}}, unprocessable);
}

} // namespace thawslip::desk
