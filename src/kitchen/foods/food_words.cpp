#include "kitchen/foods/food_words.h"

#include "base/list.h"
#include "kitchen/foods/food_senses.h"
#include "kitchen/texts/text.h"

#include <algorithm>
#include <optional>

namespace thawslip::kitchen {
namespace {

constexpr std::size_t shortest_head = 4; ///< of a compound; shorter ones are found everywhere
constexpr std::size_t shortest_front = 3;

bool take_ending(std::string& word, std::string_view ending, std::size_t least) {
    if (word.ends_with(ending) && word.size() >= ending.size() + least) {
        word.resize(word.size() - ending.size());
        return true;
    }
    return false;
}

const FoodWord* find_key(FoodWords words, std::string_view key) {
    const auto found = std::ranges::lower_bound(words, key, {}, &FoodWord::key);
    return found != words.end() && found->key == key ? &*found : nullptr;
}

const FoodWord* find_word(FoodWords words, const std::string& word) {
    if (const auto* found = find_key(words, food_stem(word))) {
        return found;
    }
    const auto plain = without_dots(word);
    return plain == word ? nullptr : find_key(words, food_stem(plain));
}

/// Whether any phrase goes on after `key`.
bool goes_on(FoodWords words, const std::string& key) {
    const auto next = std::ranges::lower_bound(words, key + " ", {}, &FoodWord::key);
    return next != words.end() && next->key.starts_with(key + " ");
}

/// The longest phrase that starts at `first`.
std::optional<FoodMatch> phrase_at(FoodWords words, const std::vector<std::string>& text,
                                   std::size_t first) {
    const auto* word = find_word(words, text[first]);
    auto longest = word == nullptr ? std::nullopt : std::optional{FoodMatch{first, 1, word}};
    auto key = food_stem(text[first]);
    for (auto i = first + 1; i < text.size() && goes_on(words, key); ++i) {
        key += " " + food_stem(text[i]);
        if (const auto* phrase = find_key(words, key)) {
            longest = FoodMatch{first, i + 1 - first, phrase};
        }
    }
    return longest;
}

/// The German word that a compound's front is, with or without the letters that join it on.
const FoodWord* front_of(FoodWords words, std::string_view front) {
    for (const std::string_view joint : {"", "s", "es", "n", "en", "er", "e"}) {
        auto word = std::string{front};
        if (joint.empty() || take_ending(word, joint, shortest_front)) {
            if (const auto* found = find_word(words, word); found && found->in_compounds) {
                return found;
            }
        }
    }
    return nullptr;
}

/// "Füllung", "Mischungen": whose end is no "Lunge" and no "Zunge". A German cut keeps its e, and
/// in the plural it is one of an animal that stands before it.
bool is_of_doing(const std::string& word, const FoodWord& head, const FoodWord* front) {
    return head.role == FoodRole::Form &&
           (word.ends_with("ung") || (word.ends_with("ungen") && front == nullptr));
}

/// A plant or a seasoning that goes on into what was taken for the head: "Fleischtomaten" of
/// "Fleischtomatensoße", which is not of meat, "Eierpflaumen" of "Eierpflaumenmus".
const FoodWord* longer_plant(FoodWords words, const std::string& word, std::size_t front_size) {
    for (auto size = word.size() - 1; size > front_size; --size) {
        const auto* found = front_of(words, word.substr(0, size));
        if (found != nullptr && (found->role == FoodRole::SaysNothing ||
                                 (found->role == FoodRole::Base && !is_animal(found->means)))) {
            return found;
        }
    }
    return nullptr;
}

/// The parts of a compound that are known, its head last; empty where the head is not.
std::vector<const FoodWord*> parts_of(FoodWords words, const std::string& word) {
    for (std::size_t i = shortest_front; i + shortest_head <= word.size(); ++i) {
        const auto* head = find_word(words, word.substr(i));
        if (head == nullptr || !head->in_compounds || head->role == FoodRole::SaysNothing) {
            continue;
        }
        const auto front = word.substr(0, i);
        const auto* known = front_of(words, front);
        if (is_of_doing(word, *head, known)) {
            continue;
        }
        if (known != nullptr) {
            const auto* plant = longer_plant(words, word, i);
            return {plant != nullptr ? plant : known, head};
        }
        if (auto parts = parts_of(words, front); !parts.empty()) {
            parts.push_back(head);
            return parts;
        }
        return {head};
    }
    return {};
}

std::vector<FoodMatch> match_words(FoodWords words, const std::vector<std::string>& text) {
    std::vector<FoodMatch> matches;
    for (std::size_t place = 0; place < text.size();) {
        if (const auto match = phrase_at(words, text, place)) {
            matches.push_back(*match);
            place += match->count;
            continue;
        }
        const auto parts = parts_of(words, text[place]);
        for (const auto* part : parts) {
            matches.push_back({place, 1, part});
        }
        if (parts.empty()) {
            matches.push_back({place, 1, nullptr});
        }
        ++place;
    }
    return matches;
}

bool is_base(const FoodMatch& match) {
    return match.word != nullptr && match.word->role == FoodRole::Base;
}

/// The foods inside a phrase for a cut: "pork belly" is cut as belly is, and it is pork.
void add_bases(FoodWords words, const std::vector<std::string>& text, const FoodMatch& phrase,
               std::vector<FoodMatch>& matches) {
    const bool is_cut = phrase.word != nullptr && phrase.word->role == FoodRole::Form;
    for (auto i = phrase.first; is_cut && i < phrase.first + phrase.count; ++i) {
        const FoodMatch inside{i, 1, find_word(words, text[i])};
        if (is_base(inside)) {
            matches.push_back(inside);
        }
    }
}

bool is_pot(const FoodMatch& match) {
    return match.word != nullptr && match.word->role == FoodRole::Kind &&
           is_one_of(match.word->means, {"stew", "casserole", "soup", "gravy or broth"});
}

bool is_meat(const FoodMatch& match) {
    return is_base(match) && is_one_of(match.word->means, {"meat", "poultry", "game"});
}

bool is_meat_or_cut(const FoodMatch& match) {
    return is_meat(match) || (match.word != nullptr && match.word->role == FoodRole::Form &&
                              (match.word->means == "steak" || match.word->means == "cubes"));
}

/// The words after which a dish says what meat is meant for.
bool is_for(const std::string& word) {
    return is_one_of(word, {"for", "para", "fur", "fuer", "zum"});
}

/// "stew beef", but not "curry chicken": the butcher's names for cubes.
bool is_butchers(const std::string& word) {
    return is_one_of(word, {"stew", "casserole", "goulash", "gulash"});
}

/// "stew beef", "beef for stew", "Rindfleisch für Gulasch": no dish, but meat cut for one.
void take_for_the_pot(const std::vector<std::string>& text, std::vector<FoodMatch>& matches) {
    static constexpr FoodWord cubes{"stew meat", FoodRole::Form, "cubes", "stew meat", "en", false};
    const bool names_meat = std::ranges::any_of(matches, is_meat);
    for (std::size_t i = 0; i < matches.size(); ++i) {
        const auto first = matches[i].first;
        const bool before_meat = i + 1 < matches.size() && is_meat_or_cut(matches[i + 1]) &&
                                 matches[i + 1].first > first && is_butchers(text[first]);
        if (is_pot(matches[i]) &&
            (before_meat || (names_meat && first > 0 && is_for(text[first - 1])))) {
            matches[i].word = &cubes;
        }
    }
}

/// "Beetroot tartare", "mushroom carpaccio": of a plant alone they name a cut and no meat.
void take_plants_alone(std::vector<FoodMatch>& matches) {
    const auto bases = [&](bool animal) {
        return std::ranges::any_of(matches, [animal](const FoodMatch& match) {
            return is_base(match) && is_animal(match.word->means) == animal;
        });
    };
    if (!bases(false) || bases(true)) {
        return;
    }
    for (auto& match : matches) {
        if (match.word != nullptr &&
            is_one_of(match.word->means, {"meat to be eaten raw", "fish to be eaten raw"})) {
            match.word = nullptr;
        }
    }
}

} // namespace

std::string food_stem(std::string_view word) {
    constexpr std::size_t least = 4;
    std::string stem{word};
    const auto shorter = [&stem] {
        return (!stem.ends_with("ss") && take_ending(stem, "s", least - 1)) ||
               take_ending(stem, "en", least) || take_ending(stem, "er", least) ||
               take_ending(stem, "e", least) ||
               // German: Nudeln, Eiern; not brain, which would be what braise is
               ((stem.ends_with("ln") || stem.ends_with("rn")) && take_ending(stem, "n", least));
    };
    while (shorter()) {
    }
    if (stem.size() >= least && stem.back() == 'y') {
        stem.back() = 'i';
    }
    if (!stem.empty() && stem.back() == 'z') {
        stem.back() = 'c';
    }
    return stem;
}

std::string without_dots(std::string_view word) {
    std::string plain;
    for (const char c : word) {
        const bool is_second = c == 'e' && !plain.empty() &&
                               std::string_view{"aou"}.find(plain.back()) != std::string_view::npos;
        if (!is_second) {
            plain += c;
        }
    }
    return plain;
}

std::string food_key(std::string_view text) {
    return joined(words_of(text), " ", food_stem);
}

std::vector<FoodMatch> match_foods(FoodWords words, const std::vector<std::string>& text) {
    auto matches = match_words(words, text);
    take_for_the_pot(text, matches);
    take_plants_alone(matches);
    if (std::ranges::any_of(matches, is_base)) {
        return matches; // "carne picada de pollo": what it is of is said for itself
    }
    std::vector<FoodMatch> with_bases;
    for (const auto& match : matches) {
        add_bases(words, text, match, with_bases);
        with_bases.push_back(match);
    }
    return with_bases;
}

std::vector<std::string> meanings(const FoodWord& word) {
    std::vector<std::string> kinds;
    for (std::size_t first = 0; first <= word.means.size();) {
        const auto end = std::min(word.means.find('|', first), word.means.size());
        kinds.emplace_back(word.means.substr(first, end - first));
        first = end + 1;
    }
    return kinds;
}

} // namespace thawslip::kitchen
