#include "wording/language.h"

#include "base/fill.h"
#include "base/list.h"
#include "toml/document.h"
#include "wording/shipped.h"
#include "wording/variant.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <fmt/format.h>
#include <utility>

namespace thawslip::wording {
namespace {

using Phrases = std::map<std::string, std::string, std::less<>>;

void collect(const toml::Document& document, const toml::Value& value, const std::string& key,
             Phrases& phrases, Diagnostics& faults) {
    if (const auto* members = std::get_if<toml::Members>(&value.content)) {
        for (const auto& member : members->list) {
            collect(document, member.value, key.empty() ? member.key : key + "." + member.key,
                    phrases, faults);
        }
    } else if (const auto* text = std::get_if<std::string>(&value.content)) {
        phrases.emplace(key, *text);
    } else {
        faults.push_back({Severity::Error,
                          document.span(value.place),
                          KeyPath{key},
                          fmt::format("\"{}\" is not a text", key),
                          {"every phrase of a language is a text in quotes"}});
    }
}

Language shipped(std::string_view code, std::string_view toml) {
    auto language = read_language(toml, fmt::format("{}.toml", code));
    assert(language.ok() && "a shipped language table is well-formed: a test reads them all");
    return std::move(language).value();
}

std::string with_words(std::string phrase, const Language& variant) {
    constexpr std::string_view table = "word.";
    for (const auto& key : variant.keys()) {
        if (!key.starts_with(table)) {
            continue;
        }
        const auto said = std::string_view{key}.substr(table.size());
        const auto instead = variant.say(key);
        for (auto at = phrase.find(said); at != std::string::npos;
             at = phrase.find(said, at + instead.size())) {
            phrase.replace(at, said.size(), instead);
        }
    }
    return phrase;
}

/// A language as it is said elsewhere: with the variant's phrases where it has any, else with its
/// words in place of the language's own.
Language varied(const Language& language, const Language& variant) {
    Phrases phrases;
    for (const auto& key : language.keys()) {
        phrases.emplace(key, variant.has(key) ? variant.say(key)
                                              : with_words(language.say(key), variant));
    }
    return Language{std::move(phrases)};
}

} // namespace

std::string Language::say(std::string_view key, const std::vector<std::string>& values) const {
    const auto found = phrases_.find(key);
    assert(found != phrases_.end() && "every language has every key");
    return found == phrases_.end() ? std::string{key} : fill(found->second, values);
}

std::string Language::say_count(std::string_view one, std::string_view several,
                                std::size_t count) const {
    return say(count == 1 ? one : several, {std::to_string(count)});
}

std::vector<std::string> Language::keys() const {
    return mapped(phrases_, [](const auto& phrase) { return phrase.first; });
}

Result<Language, Diagnostics> read_language(std::string_view text, std::string_view file) {
    Diagnostics faults;
    const auto document = toml::parse(std::string{text}, std::string{file}, faults);
    Phrases phrases;
    collect(document, document.root(), {}, phrases, faults);
    if (has_errors(faults)) {
        return Failure{std::move(faults)};
    }
    return Language{std::move(phrases)};
}

std::vector<std::string> shipped_languages() {
    return {"en", "es", "de"};
}

const Language& shipped_language(std::string_view code) {
    // Each is read when it is first asked for: a run seldom speaks more than one.
    if (code == "es") {
        static const Language spanish = shipped("es", spanish_words);
        return spanish;
    }
    if (code == "es-419") {
        static const Language american =
            varied(shipped_language("es"), shipped("es-419", spanish_of_americas_words));
        return american;
    }
    if (code == "de") {
        static const Language german = shipped("de", german_words);
        return german;
    }
    assert(code == "en" && "one of shipped_languages()");
    static const Language english = shipped("en", english_words);
    return english;
}

std::string said_where(std::string phrase, std::string_view language,
                       std::string_view allergen_list) {
    static const Language americas = shipped("es-419", spanish_of_americas_words);
    return language_where(language, allergen_list) == "es-419"
               ? with_words(std::move(phrase), americas)
               : phrase;
}

std::string_view language_where(std::string_view code, std::string_view allergen_list) {
    const bool is_american = allergen_list == "us" || allergen_list == "canada";
    return code == "es" && is_american ? "es-419" : code;
}

} // namespace thawslip::wording
