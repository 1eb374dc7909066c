#include "kitchen/foods/food_reading.h"

#include "base/list.h"
#include "kitchen/foods/chopped_plant.h"
#include "kitchen/foods/food_words.h"
#include "kitchen/texts/lexicon.h"
#include "kitchen/texts/text.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::kitchen {
namespace {

using Choices = std::vector<FoodChoice>;

/// What all words of a text say together.
struct Said {
    FoodChoice dishes; ///< kinds named outright
    std::vector<const FoodWord*> questions;
    std::vector<std::string_view> animals;
    std::vector<std::string_view> plants;
    std::string_view form;
    bool is_cut_of_anything = false; ///< the form: "pieces" may be of apples, "wings" may not
    bool is_of_plant = false;        ///< the form: "chopped parsley"
    FoodState state = FoodState::NotSaid;
    bool dish_is_raw = false; ///< "raw", "kit": not only "fresh", as a soup may be
    bool meatless = false;    ///< "vegan", "ohne"
    bool animal_denied = false;
    bool all_known = true;
};

void take_base(Said& said, const FoodWord& word, bool denied) {
    if (!is_animal(word.means)) {
        add_once(said.plants, word.means);
    } else if (denied) {
        said.animal_denied = true;
    } else {
        add_once(said.animals, word.means);
    }
}

/// "stuffed chicken breast" is stuffed, "minced leg of lamb" is minced.
bool outweighs(std::string_view form, std::string_view other) {
    constexpr std::string_view order[] = {"stuffed", "ground", "offal", "giblets", "innards"};
    return std::ranges::find(order, form) < std::ranges::find(order, other);
}

/// Whether a word for how meat is cut says as much of plants.
bool is_cut_of_anything(std::string_view written) {
    const auto text = worded(written);
    const auto cuts = mentions(text, Section::Plant, "cut");
    return !cuts.empty() && cuts.front().count == text.words.size();
}

void take(Said& said, const FoodWord& word, bool denied) {
    switch (word.role) {
    case FoodRole::Kind: add_once(said.dishes, std::string{word.means}); break;
    case FoodRole::Question:
        denied ? void(said.animal_denied = true) : said.questions.push_back(&word);
        break;
    case FoodRole::Base: take_base(said, word, denied); break;
    case FoodRole::Form:
        if (!denied && (said.form.empty() || outweighs(word.means, said.form))) {
            said.form = word.means;
            said.is_cut_of_anything = is_cut_of_anything(word.written);
        }
        break;
    case FoodRole::State:
        said.dish_is_raw |= word.means == "raw";
        // "raw" outweighs whatever else is said, "smoked" outweighs "cooked".
        if (said.state != FoodState::Raw) {
            said.state = state_named(word.means);
        }
        break;
    case FoodRole::NoAnimal: said.meatless = true; break;
    case FoodRole::SaysNothing: break;
    }
}

Said what_is_said(const StorageTable& table, std::string_view text) {
    Said said;
    said.is_of_plant = is_chopped_plant(worded(text));
    bool denied = false;
    for (const auto& match : match_foods(table.words, words_of(text))) {
        if (match.word == nullptr) {
            said.all_known = false;
            continue;
        }
        take(said, *match.word, denied);
        denied = match.word->role == FoodRole::NoAnimal;
    }
    return said;
}

bool is_of(const StorageTable& table, const std::string& food, FoodKind sort) {
    return kind_of(table, food) == sort;
}

/// What goes with a dish and does not decide what it is, where something else does.
bool is_garnish(const StorageTable& table, const std::string& food) {
    return food == "tomato or vegetable sauce" ||
           (is_of(table, food, FoodKind::Other) && !find_unsuitable(table, food));
}

/// What makes a dish keep shorter: bacon, ham and sausage.
std::optional<std::string> cured_part(std::string_view base) {
    return base == "sausage" ? std::optional<std::string>{"sausage"}
           : base == "ham"   ? std::optional<std::string>{"cooked ham"}
                             : std::nullopt;
}

/// What every animal is, raw and cooked; of one alone all that it can be.
Choices animal_choices(const Said& said) {
    auto animals = said.animals;
    auto form = said.form;
    const auto sausage = std::ranges::find(animals, "sausage");
    if (sausage != animals.end() && animals.size() > 1) {
        animals.erase(sausage);
        form = "sausage";
    }
    auto choices = senses_of({animals.front(), form, said.state});
    for (std::size_t i = 1; i < animals.size(); ++i) {
        const auto more = senses_of({animals[i], form, said.state});
        add_all_once(choices.front(), more.front());
        if (choices.size() > 1 || more.size() > 1) {
            choices.resize(std::max<std::size_t>(choices.size(), 2), choices.front());
            add_all_once(choices.back(), more.back());
        }
    }
    return choices;
}

/// "raw milanesa": a dish that is cooked for certain, said to be raw, is not certain.
Choices raw_dish_choices(const FoodChoice& strong) {
    Choices choices;
    for (const auto& dish : strong) {
        auto raw = raw_of(dish);
        choices.insert(choices.end(), raw.begin(), raw.end());
    }
    if (!choices.empty()) {
        choices.push_back(strong);
    }
    return choices;
}

/// Turkey or venison bacon is that animal, raw or cooked; bacon of nothing else is bacon.
Choices bacon_choices(Said said) {
    std::erase_if(said.animals, [](std::string_view base) {
        return is_one_of(base, {"meat", "ham", "sausage"});
    });
    if (said.animals.empty()) {
        return {};
    }
    auto choices = animal_choices(said);
    for (auto& choice : choices) {
        add_once(choice, std::string{"bacon"});
    }
    return choices;
}

Choices dish_choices(const Said& said, FoodChoice strong) {
    const bool of_plants = said.meatless || !said.plants.empty();
    if (said.dish_is_raw && said.animals.empty() && !of_plants) {
        if (auto choices = raw_dish_choices(strong); !choices.empty()) {
            return choices;
        }
    }
    if (strong == FoodChoice{"bacon"}) {
        if (auto choices = bacon_choices(said); !choices.empty()) {
            return choices;
        }
    }
    for (const auto base : said.animals) {
        if (auto part = cured_part(base)) {
            add_once(strong, std::move(*part));
        }
        if (said.state == FoodState::Raw) {
            add_once(strong, senses_of({base, said.form, FoodState::Raw}).front().front());
        }
    }
    if (contains(said.dishes, "bacon")) {
        add_once(strong, std::string{"bacon"});
    }
    return {strong};
}

/// A kind that says "meat" of whatever animal.
bool says_any_meat(const std::string& kind) {
    return is_one_of(kind,
                     {"raw stew meat", "raw roasts", "raw steaks", "raw chops", "cooked meat"});
}

std::string_view form_in(const FoodChoice& choice) {
    return choice.front() == "raw ground meat" ? "ground" : "";
}

/// One choice of a question, of the animals that are named: "turkey satay" is no stew meat.
FoodChoice of_animals(const StorageTable& table, const Said& said, const FoodChoice& choice) {
    FoodChoice own;
    bool all_named = says_any_meat(choice.front());
    const bool raw = is_raw_kind(table, choice.front());
    for (const auto base : said.animals) {
        if (base == "meat" || base == "sausage" || base == "ham" || base == "egg") {
            all_named &= base == "egg";
        } else if (raw || all_named) {
            add_all_once(
                own, senses_of({base, form_in(choice), raw ? FoodState::Raw : FoodState::Cooked})
                         .front());
        }
    }
    auto all = all_named && !own.empty() ? FoodChoice{} : choice;
    add_all_once(all, own);
    return all;
}

/// Whether a choice is poultry's alone, and other animals are named.
bool is_of_another(const StorageTable& table, const Said& said, const FoodChoice& choice) {
    return kind_of(table, choice.front()) == FoodKind::RawPoultry && !said.animals.empty() &&
           !contains(said.animals, "poultry");
}

/// "plum pie" is no pie of meat.
bool is_sweet(const Said& said, const std::vector<std::string>& kinds) {
    return said.plants == std::vector<std::string_view>{"fruit"} && said.animals.empty() &&
           said.form.empty() && kinds.back() == "cooked vegetable dish";
}

/// The kinds of a question that are left where raw or cooked is said, else all of them.
Choices question_choices(const StorageTable& table, const Said& said) {
    const auto kinds = meanings(*said.questions.front());
    if (is_sweet(said, kinds)) {
        return {{"fruit pie"}};
    }
    Choices choices;
    for (const auto& kind : kinds) {
        add_once(choices, of_animals(table, said, {kind}));
    }
    if (choices.size() > 2) {
        std::erase_if(choices,
                      [&](const auto& choice) { return is_of_another(table, said, choice); });
    }
    if (said.state == FoodState::Raw && is_raw_kind(table, choices.front().front())) {
        std::erase_if(choices,
                      [&](const auto& choice) { return !is_raw_kind(table, choice.front()); });
    } else if (said.state == FoodState::Cooked) {
        std::erase_if(choices,
                      [&](const auto& choice) { return is_raw_kind(table, choice.front()); });
    }
    return choices;
}

/// "wings" and "chops" without a word of whose they are.
Choices form_choices(const Said& said) {
    if (said.form.empty() || said.form == "stuffed" || said.form == "whole") {
        return {};
    }
    if (said.form == "piece" || said.form == "giblets") {
        return senses_of({"poultry", said.form, said.state});
    }
    if (said.form == "innards" && said.state != FoodState::Cooked) {
        return {{"poultry giblets"},
                {"raw offal"}}; // a chicken's heart asks for more than a calf's
    }
    return senses_of({"meat", said.form, said.state});
}

/// Whether there is ground meat or liver in what its own name says has none: a strudel, dumplings,
/// biscuits, an ice. Nothing says that it was cooked.
bool hides_meat(const StorageTable& table, const Said& said, const FoodChoice& dishes) {
    const bool meat = is_one_of(said.form, {"ground", "offal", "innards", "giblets"}) &&
                      !said.is_of_plant && !said.meatless && said.state != FoodState::Cooked;
    return meat && !dishes.empty() && std::ranges::all_of(dishes, [&](const std::string& dish) {
               return is_of(table, dish, FoodKind::Other) ||
                      is_one_of(dish, {"cooked vegetable dish", "cooked pasta", "fruit pie"});
           });
}

Choices choices_of(const StorageTable& table, const Said& said) {
    if (hides_meat(table, said, said.dishes) && said.animals.empty()) {
        auto choices = form_choices(said);
        add_once(choices, FoodChoice{"cooked meat"});
        return choices;
    }
    FoodChoice strong;
    for (const auto& dish : said.dishes) {
        if (!is_garnish(table, dish)) {
            strong.push_back(dish);
        }
    }
    const bool only_gravy = strong == FoodChoice{"gravy or broth"};
    if (!said.questions.empty() && (strong.empty() || only_gravy)) {
        return question_choices(table, said);
    }
    if (!strong.empty()) {
        return dish_choices(said, strong);
    }
    if (!said.animals.empty()) {
        auto choices = animal_choices(said);
        if (contains(said.dishes, "bacon")) {
            for (auto& choice : choices) {
                add_once(choice, std::string{"bacon"});
            }
        }
        return choices;
    }
    if (!said.dishes.empty()) {
        return {said.dishes};
    }
    const bool is_cut_plant = said.is_of_plant || (said.is_cut_of_anything && !said.plants.empty());
    if (auto choices = form_choices(said); !choices.empty() && !is_cut_plant) {
        return choices;
    }
    if (said.plants.empty() && said.state == FoodState::Cooked) {
        return {{"leftovers"}};
    }
    return plant_senses(said.plants, said.state);
}

/// Every kind that the table has a name for.
bool is_named(const StorageTable& table, const std::string& food) {
    return find_storage(table, food) || find_unsuitable(table, food);
}

void drop_unnamed(const StorageTable& table, Choices& choices) {
    std::erase_if(choices, [&](const FoodChoice& choice) {
        return !std::ranges::all_of(choice,
                                    [&](const std::string& kind) { return is_named(table, kind); });
    });
}

/// The table's own name for it, but for case. Plurals are among the words.
std::optional<std::string> own_name(const StorageTable& table, std::string_view text) {
    if (const auto row = find_storage(table, text)) {
        return row->food;
    }
    const auto row = find_unsuitable(table, text);
    return row ? std::optional{row->food} : std::nullopt;
}

} // namespace

bool is_raw_kind(const StorageTable& table, std::string_view kind) {
    return is_raw(kind_of(table, kind));
}

FoodReading read_food(const StorageTable& table, std::string_view text) {
    if (auto name = own_name(table, text)) {
        return {FoodCertainty::Sure, {{std::move(*name)}}};
    }
    const auto said = what_is_said(table, text);
    auto choices = choices_of(table, said);
    drop_unnamed(table, choices);
    if (choices.empty() && said.animal_denied && is_named(table, "cooked vegetable dish")) {
        return {FoodCertainty::Asked, {{"cooked vegetable dish"}}};
    }
    if (choices.empty()) {
        return {};
    }
    const auto certainty = !said.all_known      ? FoodCertainty::Unsure
                           : choices.size() > 1 ? FoodCertainty::Asked
                                                : FoodCertainty::Sure;
    return {certainty, std::move(choices)};
}

std::string said(const FoodChoice& choice) {
    return fmt::format("\"{}\"", fmt::join(choice, "\" and \""));
}

std::string as_toml(const FoodChoice& choice) {
    return choice.size() == 1 ? said(choice) : fmt::format("[\"{}\"]", fmt::join(choice, "\", \""));
}

} // namespace thawslip::kitchen
