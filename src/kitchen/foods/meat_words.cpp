#include "kitchen/foods/meat_words.h"

#include "kitchen/day.h"
#include "kitchen/texts/phrases.h"
#include "kitchen/texts/text.h"

#include <algorithm>

namespace thawslip::kitchen {
namespace {

/// The rows that are also parts of longer words: German writes "Putenwurst" and "Brathähnchen".
const Rows& parts() {
    static const auto found = [] {
        auto all = rows_of(Section::Meat);
        std::erase_if(all, [](const LexiconRow* row) {
            return !row->phrase.starts_with('-') && !row->phrase.ends_with('-');
        });
        return all;
    }();
    return found;
}

/// The meat of a word by its beginning, or else by its end; "" for none, as where its end is no
/// meat, whatever it begins with: broth, fat, egg, nut, lettuce.
std::string_view meat_in(std::string_view word) {
    std::string_view begun;
    std::string_view ended;
    for (const auto* row : parts()) {
        if (row->phrase.starts_with('-') && word.ends_with(row->words)) {
            if (row->meaning == "nothing") {
                return {};
            }
            ended = ended.empty() ? row->meaning : ended;
        }
        if (begun.empty() && row->phrase.ends_with('-') && word.starts_with(row->words)) {
            begun = row->meaning;
        }
    }
    return begun.empty() ? ended : begun;
}

void note(MeatsNamed& named, std::string_view meat) {
    named.poultry |= meat == "poultry";
    named.pork |= meat == "pork";
    named.beef_or_lamb |= meat == "beef or lamb";
    named.game |= meat == "game";
    named.some |= meat == "some";
}

void note_text(MeatsNamed& named, const std::vector<std::string>& words) {
    for (const auto& match : phrase_book(Section::Meat, "").find(words)) {
        note(named, match.meaning);
    }
    for (const auto& word : words) {
        note(named, meat_in(word));
    }
}

} // namespace

MeatsNamed meats_in(const std::vector<std::string>& words) {
    MeatsNamed named;
    note_text(named, words);
    return named;
}

MeatsNamed meats_in(const Package& package) {
    auto named = meats_in(words_of(package.dish));
    for (const auto& ingredient : package.ingredients) {
        note_text(named, words_of(text_of(ingredient.add)));
    }
    for (const auto& finish : package.finish) {
        note_text(named, words_of(text_of(finish.add)));
    }
    return named;
}

} // namespace thawslip::kitchen
