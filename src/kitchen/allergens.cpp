#include "kitchen/allergens.h"

#include "kitchen/allergen_words.h"
#include "kitchen/phrases.h"
#include "kitchen/text.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::kitchen {
namespace {

PhraseBook book_of(std::span<const AllergenPhrase> list) {
    std::vector<std::string_view> phrases;
    for (const auto& entry : list) {
        phrases.push_back(entry.phrase);
    }
    return PhraseBook{phrases};
}

const PhraseBook& recipe_book() {
    static const auto book = book_of(allergen_phrases());
    return book;
}

const PhraseBook& book_abroad() {
    static const auto book = book_of(allergen_names_abroad());
    return book;
}

/// All that the phrases of `list` say about a text, in order; the allergens denied last.
struct Findings {
    std::vector<AllergenMention> names;
    std::vector<Allergen> denied;
};

Findings look_up(const std::vector<std::string>& words, const PhraseBook& book,
                 std::span<const AllergenPhrase> list) {
    Findings found;
    for (const auto& match : book.find(words)) {
        for (const auto position : match.entries) {
            const auto& entry = list[position];
            if (entry.says == Says::Names) {
                found.names.push_back({joined(words, match.first, match.count),
                                       {entry.allergen, std::string{entry.kind}}});
            } else if (entry.says == Says::Denies) {
                found.denied.push_back(entry.allergen);
            }
        }
    }
    return found;
}

bool contains_mention(const std::vector<AllergenMention>& mentions, const NamedAllergen& named) {
    return std::ranges::any_of(mentions,
                               [&](const auto& mention) { return mention.named == named; });
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
    const auto words = words_of(written);
    auto found = look_up(words, recipe_book(), allergen_phrases());
    if (found.names.empty()) {
        found = look_up(words, book_abroad(), allergen_names_abroad());
    }
    for (auto& mention : found.names) {
        const bool denied =
            std::ranges::find(found.denied, mention.named.allergen) != found.denied.end();
        if (!denied && std::ranges::find(declared.meant, mention.named) == declared.meant.end()) {
            declared.meant.push_back(std::move(mention.named));
        }
    }
    return declared;
}

std::vector<AllergenMention> mentioned_allergens(std::string_view text) {
    const auto found = look_up(words_of(text), recipe_book(), allergen_phrases());
    std::vector<AllergenMention> mentions;
    for (const auto& mention : found.names) {
        const bool denied =
            std::ranges::find(found.denied, mention.named.allergen) != found.denied.end();
        if (!denied && !contains_mention(mentions, mention.named)) {
            mentions.push_back(mention);
        }
    }
    return mentions;
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
