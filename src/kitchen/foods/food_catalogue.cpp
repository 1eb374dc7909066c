#include "kitchen/foods/food_catalogue.h"

#include "base/list.h"
#include "kitchen/foods/food_reading.h"
#include "kitchen/texts/text.h"

#include <algorithm>

namespace thawslip::kitchen {
namespace {

constexpr std::string_view forms[] = {"",      "piece",  "whole", "steak",   "chop",   "roast",
                                      "cubes", "ground", "offal", "stuffed", "sausage"};

/// All that an animal can be: raw in every form, then cooked.
void add_senses(std::vector<std::string>& kinds, std::string_view base) {
    for (const auto state : {FoodState::Raw, FoodState::Cooked}) {
        for (const auto form : forms) {
            add_kinds(kinds, senses_of({base, form, state}));
        }
    }
}

/// Whether the words of `part` stand in a row in `whole`; both are stems with single spaces.
bool holds_words(std::string_view whole, std::string_view part) {
    return (" " + std::string{whole} + " ").find(" " + std::string{part} + " ") !=
           std::string::npos;
}

std::vector<std::string> kinds_of(const FoodWord& word) {
    std::vector<std::string> kinds;
    if (word.role == FoodRole::Kind || word.role == FoodRole::Question) {
        kinds = meanings(word);
    } else if (word.role == FoodRole::Base && is_animal(word.means)) {
        add_senses(kinds, word.means);
    } else if (word.role == FoodRole::Base) {
        add_kinds(kinds, plant_senses({word.means}, FoodState::NotSaid));
    } else if (word.role == FoodRole::Form) {
        add_kinds(kinds, senses_of({"meat", word.means, FoodState::NotSaid}));
    }
    return kinds;
}

void add_bases(const StorageTable& table, std::string_view text, std::vector<std::string>& kinds) {
    for (const auto& match : match_foods(table.words, words_of(text))) {
        if (match.word != nullptr && match.word->role == FoodRole::Base &&
            is_animal(match.word->means)) {
            add_senses(kinds, match.word->means);
        }
    }
}

} // namespace

std::vector<std::string> all_kinds(const StorageTable& table) {
    auto kinds = storage_classes(table);
    for (const auto& row : table.unsuitable) {
        add_once(kinds, row.food);
    }
    return kinds;
}

std::vector<std::string> kinds_near(const StorageTable& table, std::string_view text) {
    std::vector<std::string> kinds;
    const auto reading = read_food(table, text);
    add_kinds(kinds,
              {reading.choices.begin(), reading.choices.end() - (reading.choices.size() > 1)});
    add_bases(table, text, kinds);
    add_kinds(kinds, reading.choices);
    const auto key = food_key(text);
    if (key.empty()) {
        return kinds;
    }
    for (const auto& kind : all_kinds(table)) {
        if (holds_words(food_key(kind), key)) {
            add_once(kinds, kind);
        }
    }
    for (const auto& word : table.words) {
        if (holds_words(word.key, key)) {
            add_all_once(kinds, kinds_of(word));
        }
    }
    const auto near = kinds.empty() ? nearest_food(table, text) : std::nullopt;
    if (near) {
        add_kinds(kinds, {*near});
    }
    return kinds;
}

std::map<std::string, std::vector<std::string>> words_by_kind(const StorageTable& table,
                                                              std::string_view language) {
    std::map<std::string, std::vector<std::string>> words;
    for (const auto& word : table.words) {
        if (word.language != language || word.role == FoodRole::Form) {
            continue;
        }
        for (const auto& kind : kinds_of(word)) {
            words[kind].emplace_back(word.written);
        }
    }
    return words;
}

} // namespace thawslip::kitchen
