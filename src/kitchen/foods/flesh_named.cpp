#include "kitchen/foods/flesh_named.h"

#include "kitchen/foods/meat_words.h"
#include "kitchen/texts/text.h"

#include <algorithm>
#include <initializer_list>

namespace thawslip::kitchen {
namespace {

bool is_among(std::string_view one, std::initializer_list<std::string_view> several) {
    return std::ranges::find(several, one) != several.end();
}

/// \param base as in food_words/en.toml, table [base]
void note_base(FleshNamed& named, std::string_view base) {
    named.poultry |= base == "poultry";
    named.meat |= is_among(base, {"meat", "game", "sausage", "ham"});
    named.fish |= is_among(
        base, {"fatty fish", "lean fish", "pollock, perch, rockfish or sea trout", "raw fish"});
    named.shellfish |=
        is_among(base, {"crab or lobster", "shrimp or crayfish", "clams, oysters or mussels",
                        "scallops", "squid", "raw shellfish"});
}

/// Kinds whose names have no word for what they are made of.
void note_kind(FleshNamed& named, std::string_view kind) {
    named.meat |= is_among(kind, {"raw offal", "hot dogs", "bacon", "lunch meat"});
    named.shellfish |= kind == "cooked shellfish";
    named.perhaps |= is_among(kind, {"gravy or broth", "frozen dinner", "leftovers"});
}

bool has_role(const FoodMatch& match, FoodRole role) {
    return match.word != nullptr && match.word->role == role;
}

} // namespace

FleshNamed flesh_in(FoodWords food_words, const std::vector<std::string>& words) {
    FleshNamed named;
    bool is_denied = false;
    bool any_denied = false;
    for (const auto& match : match_foods(food_words, words)) {
        if (!is_denied && has_role(match, FoodRole::Base)) {
            note_base(named, match.word->means);
        }
        is_denied = has_role(match, FoodRole::NoAnimal);
        any_denied |= is_denied;
    }
    const auto meats = any_denied ? MeatsNamed{} : meats_in(words);
    named.poultry |= meats.poultry;
    named.meat |= meats.pork || meats.beef_or_lamb || meats.game;
    named.perhaps |= meats.some;
    return named;
}

FleshNamed flesh_of_kind(FoodWords food_words, std::string_view kind) {
    FleshNamed named;
    for (const auto& word : words_of(kind)) { // as a whole it is a word for itself
        const auto part = flesh_in(food_words, {word});
        named.poultry |= part.poultry;
        named.meat |= part.meat || part.perhaps; // "raw chops": here it is no vegetable
        named.fish |= part.fish;
        named.shellfish |= part.shellfish;
    }
    note_kind(named, kind);
    return named;
}

} // namespace thawslip::kitchen
