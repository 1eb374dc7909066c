#include "kitchen/allergens.h"
#include "kitchen/caution_topics.h"

#include <algorithm>

namespace thawslip::kitchen {
namespace {

using namespace scene;

constexpr std::string_view lists =
    "FDA, Questions and Answers Regarding Food Allergens, edition 5, 2025; Regulation (EU) "
    "1169/2011, Annex II";

/// One entry of `contains` or `may_contain`.
struct Entry {
    DeclaredAllergen declared;
    WordedText text;
    KeyPath where;
};

std::vector<Entry> entries(const Package& package) {
    std::vector<Entry> all;
    const auto add = [&](const std::vector<std::string>& list, const char* key) {
        for (std::size_t i = 0; i < list.size(); ++i) {
            all.push_back(
                {read_allergen(list[i]), worded(list[i]), package.where.key(key).index(i)});
        }
    };
    add(package.contains, "contains");
    add(package.may_contain, "may_contain");
    return all;
}

std::vector<DeclaredAllergen> declared_in(const Package& package) {
    std::vector<DeclaredAllergen> declared;
    for (auto& entry : entries(package)) {
        declared.push_back(std::move(entry.declared));
    }
    return declared;
}

/// "None", "gluten-free", "sin nueces", "keine", "-": what is not in it.
bool is_denial(const Entry& entry) {
    const auto negations = mentions(entry.text, Section::Negation);
    const bool negated = std::ranges::any_of(negations, [](const Mention& mention) {
        return mention.meaning == "not" || mention.meaning == "free" ||
               mention.meaning == "nothing";
    });
    const bool vegan =
        entry.declared.meant.empty() && !mentions(entry.text, Section::AllergenDenied).empty();
    return negated || vegan || entry.text.words.empty();
}

/// "May contain nuts", "Spuren von Sesam": what may be in it.
bool is_trace(const Entry& entry) {
    return says(entry.text, Section::Trace, "trace");
}

/// The allergens of an entry by the names of the list, as `may_contain` takes them.
std::string names_of(const Entry& entry, AllergenRules rules) {
    std::string names;
    for (const auto& named : entry.declared.meant) {
        names += (names.empty() ? "\"" : ", \"") + label_name(named, rules) + "\"";
    }
    return names.empty() ? "\"…\"" : names;
}

Findings denied(const Scene& scene) {
    Findings found;
    for (const auto& entry : entries(scene.package)) {
        if (is_denial(entry) && !is_trace(entry)) {
            found.push_back({{entry.declared.as_written}, entry.where});
        }
    }
    return found;
}

Findings traces(const Scene& scene) {
    Findings found;
    for (const auto& entry : entries(scene.package)) {
        if (is_trace(entry)) {
            found.push_back({{entry.declared.as_written, names_of(entry, scene.settings.allergens)},
                             entry.where});
        }
    }
    return found;
}

Findings unknown(const Scene& scene) {
    Findings found;
    for (const auto& entry : entries(scene.package)) {
        if (entry.declared.meant.empty() && !is_denial(entry) && !is_trace(entry)) {
            found.push_back({{entry.declared.as_written}, entry.where});
        }
    }
    return found;
}

Findings kind_not_named(const Scene& scene) {
    Findings found;
    for (const auto& entry : entries(scene.package)) {
        for (const auto& named : entry.declared.meant) {
            if (named.kind.empty() && must_name_kind(named.allergen, scene.settings.allergens)) {
                found.push_back({{std::string{key(named.allergen)}}, entry.where});
            }
        }
    }
    return found;
}

/// Each undeclared allergen once, at the first words that name it.
Findings undeclared(const Scene& scene) {
    Findings found;
    const auto rules = scene.settings.allergens;
    auto known = declared_in(scene.package);
    for (const auto& read : scene.texts) {
        if (!names_food(read.field)) {
            continue;
        }
        for (const auto& mention : mentioned_allergens(read.text)) {
            if (!is_listed(mention.named, rules) || is_declared(mention.named, known, rules)) {
                continue;
            }
            found.push_back({{mention.words, label_name(mention.named, rules)}, read.where});
            known.push_back({mention.words, {mention.named}});
        }
    }
    return found;
}

constexpr CautionRule rules[] = {
    {"allergen-denied", CautionLevel::Refuse,
     "\"{0}\" says what is not in the food; expected the names of allergens that are in it",
     "name only those, or leave the key out: no print says that a food is free from something",
     lists, denied},
    {"allergen-trace", CautionLevel::Refuse,
     "\"{0}\" says what may be in the food by chance; expected may_contain = [{1}]",
     "contains takes the names of what is in it, may_contain the names of what may be", lists,
     traces},
    {"allergen-undeclared", CautionLevel::Check,
     "\"{0}\" names an allergen that contains does not list: {1}?", "", lists, undeclared},
    {"allergen-kind", CautionLevel::Check,
     "\"{0}\" should be named by kind, as in \"walnut\", \"cod\", \"shrimp\" or \"barley\"", "",
     lists, kind_not_named},
    {"allergen-unknown", CautionLevel::Check,
     "\"{0}\" is on no list of allergens known here; it is printed as written", "", lists, unknown},
};

} // namespace

std::span<const CautionRule> allergen_rules() {
    return rules;
}

} // namespace thawslip::kitchen
