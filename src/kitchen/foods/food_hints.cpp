// Which kind of food was meant by words that nobody knows. The rule that holds here: taking a hint
// never makes food less safe than it was written.

#include "base/nearest.h"
#include "kitchen/cooking/safe_minimum.h"
#include "kitchen/foods/food_reading.h"
#include "kitchen/foods/food_words.h"
#include "kitchen/storage/fridge_life.h"
#include "kitchen/texts/text.h"

#include <algorithm>
#include <set>

namespace thawslip::kitchen {
namespace {

constexpr std::size_t longest_word = 40; ///< longer ones are no slips of the finger
constexpr std::size_t most_readings = 200;

/// How many slips are forgiven in a word.
std::size_t slips_in(std::string_view word) {
    return std::clamp<std::size_t>(word.size() / 3, 1, 3);
}

/// "cooked" is never read into a slip: it would make raw food keep as cooked food does.
bool may_be_meant(const FoodWord& word) {
    return word.role != FoodRole::SaysNothing &&
           (word.role != FoodRole::State || word.means == "raw");
}

/// A word of the list, and how many slips it is off.
struct NearWord {
    std::size_t slips;
    const FoodWord* word;
};

/// The words of the list nearest to `text`, and those one slip further off.
std::vector<NearWord> near_words(FoodWords words, const std::string& text) {
    std::vector<std::pair<std::size_t, const FoodWord*>> found;
    std::size_t fewest = slips_in(text);
    for (const auto& word : words) {
        const auto spread = word.key.size() > text.size() ? word.key.size() - text.size()
                                                          : text.size() - word.key.size();
        if (!may_be_meant(word) || spread > slips_in(text)) {
            continue;
        }
        const auto slips = edit_distance(text, word.key);
        if (slips <= slips_in(text)) {
            found.emplace_back(slips, &word);
            fewest = std::min(fewest, slips);
        }
    }
    std::vector<NearWord> near;
    for (const auto& [slips, word] : found) {
        if (slips <= fewest + 1) {
            near.push_back({slips, word});
        }
    }
    return near;
}

/// Whether so few slips are one of the keyboard for certain, and not another word.
bool is_close(std::size_t slips, std::string_view text) {
    return text.size() > 4 && slips <= (text.size() < 8 ? 1U : 2U);
}

/// A way to read a text; `close` where no word of it is merely guessed.
struct Likely {
    std::string text;
    bool close = true;
};

/// The ways to read one word: as it stands, or the words near it.
std::vector<Likely> readings_of(const StorageTable& table, const FoodMatch& match,
                                const std::string& word) {
    if (match.word != nullptr) {
        return {{std::string{match.word->written}}};
    }
    std::vector<Likely> near;
    const auto stem = food_stem(word);
    for (const auto& [slips, found] : near_words(table.words, stem)) {
        near.push_back({std::string{found->written}, is_close(slips, stem)});
    }
    return near;
}

/// `text` with each way to read its words that nobody knows.
std::vector<Likely> likely_texts(const StorageTable& table, std::string_view text) {
    const auto words = words_of(text);
    std::vector<Likely> texts{{}};
    for (const auto& match : match_foods(table.words, words)) {
        const auto& word = words[match.first];
        const auto parts =
            word.size() <= longest_word ? readings_of(table, match, word) : std::vector<Likely>{};
        if (parts.empty() || texts.size() * parts.size() > most_readings) {
            for (auto& begun : texts) {
                begun.close = false;
            }
            continue;
        }
        std::vector<Likely> longer;
        for (const auto& begun : texts) {
            for (const auto& part : parts) {
                longer.push_back({begun.text + " " + part.text, begun.close && part.close});
            }
        }
        texts = std::move(longer);
    }
    return texts;
}

/// `text` without its words that nobody knows.
std::string known_text(const StorageTable& table, std::string_view text) {
    std::string known;
    for (const auto& match : match_foods(table.words, words_of(text))) {
        if (match.word != nullptr) {
            known += " " + std::string{match.word->written};
        }
    }
    return known;
}

/// Whether the words that are known name an animal or a cut.
bool names_animal(const StorageTable& table, std::string_view text) {
    return std::ranges::any_of(
        match_foods(table.words, words_of(text)), [](const FoodMatch& match) {
            return match.word != nullptr &&
                   (match.word->role == FoodRole::Form ||
                    (match.word->role == FoodRole::Base && is_animal(match.word->means)));
        });
}

/// Raw food of animals, or what is not to be frozen at all: nothing laxer is taken for it.
bool is_careful(const StorageTable& table, const FoodChoice& choice) {
    return std::ranges::any_of(choice, [&](const std::string& kind) {
        return is_raw_kind(table, kind) || is_dangerous(table, kind);
    });
}

/// What may have been meant.
struct Meant {
    std::set<FoodChoice> all;      ///< nothing laxer than any of these is proposed
    std::set<FoodChoice> dishes;   ///< of an animal that is named: nothing less careful than these
    std::set<FoodChoice> proposed; ///< those of them that may be
};

/// Everything that `text` may be: its words one by one, those that are known alone, and the whole
/// as one phrase or one name of the table.
std::vector<Likely> ways_to_read(const StorageTable& table, std::string_view text) {
    auto texts = likely_texts(table, text);
    const auto matches = match_foods(table.words, words_of(text));
    const bool all_known =
        std::ranges::all_of(matches, [](const FoodMatch& match) { return match.word != nullptr; });
    if (!all_known && text.size() <= longest_word) {
        const auto key = food_key(text);
        for (const auto& [slips, word] : near_words(table.words, key)) {
            texts.push_back({std::string{word->written}, is_close(slips, key)});
        }
    }
    if (const auto name = nearest(text, storage_classes(table))) {
        texts.push_back({*name});
    }
    texts.push_back({known_text(table, text), false});
    return texts;
}

/// The rawest kinds of every likely reading. What is not raw is proposed only for a word that is
/// close, and is never meant where an animal is named.
Meant likely_choices(const StorageTable& table, std::string_view text) {
    Meant meant;
    const bool of_animal = names_animal(table, text);
    for (const auto& likely : ways_to_read(table, text)) {
        const auto reading = read_food(table, likely.text);
        if (reading.choices.empty()) {
            continue;
        }
        const auto& choice = reading.choices.front();
        const bool careful = is_careful(table, choice);
        (careful || !of_animal ? meant.all : meant.dishes).insert(choice);
        if (careful || (likely.close && !of_animal)) {
            meant.proposed.insert(choice);
        }
    }
    return meant;
}

double minimum_of(const StorageTable& table, const FoodChoice& choice) {
    Package package;
    package.food = choice;
    const auto minimum = safe_minimum(table, package);
    return minimum ? minimum->celsius : 0.0;
}

/// The last day, far off where no list has a row.
Date last_frozen(const StorageTable& table, const FoodChoice& choice) {
    constexpr Date made{std::chrono::year{2000}, std::chrono::January, std::chrono::day{1}};
    const auto row = shortest_lived(table, choice);
    return row ? low_end(*row, made) : add_months(made, std::chrono::months{1200});
}

std::chrono::days last_chilled(const StorageTable& table, const FoodChoice& choice) {
    const auto row = shortest_fridge_life(table, choice);
    return row ? row->high : std::chrono::days{365};
}

/// Nothing may be taken for what is dangerous to freeze, unless that was meant.
bool may_be_frozen(const StorageTable& table, const FoodChoice& choice) {
    return std::ranges::none_of(choice,
                                [&](const std::string& kind) { return is_dangerous(table, kind); });
}

} // namespace

bool is_less_careful(const StorageTable& table, const FoodChoice& one, const FoodChoice& other) {
    if (!may_be_frozen(table, one)) {
        return false;
    }
    return !may_be_frozen(table, other) || minimum_of(table, one) < minimum_of(table, other) ||
           last_chilled(table, one) > last_chilled(table, other);
}

bool is_laxer(const StorageTable& table, const FoodChoice& one, const FoodChoice& other) {
    return is_less_careful(table, one, other) ||
           (may_be_frozen(table, one) && last_frozen(table, one) > last_frozen(table, other));
}

std::optional<FoodChoice> nearest_food(const StorageTable& table, std::string_view text) {
    const auto meant = likely_choices(table, text);
    std::vector<FoodChoice> choices{meant.proposed.begin(), meant.proposed.end()};
    std::ranges::stable_sort(choices, {}, &FoodChoice::size); // one kind reads better than two
    for (const auto& choice : choices) {
        const auto laxer = [&](const FoodChoice& other) { return is_laxer(table, choice, other); };
        const auto careless = [&](const FoodChoice& other) {
            return is_less_careful(table, choice, other);
        };
        if (std::ranges::none_of(meant.all, laxer) &&
            std::ranges::none_of(meant.dishes, careless)) {
            return choice;
        }
    }
    return std::nullopt;
}

} // namespace thawslip::kitchen
