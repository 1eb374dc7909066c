#pragma once

#include "service/days.h"
#include "service/messages.h"
#include "service/print/surroundings.h"
#include "service/settings.h"
#include "thawslip/kitchen.h"

#include <utility>
#include <vector>

namespace thawslip {

/// What a public Kitchen is made of.
struct KitchenParts {
    service::Settings settings;
    service::Surroundings around;
};

namespace library {

std::vector<Message> messages_of(const service::Messages& messages);
service::DayTexts texts_of(const std::vector<DayText>& days);

/// The outcome of a use case with its value turned into a public one by `convert`.
template <class T, class Convert>
auto outcome_of(service::Outcome<T> outcome, const Convert& convert) {
    Outcome<decltype(convert(std::move(*outcome.value)))> result;
    result.messages = messages_of(outcome.messages);
    if (outcome.value) {
        result.value.emplace(convert(std::move(*outcome.value)));
    }
    return result;
}

/// Nothing but an error.
template <class T>
Outcome<T> refused(std::string words, std::vector<std::string> hints = {}) {
    service::Messages messages;
    messages.error(std::move(words), std::move(hints));
    return {std::nullopt, messages_of(messages)};
}

} // namespace library
} // namespace thawslip
