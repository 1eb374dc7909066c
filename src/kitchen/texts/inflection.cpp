#include "kitchen/texts/inflection.h"

#include "base/list.h"

#include <algorithm>
#include <span>
#include <utility>

namespace thawslip::kitchen {
namespace {

using WordForms = std::vector<std::string>;

std::string without(std::string_view word, std::size_t letters) {
    return std::string{word.substr(0, word.size() - letters)};
}

/// Adds `word` without each of `endings` that leaves at least `least` letters.
void strip(WordForms& forms, std::string_view word, std::span<const std::string_view> endings,
           std::size_t least) {
    for (const auto ending : endings) {
        if (word.size() >= least + ending.size() && word.ends_with(ending)) {
            add_once(forms, without(word, ending.size()));
        }
    }
}

void english(WordForms& forms, std::string_view word) {
    add_once(forms, singular(word));
    if (word.size() > 4 && word.ends_with("ves")) { // loaves, halves, knives
        add_once(forms, without(word, 3) + "f");
        add_once(forms, without(word, 3) + "fe");
    }
}

/// Number, then gender, and the pronouns that hang on a verb: "descongelarlo".
void spanish(WordForms& forms, std::string_view word) {
    static constexpr std::string_view plural[] = {"s", "es"};
    static constexpr std::string_view pronouns[] = {"lo", "la", "los", "las", "se"};
    if (word.size() > 4 && word.ends_with("ces")) {
        add_once(forms, without(word, 3) + "z");
    }
    strip(forms, word, plural, 3);
    const WordForms singulars = forms;
    for (const auto& form : singulars) {
        if (form.size() > 3 && form.ends_with('a')) {
            add_once(forms, without(form, 1) + "o");
        }
    }
    strip(forms, word, pronouns, 5);
}

/// "ae", "oe", "ue" for umlauts, as written where a keyboard has none; words_of makes "a" of "ä".
std::string with_umlauts(std::string_view word) {
    std::string text;
    for (std::size_t i = 0; i < word.size(); ++i) {
        text += word[i];
        const bool umlaut = i + 1 < word.size() && word[i + 1] == 'e' &&
                            (word[i] == 'a' || word[i] == 'o' || word[i] == 'u');
        i += umlaut ? 1 : 0;
    }
    return text;
}

void german(WordForms& forms, std::string_view word) {
    static constexpr std::string_view endings[] = {"n",  "e",  "en",  "s",  "er",
                                                   "es", "em", "ern", "nen"};
    const auto plain = with_umlauts(word);
    add_once(forms, plain);
    strip(forms, plain, endings, 3);
}

} // namespace

std::string singular(std::string_view word) {
    if (word.size() > 4 && word.ends_with("ies")) {
        return without(word, 3) + "y";
    }
    for (const std::string_view ending : {"ches", "shes", "sses", "xes", "oes"}) {
        if (word.size() > ending.size() && word.ends_with(ending)) {
            return without(word, 2);
        }
    }
    if (word.size() > 2 && word.ends_with('s') && !word.ends_with("ss")) {
        return without(word, 1);
    }
    return std::string{word};
}

std::vector<Form> dictionary_forms(std::string_view word) {
    static constexpr std::string_view french_plural[] = {"s", "x"};
    std::vector<Form> all{{std::string{word}, {}}};
    const auto take = [&all](const WordForms& forms, Tongue tongue) {
        for (std::size_t i = 1; i < forms.size(); ++i) {
            auto found = std::ranges::find(all, forms[i], &Form::text);
            if (found == all.end()) {
                found = all.insert(all.end(), {forms[i], {no_form, no_form, no_form, no_form}});
            }
            found->changes[static_cast<std::size_t>(tongue)] = static_cast<unsigned char>(i);
        }
    };
    const auto forms_in = [&](auto add_forms) {
        WordForms forms{std::string{word}};
        add_forms(forms, word);
        return forms;
    };
    take(forms_in(english), Tongue::English);
    take(forms_in(spanish), Tongue::Spanish);
    take(forms_in(german), Tongue::German);
    take(forms_in(
             [](WordForms& forms, std::string_view text) { strip(forms, text, french_plural, 3); }),
         Tongue::French);
    return all;
}

} // namespace thawslip::kitchen
