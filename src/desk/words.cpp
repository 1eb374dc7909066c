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

template <const std::string_view& text>
const json::Json& read_once() {
    static const auto read = [] {
        Diagnostics faults; // none: a test reads all of them
        return to_json(toml::parse(std::string{text}, "words", faults).root());
    }();
    return read;
}

struct Tables {
    std::string_view language;
    const json::Json& (*words)();
    const json::Json& (*names)(); ///< of what English calls as the program does: nullptr
};

const Tables& tables_of(std::string_view language) {
    static constexpr std::array<Tables, 3> all = {
        {{"en", read_once<desk_words_en>, nullptr},
         {"es", read_once<desk_words_es>, read_once<desk_words_names_es>},
         {"de", read_once<desk_words_de>, read_once<desk_words_names_de>}}};
    const auto* found = std::ranges::find(all, language, &Tables::language);
    return found == all.end() ? all.front() : *found;
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

json::Json page_words(std::string_view language, std::string_view allergen_list,
                      const std::string& table) {
    const auto& all = tables_of(language).words();
    auto words = table.empty() ? all : all.at(table);
    say_where(words, language, allergen_list);
    return words;
}

std::string name_on_page(Named what, const std::string& called, std::string_view language,
                         std::string_view allergen_list) {
    const auto names_of = tables_of(language).names;
    if (names_of == nullptr) {
        return {};
    }
    const auto& names = names_of().at(what == Named::Food ? "food" : "stock");
    const auto found = names.find(called);
    return found == names.end()
               ? std::string{}
               : wording::said_where(found->get<std::string>(), language, allergen_list);
}

} // namespace thawslip::desk
