#include "app/desk/photo_child.h"

#include "app/desk/child_process.h"
#include "json/value.h"
#include "service/read/read_bags.h"

#include <fmt/format.h>
#include <iostream>
#include <iterator>
#include <memory>
#include <sys/resource.h>

// GCC says so by a macro, clang by a feature.
#if defined(__SANITIZE_ADDRESS__)
#define THAWSLIP_ADDRESS_SANITIZER
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
#define THAWSLIP_ADDRESS_SANITIZER
#endif
#endif

namespace thawslip::app {
namespace {

using Texts = service::Outcome<std::vector<std::string>>;
using json::Json;

constexpr rlim_t most_addresses = rlim_t{512} << 20U;
constexpr rlim_t most_seconds = 20;          // of the processor
constexpr std::chrono::seconds patience{60}; // of the clock, where others use the processor too
constexpr std::size_t most_answer = std::size_t{1} << 20U;

Texts refused(const std::string& message, std::vector<std::string> hints) {
    Texts texts;
    texts.messages.error(message, std::move(hints));
    return texts;
}

Json message_in_json(const Diagnostic& what) {
    return {
        {"error", what.severity == Severity::Error}, {"text", what.message}, {"hints", what.hints}};
}

void add_message(service::Messages& messages, const Json& message) {
    const auto text = message.at("text").get<std::string>();
    if (message.at("error").get<bool>()) {
        messages.error(text, message.at("hints").get<std::vector<std::string>>());
    } else {
        messages.caution(text, message.at("hints").get<std::vector<std::string>>());
    }
}

/// What the process wrote is believed no more than the picture is.
Texts texts_from(const std::string& answer) {
    const auto json = json::parsed(answer);
    Texts texts;
    for (const auto& message : json.at("messages")) {
        add_message(texts.messages, message);
    }
    if (!texts.messages.have_errors()) {
        texts.value = json.at("texts").get<std::vector<std::string>>();
    }
    return texts;
}

void set_limit(__rlimit_resource which, rlim_t most) {
    const rlimit limit{most, most};
    ::setrlimit(which, &limit);
}

void limit_this_process() {
#if !defined(THAWSLIP_ADDRESS_SANITIZER) // which reserves terabytes of addresses
    set_limit(RLIMIT_AS, most_addresses);
#endif
    set_limit(RLIMIT_CPU, most_seconds);
    set_limit(RLIMIT_CORE, 0);
    set_limit(RLIMIT_FSIZE, 0); // it writes no file
}

std::string picture_from_input() {
    return {std::istreambuf_iterator<char>{std::cin}, {}};
}

} // namespace

Texts PhotoReaders::texts_in(const std::string& picture) {
    places_.acquire();
    const std::shared_ptr<void> place{nullptr, [this](void*) { places_.release(); }};
    const auto ended = run_self({std::string{photo_child_word}}, picture, patience, most_answer);
    if (ended.ended_well) {
        try {
            return texts_from(ended.output);
        } catch (const Json::exception&) {
            // as if it had ended badly
        }
    }
    return refused("the picture takes too long to read, or is no picture that a camera makes",
                   {"photograph the label alone, from straight above",
                    "or type the id that stands beside or under the code"});
}

ExitStatus read_picture_for_desk() {
    limit_this_process();
    const auto texts = service::texts_in_photo(picture_from_input(), "photograph");
    Json messages = Json::array();
    for (const auto& message : texts.messages.all()) {
        messages.push_back(message_in_json(message.what));
    }
    std::cout << json::to_text(
        {{"texts", texts.value.value_or(std::vector<std::string>{})}, {"messages", messages}});
    return ExitStatus::Done;
}

} // namespace thawslip::app
