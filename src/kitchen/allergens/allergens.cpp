#include "kitchen/allergens/allergens.h"

#include "kitchen/texts/negation.h"

#include <algorithm>
#include <fmt/format.h>
#include <optional>

namespace thawslip::kitchen {
namespace {

/// What a key of src/kitchen/words means: "tree nuts (walnut)"; nothing for "nothing", which only
/// sounds like an allergen.
std::optional<NamedAllergen> named_by(std::string_view meaning) {
    const auto bracket = meaning.find(" (");
    for (int i = 0; i <= static_cast<int>(Allergen::Molluscs); ++i) {
        const auto allergen = static_cast<Allergen>(i);
        if (meaning.substr(0, bracket) == key(allergen)) {
            const auto kind = bracket == std::string_view::npos
                                  ? std::string_view{}
                                  : meaning.substr(bracket + 2, meaning.size() - bracket - 3);
            return NamedAllergen{allergen, std::string{kind}};
        }
    }
    return std::nullopt;
}

/// All that a text says, in order, and the classes that it denies.
struct Findings {
    std::vector<AllergenMention> names;
    std::vector<Allergen> denied;
};

void deny(Findings& found, Allergen allergen) {
    found.denied.push_back(allergen);
    if (allergen == Allergen::GlutenCereals) {
        found.denied.push_back(Allergen::Wheat);
    }
    if (allergen == Allergen::TreeNuts) {
        found.denied.push_back(Allergen::Peanuts);
    }
}

/// Whether the words around the name of an allergen say that it is none of the food: a tool ("the
/// pan", which is bread in Spanish), a size ("the size of a walnut"), a guest's allergy.
bool is_aside(const WordedText& text, const Mention& named) {
    const auto end = named.first + named.count;
    const auto before = first_filler_before(text, named);
    return std::ranges::any_of(mentions(text, Section::Aside), [&](const Mention& aside) {
        const auto aside_end = aside.first + aside.count;
        if (aside.meaning == "other") {
            return aside.first <= named.first && aside_end >= end;
        }
        const bool leads =
            aside.meaning == "before" && aside_end <= named.first && aside_end >= before;
        const bool follows = aside.meaning == "behind" && aside.first == end;
        return (leads || follows) && text.clauses[aside.first] == text.clauses[named.first];
    });
}

enum class Words { OfFood, OfSteps };

Findings look_up(const WordedText& text, Words words) {
    Findings found;
    const auto all = mentions(text, Section::Allergen);
    for (std::size_t i = 0; i < all.size(); ++i) {
        auto named = named_by(all[i].meaning);
        if (named && (words == Words::OfFood || !is_aside(text, all[i]))) {
            if (is_denied(text, all, i)) {
                deny(found, named->allergen);
            } else {
                found.names.push_back({words_of(text, all[i]), std::move(*named)});
            }
        }
    }
    for (const auto& mention : mentions(text, Section::AllergenDenied)) {
        found.denied.push_back(named_by(mention.meaning)->allergen);
    }
    std::erase_if(found.names, [&](const AllergenMention& mention) {
        return std::ranges::find(found.denied, mention.named.allergen) != found.denied.end();
    });
    return found;
}

bool contains_mention(const std::vector<AllergenMention>& mentions, const NamedAllergen& named) {
    return std::ranges::any_of(mentions,
                               [&](const auto& mention) { return mention.named == named; });
}

std::vector<AllergenMention> each_once(Findings all) {
    std::vector<AllergenMention> found;
    for (auto& mention : all.names) {
        if (!contains_mention(found, mention.named)) {
            found.push_back(std::move(mention));
        }
    }
    return found;
}

bool is_eu_only(Allergen allergen) {
    return allergen >= Allergen::GlutenCereals;
}

bool is_annex_ii_nut(std::string_view kind) {
    static constexpr std::string_view kinds[] = {"almond", "hazelnut",   "walnut",    "cashew",
                                                 "pecan",  "Brazil nut", "pistachio", "macadamia"};
    return std::ranges::find(kinds, kind) != std::end(kinds);
}

} // namespace

std::string_view key(Allergen allergen) {
    switch (allergen) {
    case Allergen::Milk: return "milk";
    case Allergen::Eggs: return "eggs";
    case Allergen::Fish: return "fish";
    case Allergen::Crustaceans: return "crustaceans";
    case Allergen::TreeNuts: return "tree nuts";
    case Allergen::Peanuts: return "peanuts";
    case Allergen::Wheat: return "wheat";
    case Allergen::Soybeans: return "soybeans";
    case Allergen::Sesame: return "sesame";
    case Allergen::GlutenCereals: return "cereals containing gluten";
    case Allergen::Celery: return "celery";
    case Allergen::Mustard: return "mustard";
    case Allergen::Sulphites: return "sulphites";
    case Allergen::Lupin: return "lupin";
    case Allergen::Molluscs: return "molluscs";
    }
    return {};
}

std::string label_name(const NamedAllergen& named, AllergenRules rules) {
    auto kind = named.kind;
    auto allergen = named.allergen;
    if (rules == AllergenRules::Eu && allergen == Allergen::Wheat) {
        allergen = Allergen::GlutenCereals;
        kind = kind.empty() ? "wheat" : kind;
    }
    return kind.empty() ? std::string{key(allergen)} : fmt::format("{} ({})", key(allergen), kind);
}

bool is_listed(const NamedAllergen& named, AllergenRules rules) {
    if (rules == AllergenRules::Us) {
        return !is_eu_only(named.allergen);
    }
    return named.allergen != Allergen::TreeNuts || named.kind.empty() ||
           is_annex_ii_nut(named.kind);
}

bool must_name_kind(Allergen allergen, AllergenRules rules) {
    if (rules == AllergenRules::Us) {
        return allergen == Allergen::TreeNuts || allergen == Allergen::Fish ||
               allergen == Allergen::Crustaceans;
    }
    return allergen == Allergen::TreeNuts || allergen == Allergen::GlutenCereals;
}

DeclaredAllergen read_allergen(std::string_view written) {
    DeclaredAllergen declared{std::string{written}, {}};
    for (auto& mention : mentioned_allergens(written)) {
        declared.meant.push_back(std::move(mention.named));
    }
    return declared;
}

std::vector<AllergenMention> mentioned_allergens(std::string_view text) {
    return mentioned_allergens(worded(text));
}

std::vector<AllergenMention> mentioned_allergens(const WordedText& text) {
    return each_once(look_up(text, Words::OfFood));
}

std::vector<AllergenMention> allergens_in_step(const WordedText& text) {
    return each_once(look_up(text, Words::OfSteps));
}

bool is_declared(const NamedAllergen& named, const std::vector<DeclaredAllergen>& declared,
                 AllergenRules rules) {
    const auto covers = [&](const NamedAllergen& said) {
        const bool gluten_for_wheat = rules == AllergenRules::Eu &&
                                      said.allergen == Allergen::GlutenCereals &&
                                      said.kind.empty() && named.allergen == Allergen::Wheat;
        if (said.allergen != named.allergen) {
            return gluten_for_wheat;
        }
        return !must_name_kind(named.allergen, rules) || said.kind.empty() || named.kind.empty() ||
               said.kind == named.kind;
    };
    return std::ranges::any_of(
        declared, [&](const auto& entry) { return std::ranges::any_of(entry.meant, covers); });
}

} // namespace thawslip::kitchen
