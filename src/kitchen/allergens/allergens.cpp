#include "kitchen/allergens/allergens.h"

#include "base/list.h"
#include "base/nearest.h"
#include "kitchen/texts/negation.h"
#include "kitchen/texts/phrases.h"

#include <algorithm>
#include <iterator>
#include <optional>

namespace thawslip::kitchen {
namespace {

/// What a key of src/kitchen/words means: "tree nuts (walnut)"; nothing for "nothing", which only
/// sounds like an allergen.
std::optional<NamedAllergen> named_by(std::string_view meaning) {
    const auto bracket = meaning.find(" (");
    const auto allergen = value_in(allergen_names, meaning.substr(0, bracket));
    if (!allergen) {
        return std::nullopt;
    }
    const auto kind = bracket == std::string_view::npos
                          ? std::string_view{}
                          : meaning.substr(bracket + 2, meaning.size() - bracket - 3);
    return NamedAllergen{*allergen, std::string{kind}};
}

/// "Sellerie" of "-Sellerie-", which is also found within a longer word.
std::string without_dashes_around(std::string_view phrase) {
    const auto first = phrase.find_first_not_of('-');
    return std::string{phrase.substr(first, phrase.find_last_not_of('-') + 1 - first)};
}

/// All that a text says, in order, and the classes that it denies.
struct SaidAllergens {
    std::vector<AllergenMention> names;
    std::vector<Allergen> denied;
};

void deny(SaidAllergens& found, Allergen allergen) {
    std::ranges::copy(denied_with(allergen), std::back_inserter(found.denied));
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

SaidAllergens look_up(const WordedText& text, Words words) {
    SaidAllergens found;
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
        return contains(found.denied, mention.named.allergen);
    });
    return found;
}

bool contains_mention(const std::vector<AllergenMention>& mentions, const NamedAllergen& named) {
    return std::ranges::any_of(mentions,
                               [&](const auto& mention) { return mention.named == named; });
}

std::vector<AllergenMention> each_once(SaidAllergens all) {
    std::vector<AllergenMention> found;
    for (auto& mention : all.names) {
        if (!contains_mention(found, mention.named)) {
            found.push_back(std::move(mention));
        }
    }
    return found;
}

} // namespace

std::vector<Allergen> denied_with(Allergen allergen) {
    if (allergen == Allergen::GlutenCereals) {
        return {allergen, Allergen::Wheat};
    }
    if (allergen == Allergen::TreeNuts) {
        return {allergen, Allergen::Peanuts};
    }
    return {allergen};
}

DeclaredAllergen read_allergen(std::string_view written) {
    return {std::string{written}, mapped(mentioned_allergens(written), &AllergenMention::named)};
}

std::vector<DeclaredAllergen> read_allergens(const std::vector<std::string>& list) {
    return mapped(list, read_allergen);
}

std::vector<AllergenMention> mentioned_allergens(std::string_view text) {
    return mentioned_allergens(worded(text));
}

std::optional<std::string> allergen_near(std::string_view written) {
    std::vector<std::string> words;
    for (const auto* row : rows_of(Section::Allergen)) {
        if (named_by(row->meaning)) {
            words.push_back(without_dashes_around(row->phrase));
        }
    }
    return nearest(written, words);
}

std::vector<AllergenMention> mentioned_allergens(const WordedText& text) {
    return each_once(look_up(text, Words::OfFood));
}

std::vector<AllergenMention> allergens_in_step(const WordedText& text) {
    return each_once(look_up(text, Words::OfSteps));
}

bool is_declared(const NamedAllergen& named, const std::vector<DeclaredAllergen>& declared,
                 const AllergenList& list) {
    const auto covers = [&](const NamedAllergen& said) {
        if (said.allergen != named.allergen) {
            return said.kind.empty() && said.allergen == as_listed(named, list).allergen;
        }
        return !must_name_kind(named.allergen, list) || said.kind.empty() || named.kind.empty() ||
               said.kind == named.kind;
    };
    return std::ranges::any_of(
        declared, [&](const auto& entry) { return std::ranges::any_of(entry.meant, covers); });
}

} // namespace thawslip::kitchen
