#include "service/freezer/guest.h"

#include "base/split.h"
#include "base/utf8.h"
#include "intake/storage_file.h"
#include "kitchen/foods/food_words.h"
#include "kitchen/texts/free_texts.h"
#include "kitchen/texts/text.h"

#include <algorithm>
#include <fmt/format.h>
#include <optional>

namespace thawslip::service {
namespace {

using kitchen::Allergen;
using kitchen::NamedAllergen;

/// Who says "nuts" without more may well mean peanuts too: the strict side.
void add_peanuts(std::vector<NamedAllergen>& meant) {
    const bool any_nut =
        std::ranges::find(meant, NamedAllergen{Allergen::TreeNuts, {}}) != meant.end();
    const NamedAllergen peanuts{Allergen::Peanuts, {}};
    if (any_nut && std::ranges::find(meant, peanuts) == meant.end()) {
        meant.push_back(peanuts);
    }
}

/// "No nuts", "gluten-free", "sin leche", "vegan": what somebody wants, and not what they may not
/// eat.
bool is_denial(const std::string& entry) {
    const auto text = kitchen::worded(entry);
    const auto negations = kitchen::mentions(text, kitchen::Section::Negation);
    return !kitchen::mentions(text, kitchen::Section::AllergenDenied).empty() ||
           std::ranges::any_of(negations, [](const kitchen::Mention& mention) {
               return mention.meaning == "not" || mention.meaning == "free" ||
                      mention.meaning == "nothing";
           });
}

kitchen::FoodWords food_words() {
    static const auto table = intake::built_in_storage(); // the words are those of every list
    return table.words;
}

bool means(const Avoided& avoided, std::initializer_list<Allergen> allergens) {
    return std::ranges::any_of(avoided.meant, [&allergens](const NamedAllergen& named) {
        return std::ranges::find(allergens, named.allergen) != allergens.end();
    });
}

/// What no list of allergens knows may be meat or poultry; what one knows, fish or shellfish.
kitchen::FleshNamed flesh_of(const Avoided& avoided) {
    if (avoided.meant.empty()) {
        return flesh_in(food_words(), kitchen::words_of(avoided.written));
    }
    return {.fish = means(avoided, {Allergen::Fish}),
            .shellfish = means(avoided, {Allergen::Crustaceans, Allergen::Molluscs})};
}

Avoided read_entry(const std::string& entry) {
    Avoided avoided{entry, kitchen::read_allergen(entry).meant};
    add_peanuts(avoided.meant);
    avoided.flesh = flesh_of(avoided);
    return avoided;
}

bool is_meat(const kitchen::FleshNamed& flesh) {
    return flesh.poultry || flesh.meat || flesh.perhaps;
}

/// Wheat is one of the cereals with gluten, whichever list is set.
bool is_gluten(const NamedAllergen& named) {
    return named.allergen == Allergen::Wheat || named.allergen == Allergen::GlutenCereals;
}

bool is_any_gluten(const NamedAllergen& named) {
    return named.allergen == Allergen::GlutenCereals && named.kind.empty();
}

enum class Match { No, Group, Yes };

/// Whether what a description names is what is avoided: the same class, and the same kind where
/// both say one; where one of them says none, it may be.
Match match(const NamedAllergen& wanted, const NamedAllergen& named) {
    if (is_gluten(wanted) && is_gluten(named) && (is_any_gluten(wanted) || is_any_gluten(named))) {
        return Match::Yes;
    }
    if (wanted.allergen != named.allergen) {
        return Match::No;
    }
    const bool same = wanted.kind.empty() || wanted.kind == named.kind;
    return same || named.kind.empty() ? Match::Yes : Match::Group;
}

/// The same of meat and fish. Who says "meat", which may be any, avoids all of it; of who names one
/// animal it is asked whether what is of its sort is of it.
Match match(const kitchen::FleshNamed& wanted, const kitchen::FleshNamed& named) {
    if (wanted.fish && named.fish) {
        return Match::Yes;
    }
    if (wanted.perhaps && (named.meat || named.poultry)) {
        return Match::Yes;
    }
    const bool may_be = (is_meat(wanted) && named.perhaps) || (wanted.meat && named.meat) ||
                        (wanted.poultry && named.poultry) || (wanted.shellfish && named.shellfish);
    return may_be ? Match::Group : Match::No;
}

Match best_match(const Avoided& avoided, const NamedAllergen& named) {
    auto best = Match::No;
    for (const auto& wanted : avoided.meant) {
        best = std::max(best, match(wanted, named));
    }
    return best;
}

/// What an entry of a label means; of one that no list knows what its spelling comes near: "milc"
/// may well be milk.
std::vector<NamedAllergen> probably_meant(const kitchen::DeclaredAllergen& entry) {
    const auto near = entry.meant.empty() ? kitchen::allergen_near(entry.as_written) : std::nullopt;
    return near ? kitchen::read_allergen(*near).meant : entry.meant;
}

/// Looks for one thing that is avoided, from what is said most plainly to what is said least.
class Search {
public:
    Search(const kitchen::PlannedPackage& planned, const Avoided& avoided)
        : planned_{planned}, avoided_{avoided} {}

    std::optional<AvoidedNamed> run() {
        look_in(planned_.allergens, NamedIn::Contains);
        look_in_kinds();
        look_in_words(kitchen::names_food, NamedIn::Words);
        look_in_words([](kitchen::FreeText field) { return !kitchen::names_food(field); },
                      NamedIn::Words);
        look_in(planned_.may_contain, NamedIn::MayContain);
        return found_ ? found_ : group_;
    }

private:
    void note(NamedIn in, const std::string& as) {
        if (!found_) {
            found_ = AvoidedNamed{avoided_.written, in, as};
        }
    }
    void note(Match match, NamedIn in, const std::string& as) {
        if (match == Match::Yes) {
            note(in, as);
        } else if (match == Match::Group && !group_) {
            group_ = AvoidedNamed{avoided_.written, NamedIn::Group, as};
        }
    }

    void look_in(const std::vector<kitchen::DeclaredAllergen>& declared, NamedIn in) {
        for (const auto& entry : declared) {
            for (const auto& named : probably_meant(entry)) {
                note(best_match(avoided_, named), in, entry.as_written);
            }
            if (has_words(entry.as_written)) {
                note(in, entry.as_written);
            }
        }
    }

    void look_in_kinds() {
        for (const auto& kind : planned_.package.food) {
            note(match(avoided_.flesh, flesh_of_kind(food_words(), kind)), NamedIn::Words, kind);
        }
    }

    void look_in_words(kitchen::Wanted wanted, NamedIn in) {
        for (const auto& read : kitchen::free_texts(planned_.package, wanted)) {
            const auto where = read.field == kitchen::FreeText::Finish ? NamedIn::Added : in;
            for (const auto& mention : mentions_in(read)) {
                note(best_match(avoided_, mention.named), where, read.written);
            }
            if (has_words(read.written)) {
                note(where, read.written);
            }
            if (kitchen::names_food(read.field)) {
                const auto flesh = flesh_in(food_words(), kitchen::words_of(read.written));
                note(match(avoided_.flesh, flesh), where, read.written);
            }
        }
    }

    static std::vector<kitchen::AllergenMention> mentions_in(const kitchen::ReadText& read) {
        return kitchen::names_food(read.field) ? kitchen::mentioned_allergens(read.text)
                                               : kitchen::allergens_in_step(read.text);
    }

    /// Whether all of its words stand in a text, singular or plural; only of what no list knows.
    bool has_words(const std::string& text) const {
        if (!avoided_.meant.empty()) {
            return false;
        }
        const auto words = stems(text);
        const auto wanted = stems(avoided_.written);
        return !wanted.empty() && std::ranges::all_of(wanted, [&words](const std::string& word) {
            return std::ranges::any_of(words, [&word](const std::string& other) {
                return other == word || (word.size() > 3 && other.find(word) != std::string::npos);
            });
        });
    }
    static std::vector<std::string> stems(const std::string& text) {
        auto words = kitchen::words_of(text);
        std::ranges::transform(words, words.begin(), kitchen::food_stem);
        return words;
    }

    const kitchen::PlannedPackage& planned_;
    const Avoided& avoided_;
    std::optional<AvoidedNamed> found_;
    std::optional<AvoidedNamed> group_;
};

} // namespace

Outcome<std::vector<Avoided>> read_avoided(const std::string& typed) {
    Outcome<std::vector<Avoided>> outcome;
    const auto entries = parts_between_commas(typed);
    if (entries.empty() || first_invalid_utf8(typed)) {
        outcome.messages.error("nothing is said that the guest may not eat",
                               {"for example --without \"milk, walnut\""});
        return outcome;
    }
    std::vector<Avoided> avoided;
    for (const auto& entry : entries) {
        if (is_denial(entry)) {
            outcome.messages.error(
                fmt::format("\"{}\" says what is wanted; expected what the guest may not eat",
                            entry),
                {"name each food itself: --without \"nuts, gluten\", for a vegan \"milk, eggs, "
                 "meat, fish, shellfish, honey, gelatine\""});
            return outcome;
        }
        avoided.push_back(read_entry(entry));
        if (avoided.back().meant.empty()) {
            outcome.messages.caution(fmt::format(
                "\"{}\" is on no list of allergens: it is only looked for {}", entry,
                is_meat(avoided.back().flesh)
                    ? "in kinds of food and in words for meat; what a dish holds of it without "
                      "naming it, as stock or fat, nobody can tell"
                    : "as a word in dishes, ingredients, steps and notes, in the language they "
                      "are written in"));
        }
    }
    outcome.value = std::move(avoided);
    return outcome;
}

std::vector<AvoidedNamed> avoided_in(const kitchen::PlannedPackage& planned,
                                     const std::vector<Avoided>& avoided) {
    std::vector<AvoidedNamed> named;
    for (const auto& one : avoided) {
        if (auto found = Search{planned, one}.run()) {
            named.push_back(std::move(*found));
        }
    }
    return named;
}

} // namespace thawslip::service
