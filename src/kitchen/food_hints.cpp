// Which kind of food was meant by words that nobody knows. The rule that holds here: taking a hint
// never makes food less safe than it was written.

#include "base/nearest.h"
#include "kitchen/food_reading.h"
#include "kitchen/food_words.h"
#include "kitchen/fridge_life.h"
#include "kitchen/safe_minimum.h"
#include "kitchen/text.h"

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

/// The words of the list nearest to `text`, and those one slip further off.
std::vector<const FoodWord*> near_words(FoodWords words, const std::string& text) {
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
    std::vector<const FoodWord*> near;
    for (const auto& [slips, word] : found) {
        if (slips <= fewest + 1) {
            near.push_back(word);
        }
    }
    return near;
}

/// `text` with each way to read its words that nobody knows.
std::vector<std::string> likely_texts(const StorageTable& table, std::string_view text) {
    const auto words = words_of(text);
    std::vector<std::string> texts{""};
    for (const auto& match : match_foods(table.words, words)) {
        std::vector<std::string> parts;
        if (match.word != nullptr) {
            parts.emplace_back(match.word->written);
        } else if (words[match.first].size() <= longest_word) {
            for (const auto* near : near_words(table.words, food_stem(words[match.first]))) {
                parts.emplace_back(near->written);
            }
        }
        if (parts.empty() || texts.size() * parts.size() > most_readings) {
            continue;
        }
        std::vector<std::string> longer;
        for (const auto& begun : texts) {
            for (const auto& part : parts) {
                longer.push_back(begun + " " + part);
            }
        }
        texts = std::move(longer);
    }
    return texts;
}

/// The rawest kinds of every likely reading: of the words one by one, and of the whole as one
/// phrase or one name of the table.
std::vector<FoodChoice> likely_choices(const StorageTable& table, std::string_view text) {
    std::set<FoodChoice> choices;
    auto texts = likely_texts(table, text);
    if (text.size() <= longest_word) {
        for (const auto* near : near_words(table.words, food_key(text))) {
            texts.emplace_back(near->written);
        }
    }
    if (const auto name = nearest(text, storage_classes(table))) {
        texts.push_back(*name);
    }
    for (const auto& likely : texts) {
        if (auto reading = read_food(table, likely); !reading.choices.empty()) {
            choices.insert(std::move(reading.choices.front()));
        }
    }
    return {choices.begin(), choices.end()};
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
    return std::ranges::none_of(choice, [&](const std::string& kind) {
        const auto row = find_unsuitable(table, kind);
        return row && !row->why.empty();
    });
}

} // namespace

bool is_laxer(const StorageTable& table, const FoodChoice& one, const FoodChoice& other) {
    if (!may_be_frozen(table, one)) {
        return false;
    }
    return !may_be_frozen(table, other) || minimum_of(table, one) < minimum_of(table, other) ||
           last_frozen(table, one) > last_frozen(table, other) ||
           last_chilled(table, one) > last_chilled(table, other);
}

std::optional<FoodChoice> nearest_food(const StorageTable& table, std::string_view text) {
    auto choices = likely_choices(table, text);
    std::ranges::stable_sort(choices, {}, &FoodChoice::size); // one kind reads better than two
    for (const auto& choice : choices) {
        if (std::ranges::none_of(
                choices, [&](const FoodChoice& other) { return is_laxer(table, choice, other); })) {
            return choice;
        }
    }
    return std::nullopt;
}

} // namespace thawslip::kitchen
