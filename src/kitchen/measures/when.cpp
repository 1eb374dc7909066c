#include "kitchen/measures/when.h"

#include "kitchen/measures/number_text.h"
#include "kitchen/texts/text.h"

#include <optional>

namespace thawslip::kitchen {
namespace {

struct WhenForm {
    std::string_view words;
    When::Anchor anchor;
};

constexpr WhenForm fixed_forms[] = {
    {"at the start", When::Anchor::AtStart},
    {"at start", When::Anchor::AtStart},
    {"halfway through", When::Anchor::Halfway},
    {"half-way through", When::Anchor::Halfway},
    {"halfway", When::Anchor::Halfway},
    {"half-way", When::Anchor::Halfway},
    {"at serving", When::Anchor::AtServing},
    {"on serving", When::Anchor::AtServing},
    {"when serving", When::Anchor::AtServing},
    {"to serve", When::Anchor::AtServing},
    // German and Spanish; cards say them in these words too.
    {"am Anfang", When::Anchor::AtStart},
    {"zu Beginn", When::Anchor::AtStart},
    {"nach der halben Garzeit", When::Anchor::Halfway},
    {"zur Hälfte", When::Anchor::Halfway},
    {"beim Anrichten", When::Anchor::AtServing},
    {"zum Anrichten", When::Anchor::AtServing},
    {"zum Servieren", When::Anchor::AtServing},
    {"al principio", When::Anchor::AtStart},
    {"al inicio", When::Anchor::AtStart},
    {"a la mitad", When::Anchor::Halfway},
    {"a media cocción", When::Anchor::Halfway},
    {"al servir", When::Anchor::AtServing},
};

/// A time follows these.
constexpr WhenForm timed_forms[] = {
    {"after", When::Anchor::AfterStart},         {"for the last", When::Anchor::BeforeEnd},
    {"in the last", When::Anchor::BeforeEnd},    {"the last", When::Anchor::BeforeEnd},
    {"last", When::Anchor::BeforeEnd},           {"nach", When::Anchor::AfterStart},
    {"in den letzten", When::Anchor::BeforeEnd}, {"die letzten", When::Anchor::BeforeEnd},
    {"letzte", When::Anchor::BeforeEnd},         {"letzten", When::Anchor::BeforeEnd},
    {"tras", When::Anchor::AfterStart},          {"después de", When::Anchor::AfterStart},
    {"a los", When::Anchor::AfterStart},         {"en los últimos", When::Anchor::BeforeEnd},
    {"los últimos", When::Anchor::BeforeEnd},    {"últimos", When::Anchor::BeforeEnd},
    {"en las últimas", When::Anchor::BeforeEnd}, {"las últimas", When::Anchor::BeforeEnd},
    {"últimas", When::Anchor::BeforeEnd},
};

/// Where `text` goes on after `words`, however many spaces stand between them; nothing where it
/// begins otherwise.
std::optional<std::size_t> past_words(std::string_view text, std::string_view words) {
    auto at = skip_spaces(text, 0);
    for (const char c : words) {
        if (c == ' ') {
            const auto next = skip_spaces(text, at);
            if (next == at) {
                return std::nullopt;
            }
            at = next;
        } else if (lower(text.substr(at, 1)) == lower(std::string_view{&c, 1})) {
            ++at;
        } else {
            return std::nullopt;
        }
    }
    const bool whole_word = at == text.size() || space_at(text, at) > 0;
    return whole_word ? std::optional{skip_spaces(text, at)} : std::nullopt;
}

/// Where `text` stops before `words` at its end; nothing where it ends otherwise.
std::optional<std::size_t> before_words(std::string_view text, std::string_view words) {
    for (std::size_t at = 0; at < text.size(); ++at) {
        if (space_at(text, at) > 0 && past_words(text.substr(at), words) == text.size() - at) {
            return at;
        }
    }
    return std::nullopt;
}

Result<When, TextFault> timed(std::string_view text, std::size_t at, When::Anchor anchor) {
    const auto time = parse_time_range(text.substr(at));
    if (!time) {
        return Failure{TextFault{at + time.fault().offset, time.fault().message}};
    }
    if (time.value().low != time.value().high) {
        return Failure{TextFault{at, "expected one time here, not a range"}};
    }
    return When{anchor, time.value().low};
}

} // namespace

std::vector<std::string> when_forms() {
    return {"at the start", "after 4 h", "halfway", "last 10 min", "at serving"};
}

Result<When, TextFault> parse_when(std::string_view text) {
    for (const auto& form : fixed_forms) {
        if (past_words(text, form.words) == text.size()) {
            return When{form.anchor, std::chrono::minutes{0}};
        }
    }
    if (const auto end = before_words(text, "before the end")) {
        return timed(text.substr(0, *end), skip_spaces(text, 0), When::Anchor::BeforeEnd);
    }
    for (const auto& form : timed_forms) {
        if (const auto at = past_words(text, form.words)) {
            return timed(text, *at, form.anchor);
        }
    }
    return Failure{
        TextFault{skip_spaces(text, 0),
                  "expected at the start, after or last with a time, halfway or at serving"}};
}

} // namespace thawslip::kitchen
