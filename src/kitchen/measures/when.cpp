#include "kitchen/measures/when.h"

#include "kitchen/measures/number_text.h"
#include "kitchen/measures/number_words.h"
#include "kitchen/texts/text.h"

#include <algorithm>
#include <fmt/format.h>
#include <optional>
#include <string>

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
    {"for serving", When::Anchor::AtServing},
    {"before serving", When::Anchor::AtServing},
    {"just before serving", When::Anchor::AtServing},
    {"right before serving", When::Anchor::AtServing},
    {"shortly before serving", When::Anchor::AtServing},
    {"at the table", When::Anchor::AtServing},
    {"at the beginning", When::Anchor::AtStart},
    {"from the start", When::Anchor::AtStart},
    {"from the beginning", When::Anchor::AtStart},
    // German and Spanish; cards say them in these words too.
    {"am Anfang", When::Anchor::AtStart},
    {"zu Beginn", When::Anchor::AtStart},
    {"nach der halben Garzeit", When::Anchor::Halfway},
    {"zur Hälfte", When::Anchor::Halfway},
    {"beim Anrichten", When::Anchor::AtServing},
    {"zum Anrichten", When::Anchor::AtServing},
    {"zum Servieren", When::Anchor::AtServing},
    {"beim Servieren", When::Anchor::AtServing},
    {"vor dem Servieren", When::Anchor::AtServing},
    {"kurz vor dem Servieren", When::Anchor::AtServing},
    {"direkt vor dem Servieren", When::Anchor::AtServing},
    {"vor dem Anrichten", When::Anchor::AtServing},
    {"kurz vor dem Anrichten", When::Anchor::AtServing},
    {"am Tisch", When::Anchor::AtServing},
    {"bei Tisch", When::Anchor::AtServing},
    {"von Anfang an", When::Anchor::AtStart},
    {"zu Anfang", When::Anchor::AtStart},
    {"al principio", When::Anchor::AtStart},
    {"al inicio", When::Anchor::AtStart},
    {"a la mitad", When::Anchor::Halfway},
    {"a media cocción", When::Anchor::Halfway},
    {"al servir", When::Anchor::AtServing},
    {"para servir", When::Anchor::AtServing},
    {"antes de servir", When::Anchor::AtServing},
    {"justo antes de servir", When::Anchor::AtServing},
    {"al emplatar", When::Anchor::AtServing},
    {"antes de emplatar", When::Anchor::AtServing},
    {"en el momento de servir", When::Anchor::AtServing},
    {"en la mesa", When::Anchor::AtServing},
    {"desde el principio", When::Anchor::AtStart},
};

/// A time stands before these.
constexpr std::string_view before_the_end[] = {
    "before the end", "before the end of cooking", "vor dem Ende",    "vor Ende",
    "vor Schluss",    "vor Ende der Garzeit",      "antes del final", "antes de terminar",
};

/// The end of cooking or the table: what goes in raw must not wait for the table.
constexpr std::string_view unclear_ends[] = {
    "at the end",  "at end",     "in the end", "towards the end", "am Ende",     "zum Ende",
    "zum Schluss", "am Schluss", "zuletzt",    "al final",        "al terminar", "al acabar",
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

/// A time in figures, or in words: "zehn Minuten", "half an hour".
Result<TimeRange, TextFault> time_at(std::string_view text, std::size_t at) {
    auto time = parse_time_range(text.substr(at));
    const auto words = time.ok() ? std::nullopt : number_in_words(text, at);
    if (!words || words->low != words->high) {
        return time;
    }
    const auto number = words->low.denominator == 1
                            ? fmt::format("{}", words->low.numerator)
                            : fmt::format("{}/{}", words->low.numerator, words->low.denominator);
    auto in_figures = parse_time_range(number + std::string{text.substr(words->end)});
    return in_figures.ok() ? in_figures : time;
}

/// Whether the text is these words alone.
bool is_all(std::string_view text, std::string_view words) {
    return past_words(text, words) == text.size();
}

Result<When, TextFault> timed(std::string_view text, std::size_t at, When::Anchor anchor) {
    const auto time = time_at(text, at);
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
        if (is_all(text, form.words)) {
            return When{form.anchor, std::chrono::minutes{0}};
        }
    }
    for (const auto words : before_the_end) {
        if (const auto end = before_words(text, words)) {
            return timed(text.substr(0, *end), skip_spaces(text, 0), When::Anchor::BeforeEnd);
        }
    }
    for (const auto& form : timed_forms) {
        if (const auto at = past_words(text, form.words)) {
            return timed(text, *at, form.anchor);
        }
    }
    if (std::ranges::any_of(unclear_ends, [&](auto words) { return is_all(text, words); })) {
        return Failure{TextFault{skip_spaces(text, 0),
                                 "expected the last minutes, where it still cooks, or at serving"}};
    }
    return Failure{
        TextFault{skip_spaces(text, 0),
                  "expected at the start, after or last with a time, halfway or at serving"}};
}

} // namespace thawslip::kitchen
