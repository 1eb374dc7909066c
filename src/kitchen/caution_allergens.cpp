#include "kitchen/allergens.h"
#include "kitchen/caution_topics.h"

#include <algorithm>

namespace thawslip::kitchen {
namespace {

using namespace scene;

constexpr std::string_view lists =
    "FDA, Questions and Answers Regarding Food Allergens, edition 5, 2025; Regulation (EU) "
    "1169/2011, Annex II";

KeyPath place(const Scene& scene, std::size_t position) {
    return scene.package.where.key("contains").index(position);
}

std::vector<DeclaredAllergen> declared_in(const Package& package) {
    std::vector<DeclaredAllergen> declared;
    for (const auto& written : package.contains) {
        declared.push_back(read_allergen(written));
    }
    return declared;
}

Findings unknown(const Scene& scene) {
    Findings found;
    const auto declared = declared_in(scene.package);
    for (std::size_t i = 0; i < declared.size(); ++i) {
        if (declared[i].meant.empty()) {
            found.push_back({{declared[i].as_written}, place(scene, i)});
        }
    }
    return found;
}

Findings kind_not_named(const Scene& scene) {
    Findings found;
    const auto declared = declared_in(scene.package);
    for (std::size_t i = 0; i < declared.size(); ++i) {
        for (const auto& named : declared[i].meant) {
            if (named.kind.empty() && must_name_kind(named.allergen, scene.settings.allergens)) {
                found.push_back({{std::string{key(named.allergen)}}, place(scene, i)});
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
    for (const auto& [text, where] : food_texts(scene.package)) {
        for (const auto& mention : mentioned_allergens(text)) {
            if (!is_listed(mention.named, rules) || is_declared(mention.named, known, rules)) {
                continue;
            }
            found.push_back({{mention.words, label_name(mention.named, rules)}, where});
            known.push_back({mention.words, {mention.named}});
        }
    }
    return found;
}

constexpr CautionRule rules[] = {
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
