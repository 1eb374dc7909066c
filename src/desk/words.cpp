#include "desk/words.h"

#include "desk/toml_json.h"
#include "json/value.h"
#include "toml/document.h"

#include <array>
#include <utility>

namespace thawslip {
extern const std::string_view desk_words_en;
extern const std::string_view desk_words_es;
extern const std::string_view desk_words_de;
} // namespace thawslip

namespace thawslip::desk {

json::Json page_words(std::string_view language) {
    const std::array<std::pair<std::string_view, std::string_view>, 3> texts = {
        {{"en", desk_words_en}, {"es", desk_words_es}, {"de", desk_words_de}}};
    auto text = desk_words_en;
    for (const auto& [name, words] : texts) {
        text = name == language ? words : text;
    }
    Diagnostics faults; // none: a test reads all three
    return to_json(toml::parse(std::string{text}, "words", faults).root());
}

} // namespace thawslip::desk
