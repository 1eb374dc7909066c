#include "kitchen/when.h"

#include <algorithm>
#include <array>

namespace thawslip::kitchen {
namespace {

struct Form {
    std::string_view words;
    When::Anchor anchor;
};

constexpr std::array<Form, 8> fixed_forms = {{
    {"at the start", When::Anchor::AtStart},
    {"at start", When::Anchor::AtStart},
    {"halfway", When::Anchor::Halfway},
    {"half-way", When::Anchor::Halfway},
    {"halfway through", When::Anchor::Halfway},
    {"at serving", When::Anchor::AtServing},
    {"when serving", When::Anchor::AtServing},
    {"to serve", When::Anchor::AtServing},
}};

constexpr std::array<Form, 4> timed_forms = {{
    {"after ", When::Anchor::AfterStart},
    {"for the last ", When::Anchor::BeforeEnd},
    {"the last ", When::Anchor::BeforeEnd},
    {"last ", When::Anchor::BeforeEnd},
}};

std::string plain_words(std::string_view text) {
    std::string words;
    for (const char c : text) {
        const char lower = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
        if (lower != ' ' || (!words.empty() && words.back() != ' ')) {
            words += lower;
        }
    }
    while (words.ends_with(' ')) {
        words.pop_back();
    }
    return words;
}

} // namespace

std::vector<std::string> when_forms() {
    return {"at the start", "after 4 h", "halfway", "last 10 min", "at serving"};
}

Result<When, TextFault> parse_when(std::string_view text) {
    const auto words = plain_words(text);
    for (const auto& form : fixed_forms) {
        if (words == form.words) {
            return When{form.anchor, std::chrono::minutes{0}};
        }
    }
    for (const auto& form : timed_forms) {
        if (!words.starts_with(form.words)) {
            continue;
        }
        const auto time = parse_time_range(std::string_view{words}.substr(form.words.size()));
        if (!time) {
            return Failure{TextFault{std::min(form.words.size() + time.fault().offset, text.size()),
                                     time.fault().message}};
        }
        if (time.value().low != time.value().high) {
            return Failure{TextFault{form.words.size(), "expected one time here, not a range"}};
        }
        return When{form.anchor, time.value().low};
    }
    return Failure{TextFault{0, "expected when it goes in"}};
}

} // namespace thawslip::kitchen
