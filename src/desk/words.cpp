#include "desk/words.h"

#include "desk/toml_json.h"
#include "json/value.h"
#include "toml/document.h"
#include "wording/variant.h"

#include <algorithm>
#include <array>

namespace thawslip {
extern const std::string_view desk_words_en;
extern const std::string_view desk_words_es;
extern const std::string_view desk_words_de;
extern const std::string_view desk_words_names_es;
extern const std::string_view desk_words_names_de;
} // namespace thawslip

namespace thawslip::desk {
namespace {

struct Tables {
    std::string_view language;
    std::string_view words;
    std::string_view names; ///< of what English calls as the program does: empty
};

const Tables& tables_of(std::string_view language) {
    static const std::array<Tables, 3> all = {{{"en", desk_words_en, ""},
                                               {"es", desk_words_es, desk_words_names_es},
                                               {"de", desk_words_de, desk_words_names_de}}};
    const auto* found = std::ranges::find(all, language, &Tables::language);
    return found == all.end() ? all.front() : *found;
}

json::Json read(std::string_view text) {
    Diagnostics faults; // none: a test reads all of them
    return to_json(toml::parse(std::string{text}, "words", faults).root());
}

void say_where(json::Json& words, std::string_view language, std::string_view allergen_list) {
    for (auto& word : words) {
        if (word.is_string()) {
            word = wording::said_where(word.get<std::string>(), language, allergen_list);
        } else {
            say_where(word, language, allergen_list);
        }
    }
}

} // namespace

json::Json page_words(std::string_view language, std::string_view allergen_list) {
    auto words = read(tables_of(language).words);
    say_where(words, language, allergen_list);
    return words;
}

std::string name_on_page(Named what, const std::string& called, std::string_view language,
                         std::string_view allergen_list) {
    static const auto spanish = read(desk_words_names_es);
    static const auto german = read(desk_words_names_de);
    if (tables_of(language).names.empty()) {
        return {};
    }
    const auto& names =
        (language == "es" ? spanish : german).at(what == Named::Food ? "food" : "stock");
    const auto found = names.find(called);
    return found == names.end()
               ? std::string{}
               : wording::said_where(found->get<std::string>(), language, allergen_list);
}

} // namespace thawslip::desk
