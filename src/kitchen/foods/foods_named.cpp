#include "kitchen/foods/foods_named.h"

#include "base/list.h"
#include "kitchen/foods/chopped_plant.h"
#include "kitchen/foods/food_reading.h"
#include "kitchen/foods/food_words.h"
#include "kitchen/texts/lexicon.h"
#include "kitchen/texts/phrases.h"
#include "kitchen/texts/text.h"

#include <algorithm>
#include <optional>
#include <set>

namespace thawslip::kitchen {
namespace {

enum class Text { Dish, Ingredient, Step };

struct Source {
    std::string text;
    Text sort = Text::Dish;
    KeyPath where;
};

/// A text taken apart.
struct Parsed {
    const StorageTable& table;
    const Source& source;
    std::vector<std::string> words;
    std::vector<FoodMatch> matches;
};

std::size_t distance(const FoodMatch& a, const FoodMatch& b) {
    return a.first > b.first ? a.first - b.first : b.first - a.first;
}

bool is_role(const FoodMatch& match, FoodRole role) {
    return match.word != nullptr && match.word->role == role;
}

bool is_animal_named(const FoodMatch& match) {
    return is_role(match, FoodRole::Base) && is_animal(match.word->means);
}

bool is_broth(const FoodMatch& match) {
    return is_role(match, FoodRole::Kind) && match.word->means == "gravy or broth";
}

/// "chicken stock", "caldo de pollo", "Hühnerbrühe": the meat is not in it.
bool is_of_broth(const Parsed& text, const FoodMatch& base) {
    return std::ranges::any_of(text.matches, [&](const FoodMatch& other) {
        if (!is_broth(other)) {
            return false;
        }
        const auto end = other.first + other.count;
        return other.first == base.first || other.first == base.first + base.count ||
               (end + 1 == base.first &&
                is_one_of(text.words[end], {"of", "de", "von", "vom", "aus"}));
    });
}

bool is_denied(const Parsed& text, std::size_t position) {
    return position > 0 && is_role(text.matches[position - 1], FoodRole::NoAnimal);
}

/// The nearest word for how it is cut, at most three words off.
const FoodMatch* form_of(const Parsed& text, const FoodMatch& base) {
    constexpr std::size_t reach = 3;
    const FoodMatch* nearest = nullptr;
    for (const auto& match : text.matches) {
        if (is_role(match, FoodRole::Form) && distance(match, base) <= reach &&
            (nearest == nullptr || distance(match, base) < distance(*nearest, base))) {
            nearest = &match;
        }
    }
    return nearest;
}

/// Steps speak of cooking all the time: there only the word right before the food counts.
bool counts_for(const Parsed& text, const FoodMatch& state, const FoodMatch& base) {
    return text.source.sort != Text::Step || state.first + state.count == base.first;
}

FoodState state_said_of(const Parsed& text, const FoodMatch& base) {
    auto state = FoodState::NotSaid;
    for (const auto& match : text.matches) {
        if (!is_role(match, FoodRole::State) || !counts_for(text, match, base) ||
            state == FoodState::Raw) {
            continue;
        }
        state = state_named(match.word->means);
    }
    return state;
}

/// Whether the dish itself is raw: a soup may be fresh, and is cooked all the same.
bool says_raw_dish(const Parsed& text) {
    return text.source.sort != Text::Step &&
           std::ranges::any_of(text.matches, [](const FoodMatch& match) {
               return is_role(match, FoodRole::State) && match.word->means == "raw";
           });
}

/// The text's own words from one match to another.
std::string words_between(const Parsed& text, const FoodMatch& a, const FoodMatch& b) {
    const auto first = std::min(a.first, b.first);
    const auto end = std::max(a.first + a.count, b.first + b.count);
    return words_at(text.words, first, end - first);
}

/// All that an animal can be, raw and cooked; of a form that is said only what has that form.
FoodChoice possible_kinds(std::string_view base, std::string_view form) {
    static constexpr std::string_view forms[] = {"",     "piece", "whole", "steak",
                                                 "chop", "roast", "cubes", "ground"};
    FoodChoice kinds;
    for (const auto state : {FoodState::Raw, FoodState::Smoked, FoodState::Cooked}) {
        for (const auto each : forms) {
            add_kinds(kinds, senses_of({base, form.empty() ? each : form, state}));
        }
    }
    return kinds;
}

NamedFood animal(const Parsed& text, const FoodMatch& base) {
    const auto* form = form_of(text, base);
    const auto state = state_said_of(text, base);
    const auto form_name = form == nullptr ? std::string_view{} : form->word->means;
    NamedFood named{words_between(text, base, form == nullptr ? base : *form),
                    {},
                    possible_kinds(base.word->means, form_name),
                    true,
                    state == FoodState::Raw,
                    text.source.where};
    if (base.word->means == "egg") {
        named.is_uncooked_egg = state == FoodState::NotSaid || state == FoodState::Raw;
        // Eggs in a dish ask for what an egg dish asks for, raw ones for no less.
        named.kinds = {"egg casserole"};
        if (state == FoodState::Raw) {
            named.kinds.emplace_back("beaten eggs");
        }
    } else {
        named.kinds = senses_of({base.word->means, form_name, state}).front();
    }
    return named;
}

/// Whether a kind counts that a text names outright: of a dish all that spoil; of what goes into
/// it not the stock and the sauce, which are cooked with the rest.
bool counts(const Parsed& text, const std::string& food) {
    const auto sort = kind_of(text.table, food);
    if (text.source.sort == Text::Step) {
        return false;
    }
    return is_dangerous(text.table, food) ||
           (sort != FoodKind::Other &&
            (text.source.sort == Text::Dish || sort != FoodKind::CookedDish));
}

bool is_animal_among(const Parsed& text) {
    return std::ranges::any_of(text.matches, is_animal_named);
}

/// Whether animals or plants are named, or that there is no meat.
bool says_of_what(const Parsed& text) {
    return std::ranges::any_of(text.matches, [](const FoodMatch& match) {
        return is_role(match, FoodRole::Base) || is_role(match, FoodRole::NoAnimal);
    });
}

/// What a cooked dish is that is said to be raw, where no animal says it better.
std::optional<NamedFood> raw_dish(const Parsed& text, const FoodMatch& match,
                                  const std::string& food) {
    const auto raw = raw_of(food);
    if (raw.empty() || says_of_what(text) || !says_raw_dish(text)) {
        return std::nullopt;
    }
    return NamedFood{words_at(text.words, match.first, match.count),
                     raw.front(),
                     {},
                     true,
                     true,
                     text.source.where};
}

/// "turkey leg", "escalope": raw or cooked, an animal it is.
bool is_meat_asked(const Parsed& text, const FoodChoice& kinds) {
    return is_raw_kind(text.table, kinds.front()) &&
           kind_of(text.table, kinds.back()) == FoodKind::Leftover;
}

/// The kinds of a question, and all cuts of meat where one of them is a cut.
FoodChoice may_be_asked(const Parsed& text, const FoodChoice& kinds) {
    auto all = kinds;
    for (const auto& kind : kinds) {
        if (kind_of(text.table, kind) == FoodKind::RawCut) {
            add_kinds(all, {possible_kinds("meat", "")});
        }
        if (kind_of(text.table, kind) == FoodKind::RawPoultry) {
            add_kinds(all, {possible_kinds("poultry", "")});
        }
    }
    return all;
}

std::optional<NamedFood> dish(const Parsed& text, const FoodMatch& match) {
    const auto kinds = meanings(*match.word);
    const auto state = state_said_of(text, match);
    const auto& food = state == FoodState::Cooked ? kinds.back() : kinds.front();
    const bool said_raw = state == FoodState::Raw && is_raw_kind(text.table, food);
    if (auto raw = raw_dish(text, match, food)) {
        return raw;
    }
    if (!counts(text, food)) {
        return std::nullopt;
    }
    return NamedFood{
        words_at(text.words, match.first, match.count), {food},   may_be_asked(text, kinds),
        said_raw || is_meat_asked(text, kinds),         said_raw, text.source.where};
}

/// "Ground cumin", "ajo picado": what is said of an ingredient goes with any plant that it names.
bool is_of_plant(const Parsed& text, const FoodMatch& form) {
    const auto words = worded(text.source.text);
    return says(worded(text.words[form.first]), Section::Plant, "ground") &&
           (is_chopped_plant(words) ||
            (text.source.sort == Text::Ingredient && says(words, Section::Plant, "named")));
}

/// "mince" and "chops" without a word of whose they are.
std::optional<NamedFood> bare_form(const Parsed& text, const FoodMatch& form) {
    const bool of_poultry = is_one_of(form.word->means, {"giblets", "innards"});
    const bool says_meat =
        of_poultry || is_one_of(form.word->means, {"ground", "offal", "steak", "chop"});
    if (is_animal_among(text) || !says_meat || is_of_plant(text, form) ||
        text.source.sort == Text::Step) {
        return std::nullopt;
    }
    const auto state = state_said_of(text, form);
    const std::string_view base = of_poultry ? "poultry" : "meat";
    auto may_be = possible_kinds("meat", form.word->means);
    add_kinds(may_be, {possible_kinds("poultry", form.word->means)});
    return NamedFood{words_at(text.words, form.first, form.count),
                     senses_of({base, form.word->means, state}).front(),
                     std::move(may_be),
                     true,
                     state == FoodState::Raw,
                     text.source.where};
}

std::optional<NamedFood> food_named_by(const Parsed& text, std::size_t position) {
    const auto& match = text.matches[position];
    if (match.word == nullptr || is_denied(text, position)) {
        return std::nullopt;
    }
    switch (match.word->role) {
    case FoodRole::Kind:
    case FoodRole::Question: return dish(text, match);
    case FoodRole::Form: return bare_form(text, match);
    case FoodRole::Base:
        if (is_animal(match.word->means) && !is_of_broth(text, match)) {
            return animal(text, match);
        }
        break;
    case FoodRole::State:
    case FoodRole::NoAnimal:
    case FoodRole::SaysNothing: break;
    }
    return std::nullopt;
}

Parsed parsed(const StorageTable& table, const Source& source) {
    auto words = words_of(source.text);
    auto matches = match_foods(table.words, words);
    return {table, source, std::move(words), std::move(matches)};
}

std::vector<Source> sources_in_bag(const Package& package) {
    std::vector<Source> sources{{package.dish, Text::Dish, package.where.key("dish")}};
    for (const auto& ingredient : package.ingredients) {
        if (ingredient.day != IngredientDay::CookDay) {
            sources.push_back(
                {text_of(ingredient.add), Text::Ingredient, ingredient.where.key("add")});
        }
    }
    return sources;
}

std::vector<NamedFood> named_in(const StorageTable& table, const std::vector<Source>& sources) {
    std::vector<NamedFood> all;
    for (const auto& source : sources) {
        const auto text = parsed(table, source);
        for (std::size_t i = 0; i < text.matches.size(); ++i) {
            if (auto named = food_named_by(text, i)) {
                all.push_back(std::move(*named));
            }
        }
    }
    return all;
}

/// The keys of the foods that are added on cook day: steps that name them do not speak of the bag.
std::set<std::string_view> added_later(const StorageTable& table, const Package& package) {
    std::set<std::string_view> keys;
    const auto note = [&](const Quantity& quantity) {
        for (const auto& match : match_foods(table.words, words_of(text_of(quantity)))) {
            if (match.word != nullptr) {
                keys.insert(match.word->means);
            }
        }
    };
    for (const auto& finish : package.finish) {
        note(finish.add);
    }
    for (const auto& side : package.sides) {
        note(side.add);
    }
    for (const auto& ingredient : package.ingredients) {
        if (ingredient.day == IngredientDay::CookDay) {
            note(ingredient.add);
        }
    }
    return keys;
}

} // namespace

std::vector<NamedFood> foods_in_bag(const StorageTable& table, const Package& package) {
    return named_in(table, sources_in_bag(package));
}

std::vector<NamedFood> foods_named(const StorageTable& table, const Package& package) {
    auto all = foods_in_bag(table, package);
    if (!package.cook) {
        return all;
    }
    const auto later = added_later(table, package);
    for (std::size_t step = 0; step < package.cook->steps.size(); ++step) {
        const Source source{package.cook->steps[step], Text::Step,
                            package.cook->where.key("steps").index(step)};
        const auto text = parsed(table, source);
        for (std::size_t i = 0; i < text.matches.size(); ++i) {
            auto named = food_named_by(text, i);
            if (named && !later.contains(text.matches[i].word->means)) {
                all.push_back(std::move(*named));
            }
        }
    }
    return all;
}

bool says_raw(const StorageTable& table, std::string_view text) {
    return says_raw_dish(parsed(table, {std::string{text}, Text::Dish, {}}));
}

} // namespace thawslip::kitchen
