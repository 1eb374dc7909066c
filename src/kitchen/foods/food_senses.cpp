#include "kitchen/foods/food_senses.h"

#include "base/list.h"

#include <algorithm>
#include <iterator>

namespace thawslip::kitchen {
namespace {

/// What a base is when it is in this form; "" as the form stands for every other. A base or form
/// takes the first row that it fits.
struct Sense {
    std::string_view base;
    std::string_view form;
    std::vector<FoodChoice> raw;
    std::vector<FoodChoice> cooked;
    bool may_be_cooked = true; ///< where nothing is said
};

const std::vector<Sense>& senses() {
    static const std::vector<Sense> rows{
        {"poultry", "ground", {{"raw ground poultry"}}, {{"cooked poultry"}}, false},
        {"poultry", "offal", {{"poultry giblets"}}, {{"cooked poultry"}}, false},
        {"poultry", "whole", {{"raw whole poultry"}}, {{"cooked poultry"}}},
        {"poultry", "stuffed", {{"raw stuffed poultry"}}, {{"cooked poultry"}}},
        {"poultry", "sausage", {{"raw sausage", "raw ground poultry"}}, {{"cooked sausage"}}},
        {"poultry", "", {{"raw poultry pieces"}}, {{"cooked poultry"}}},
        {"meat", "ground", {{"raw ground meat"}}, {{"cooked meat"}}, false},
        {"meat", "offal", {{"raw offal"}}, {{"cooked meat"}}, false},
        {"meat", "stuffed", {{"raw stuffed meat"}}, {{"cooked meat"}}},
        {"meat", "steak", {{"raw steaks"}}, {{"cooked meat"}}},
        {"meat", "chop", {{"raw chops"}}, {{"cooked meat"}}},
        {"meat", "roast", {{"raw roasts"}}, {{"cooked meat"}}},
        {"meat", "whole", {{"raw roasts"}}, {{"cooked meat"}}},
        {"meat", "cubes", {{"raw stew meat"}}, {{"cooked meat"}}},
        {"meat", "piece", {{"raw stew meat"}}, {{"cooked meat"}}},
        {"meat", "sausage", {{"raw sausage"}}, {{"cooked sausage"}}},
        {"meat", "", {{"raw ground meat"}, {"raw roasts"}}, {{"cooked meat"}}},
        {"game", "ground", {{"raw game", "raw ground meat"}}, {{"cooked meat"}}, false},
        {"game", "offal", {{"raw game", "raw offal"}}, {{"cooked meat"}}, false},
        {"game", "sausage", {{"raw sausage", "raw game"}}, {{"cooked sausage"}}},
        {"game", "stuffed", {{"raw stuffed meat"}}, {{"cooked meat"}}},
        {"game", "", {{"raw game"}}, {{"cooked meat"}}},
        {"sausage", "", {{"raw sausage"}}, {{"cooked sausage"}}},
        {"ham", "", {{"raw fresh ham"}, {"raw cured ham"}}, {{"cooked ham"}}},
        {"egg", "", {{"beaten eggs"}}, {{"egg casserole"}}},
        {"fatty fish", "", {{"fatty fish"}}, {{"cooked fish"}}},
        {"lean fish", "", {{"lean fish"}}, {{"cooked fish"}}},
        {"pollock, perch, rockfish or sea trout",
         "",
         {{"pollock, perch, rockfish or sea trout"}},
         {{"cooked fish"}}},
        {"raw fish", "", {{"raw fish"}}, {{"cooked fish"}}},
        {"crab or lobster", "", {{"crab or lobster"}}, {{"cooked shellfish"}}},
        {"shrimp or crayfish", "", {{"shrimp or crayfish"}}, {{"cooked shellfish"}}},
        {"clams, oysters or mussels", "", {{"clams, oysters or mussels"}}, {{"cooked shellfish"}}},
        {"scallops", "", {{"scallops"}}, {{"cooked shellfish"}}},
        {"squid", "", {{"squid"}}, {{"cooked shellfish"}}},
        {"raw shellfish", "", {{"raw shellfish"}}, {{"cooked shellfish"}}},
    };
    return rows;
}

/// Innards that poultry has, or has too, are innards of whatever animal is named.
const Sense* find_sense(std::string_view base, std::string_view form) {
    if (form == "giblets" || form == "innards") {
        form = "offal";
    }
    const auto found = std::ranges::find_if(senses(), [&](const Sense& sense) {
        return sense.base == base && (sense.form.empty() || sense.form == form);
    });
    return found == senses().end() ? nullptr : &*found;
}

bool is_fish(const Sense& sense) {
    return sense.cooked.front().front() == "cooked fish";
}

/// Smoke and salt cook nothing: what is smoked may be either, and the rawest comes first.
std::vector<FoodChoice> smoked(const Sense& sense) {
    if (is_fish(sense)) {
        return {{"smoked fish"}};
    }
    if (sense.base == "meat") {
        return {{"raw cured ham"}, {"lunch meat"}};
    }
    auto choices = sense.raw;
    choices.push_back(sense.base == "poultry" || sense.base == "game" ? FoodChoice{"lunch meat"}
                                                                      : sense.cooked.front());
    return choices;
}

/// What a cooked kind is while it is raw.
struct RawTwin {
    std::string_view cooked;
    std::vector<FoodChoice> raw;
};

const std::vector<RawTwin>& raw_twins() {
    static const FoodChoice any_meat{"raw ground meat", "raw poultry pieces"};
    static const std::vector<RawTwin> rows{
        {"cooked meat", {any_meat, {"raw steaks"}}},
        {"cooked poultry", {{"raw poultry pieces"}}},
        {"chicken nuggets", {{"raw ground poultry"}}},
        {"cooked fish", {{"raw fish"}}},
        {"smoked fish", {{"raw fish"}}},
        {"cooked shellfish", {{"raw shellfish"}}},
        {"cooked ham", {{"raw fresh ham"}}},
        {"lunch meat", {{"raw sausage", "raw ground poultry"}}},
        {"hot dogs", {{"raw sausage", "raw ground poultry"}}},
        {"soup or stew", {any_meat}},
        {"soup", {any_meat}},
        {"stew", {any_meat}},
        {"casserole", {any_meat}},
        {"creamed casserole", {any_meat}},
        {"chili or ground-meat dish", {{"raw ground meat", "raw ground poultry"}}},
        {"frozen dinner", {any_meat}},
        {"egg casserole", {{"beaten eggs", "egg casserole"}}},
        {"quiche", {{"beaten eggs", "quiche"}}},
    };
    return rows;
}

struct PlantSense {
    std::string_view base;
    std::string_view kind;
};

constexpr PlantSense plants[] = {{"pulse", "cooked beans"},
                                 {"grain", "cooked rice"},
                                 {"pasta", "cooked pasta"},
                                 {"fruit", "fruit"}};

std::vector<FoodChoice> vegetable_senses(FoodState state) {
    if (state == FoodState::Cooked) {
        return {{"cooked vegetable dish"}};
    }
    return {{"cooked vegetable dish"}, {"blanched vegetables"}};
}

} // namespace

void add_kinds(FoodChoice& all, const std::vector<FoodChoice>& choices) {
    for (const auto& choice : choices) {
        add_all_once(all, choice);
    }
}

FoodState state_named(std::string_view means) {
    return is_one_of(means, {"raw", "fresh"}) ? FoodState::Raw
           : means == "cooked"                ? FoodState::Cooked
                                              : FoodState::Smoked;
}

bool is_animal(std::string_view base) {
    return find_sense(base, "") != nullptr;
}

std::vector<FoodChoice> senses_of(const Animal& animal) {
    const auto* sense = find_sense(animal.base, animal.form);
    if (sense == nullptr) {
        return {};
    }
    switch (animal.state) {
    case FoodState::Raw: return sense->raw;
    case FoodState::Cooked: return sense->cooked;
    case FoodState::Smoked: return smoked(*sense);
    case FoodState::NotSaid: break;
    }
    auto choices = sense->raw;
    if (sense->may_be_cooked) {
        std::ranges::copy(sense->cooked, std::back_inserter(choices));
    }
    return choices;
}

std::vector<FoodChoice> raw_of(std::string_view cooked_kind) {
    const auto found = std::ranges::find(raw_twins(), cooked_kind, &RawTwin::cooked);
    return found == raw_twins().end() ? std::vector<FoodChoice>{} : found->raw;
}

std::vector<FoodChoice> plant_senses(const std::vector<std::string_view>& bases, FoodState state) {
    FoodChoice kinds;
    for (const auto& [base, kind] : plants) {
        if (contains(bases, base)) {
            kinds.emplace_back(kind);
        }
    }
    if (kinds.empty() && contains(bases, "vegetable")) {
        return vegetable_senses(state);
    }
    if (!kinds.empty() && contains(bases, "vegetable")) {
        kinds.emplace_back("cooked vegetable dish");
    }
    std::vector<FoodChoice> choices;
    if (!kinds.empty()) {
        choices.push_back(std::move(kinds));
    }
    return choices;
}

} // namespace thawslip::kitchen
