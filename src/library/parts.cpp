#include "library/parts.h"

#include "base/list.h"

namespace thawslip::library {
namespace {

Message::Kind kind_of(Severity severity) {
    switch (severity) {
    case Severity::Error: return Message::Kind::Error;
    case Severity::Caution: return Message::Kind::Caution;
    case Severity::Note: return Message::Kind::Note;
    }
    return Message::Kind::Error;
}

} // namespace

std::vector<Message> messages_of(const service::Messages& messages) {
    return mapped(messages.all(), [](const service::Message& message) {
        const auto& what = message.what;
        return Message{kind_of(what.severity),
                       what.where.file,
                       static_cast<int>(what.where.line),
                       static_cast<int>(what.where.column),
                       what.message,
                       what.hints,
                       message.text};
    });
}

service::DayTexts texts_of(const std::vector<DayText>& days) {
    service::DayTexts texts;
    for (const auto& day : days) {
        texts.texts.push_back({day.name, day.text});
    }
    return texts;
}

} // namespace thawslip::library
