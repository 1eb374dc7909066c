#include "kitchen/when.h"

#include "kitchen/text.h"

#include <algorithm>
#include <array>

namespace thawslip::kitchen {
namespace {

struct Form {
    std::string_view words;
    When::Anchor anchor;
};

constexpr auto fixed_forms = std::to_array<Form>({
    {"at the start", When::Anchor::AtStart},
    {"at start", When::Anchor::AtStart},
    {"from the start", When::Anchor::AtStart},
    {"at the beginning", When::Anchor::AtStart},
    {"halfway", When::Anchor::Halfway},
    {"half-way", When::Anchor::Halfway},
    {"halfway through", When::Anchor::Halfway},
    {"at serving", When::Anchor::AtServing},
    {"when serving", When::Anchor::AtServing},
    {"to serve", When::Anchor::AtServing},
    {"on serving", When::Anchor::AtServing},
});

constexpr auto timed_forms = std::to_array<Form>({
    {"after ", When::Anchor::AfterStart},
    {"for the last ", When::Anchor::BeforeEnd},
    {"the last ", When::Anchor::BeforeEnd},
    {"in the last ", When::Anchor::BeforeEnd},
    {"last ", When::Anchor::BeforeEnd},
});

/// What may follow a time: "10 min before the end".
constexpr std::string_view before_end = " before the end";

/// In small letters, with one space between words.
std::string plain_words(std::string_view text) {
    std::string words;
    for (const char c : lower(text)) {
        if (c != ' ' || (!words.empty() && words.back() != ' ')) {
            words += c;
        }
    }
    while (words.ends_with(' ')) {
        words.pop_back();
    }
    return words;
}

/// One time, not a range; `skipped` bytes of the whole text stand before it.
Result<When, TextFault> at_offset(When::Anchor anchor, std::string_view text, std::size_t skipped) {
    const auto time = parse_time_range(text);
    if (!time) {
        return Failure{TextFault{skipped + time.fault().offset, time.fault().message}};
    }
    if (time.value().low != time.value().high) {
        return Failure{TextFault{skipped, "expected one time here, not a range"}};
    }
    return When{anchor, time.value().low};
}

Result<When, TextFault> read_when(std::string_view words) {
    for (const auto& form : fixed_forms) {
        if (words == form.words) {
            return When{form.anchor, std::chrono::minutes{0}};
        }
    }
    for (const auto& form : timed_forms) {
        if (words.starts_with(form.words)) {
            return at_offset(form.anchor, words.substr(form.words.size()), form.words.size());
        }
    }
    if (words.ends_with(before_end)) {
        return at_offset(When::Anchor::BeforeEnd, words.substr(0, words.size() - before_end.size()),
                         0);
    }
    return Failure{TextFault{0, "expected when it goes in"}};
}

} // namespace

std::vector<std::string> when_forms() {
    return {"at the start", "after 4 h", "halfway", "last 10 min", "at serving"};
}

Result<When, TextFault> parse_when(std::string_view text) {
    auto when = read_when(plain_words(text));
    if (when || when.fault().offset <= text.size()) {
        return when;
    }
    return Failure{TextFault{text.size(), when.fault().message}};
}

} // namespace thawslip::kitchen
