#include "kitchen/foods/food_taken.h"

#include "base/list.h"
#include "kitchen/foods/food_reading.h"
#include "kitchen/foods/foods_named.h"
#include "kitchen/refuse.h"
#include "kitchen/texts/text.h"

#include <algorithm>
#include <fmt/format.h>
#include <optional>

namespace thawslip::kitchen {
namespace {

constexpr std::string_view strictest_kind = "leftovers";

/// What plants, bread or fruit the dish's name is about, where nothing in it spoils sooner.
FoodChoice harmless(const StorageTable& table, const Package& package) {
    const auto reading = read_food(table, package.dish);
    const bool is_word = std::ranges::any_of(
        match_foods(table.words, words_of(package.dish)), [](const FoodMatch& match) {
            return match.word != nullptr &&
                   (match.word->role == FoodRole::Kind || match.word->role == FoodRole::Base);
        });
    if (reading.choices.empty() || !is_word) {
        return {};
    }
    // A fish may be named after a fruit: plants and a word that nobody knows say nothing.
    const bool names_kind = std::ranges::any_of(
        match_foods(table.words, words_of(package.dish)), [](const FoodMatch& match) {
            return match.word != nullptr && match.word->role == FoodRole::Kind;
        });
    if (reading.certainty == FoodCertainty::Unsure && !names_kind) {
        return {};
    }
    const auto& first = reading.choices.front();
    const bool known = std::ranges::all_of(
        first, [&](const std::string& food) { return find_storage(table, food).has_value(); });
    return known ? first : FoodChoice{};
}

void take_from_words(Package& package, const StorageTable& table) {
    for (const auto& named : foods_named(table, package)) {
        add_all_once(package.food, named.kinds);
    }
    if (package.food.empty()) {
        package.food = harmless(table, package);
    }
    package.food_basis = package.food.empty() ? FoodBasis::Nothing : FoodBasis::Words;
    if (package.food.empty() && find_storage(table, strictest_kind)) {
        package.food = {std::string{strictest_kind}};
    }
}

/// What is wrong with one entry of `food`.
struct Refusal {
    std::string message;
    std::vector<std::string> hints;
};

Refusal not_frozen(const std::string& food, const UnsuitableRow& row) {
    if (!row.why.empty()) {
        return {fmt::format("\"{}\" {} ({})", food, row.why, row.source), {row.instead}};
    }
    return {fmt::format("\"{}\" does not freeze well ({}), so no list says how long it keeps", food,
                        row.source),
            {"set use_by yourself, or leave it out of the freezer"}};
}

bool is_cooked(const StorageTable& table, const FoodChoice& choice) {
    return std::ranges::all_of(choice, [&](const std::string& food) {
        const auto sort = kind_of(table, food);
        return sort == FoodKind::Leftover || sort == FoodKind::CookedDish ||
               sort == FoodKind::EggDish || sort == FoodKind::ReadyToEat;
    });
}

/// Why the first choice, where it is not to be frozen, is none.
std::optional<UnsuitableRow> not_to_be_frozen(const StorageTable& table, const FoodChoice& choice) {
    for (const auto& food : choice) {
        if (auto row = find_unsuitable(table, food)) {
            return row;
        }
    }
    return std::nullopt;
}

std::string hint_of(const StorageTable& table, const FoodChoice& choice, bool is_first,
                    bool may_be_raw) {
    if (const auto row = not_to_be_frozen(table, choice)) {
        return fmt::format("{} {}", row->food,
                           row->why.empty() ? "does not freeze well" : row->why);
    }
    if (is_first) {
        return fmt::format("did you mean {}?", as_toml(choice));
    }
    return may_be_raw && is_cooked(table, choice)
               ? fmt::format("or, only if it is cooked before it is frozen, {}", as_toml(choice))
               : fmt::format("or {}", as_toml(choice));
}

/// The question that an ambiguous word is answered with: "raw or cooked?"
Refusal question(const StorageTable& table, const std::string& food,
                 const std::vector<FoodChoice>& choices) {
    const bool first_cooked = is_cooked(table, choices.front());
    const bool raw_or_cooked = !first_cooked && is_cooked(table, choices.back());
    Refusal refusal{fmt::format("\"{}\" is not one kind of food: {}", food,
                                raw_or_cooked ? "raw or cooked?" : "which is it?"),
                    {}};
    for (const auto& choice : choices) {
        refusal.hints.push_back(hint_of(table, choice, refusal.hints.empty(), !first_cooked));
    }
    return refusal;
}

Refusal unknown(const StorageTable& table, const std::string& food) {
    Refusal refusal{fmt::format("\"{}\" is not a kind of food known here", food), {}};
    if (const auto near = nearest_food(table, food)) {
        refusal.hints.push_back(hint_of(table, *near, true, true));
    } else {
        refusal.hints.emplace_back("thawslip foods names them all, and thawslip foods WORD those "
                                   "that come near");
    }
    return refusal;
}

std::optional<Refusal> refusal_of(const StorageTable& table, const std::string& food) {
    const auto reading = read_food(table, food);
    switch (reading.certainty) {
    case FoodCertainty::Sure:
        for (const auto& kind : reading.choices.front()) {
            if (const auto row = find_unsuitable(table, kind)) {
                return not_frozen(food, *row);
            }
        }
        return std::nullopt;
    case FoodCertainty::Asked: return question(table, food, reading.choices);
    case FoodCertainty::Unsure:
    case FoodCertainty::Unknown: break;
    }
    return unknown(table, food);
}

/// Nothing says when it is to be eaten; what its name says of its kind may be all that is missing.
Refusal undated(const Package& package, const StorageTable& table) {
    auto named = package;
    take_from_words(named, table);
    const bool known = named.food_basis == FoodBasis::Words;
    return {"neither food nor use_by is given: one of them sets the date",
            {fmt::format("write, for example, food = {}",
                         known ? as_toml(named.food) : "\"soup or stew\""),
             "or, for example, use_by = 2027-01-17"}};
}

} // namespace

Package with_kinds(const Package& package, const StorageTable& table) {
    Package read = package;
    read.food_as_written = package.food;
    read.food.clear();
    for (const auto& food : package.food) {
        const auto reading = read_food(table, food);
        const bool sure = reading.certainty == FoodCertainty::Sure;
        add_all_once(read.food, sure ? reading.choices.front() : FoodChoice{food});
    }
    if (package.food.empty() && package.use_by && !table.words.empty()) {
        take_from_words(read, table);
    }
    return read;
}

bool knows_food(const Package& package, const StorageTable& table, Diagnostics& faults) {
    if (package.food.empty() && !package.use_by) {
        auto refusal = undated(package, table);
        refuse(faults, package.where, std::move(refusal.message), std::move(refusal.hints));
        return false;
    }
    bool all = true;
    const auto& foods =
        package.food_basis == FoodBasis::Given ? package.food_as_written : package.food;
    for (std::size_t i = 0; i < foods.size(); ++i) {
        if (auto refusal = refusal_of(table, foods[i])) {
            const auto list = package.where.key("food");
            const auto where = package.food_basis != FoodBasis::Given ? package.where.key("dish")
                               : foods.size() == 1                    ? list
                                                                      : list.index(i);
            refuse(faults, where, std::move(refusal->message), std::move(refusal->hints));
            all = false;
        }
    }
    return all;
}

} // namespace thawslip::kitchen
