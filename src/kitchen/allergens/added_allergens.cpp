#include "kitchen/allergens/added_allergens.h"

namespace thawslip::kitchen {

std::vector<DeclaredAllergen> added_allergens(const std::vector<Finish>& finish,
                                              const std::vector<DeclaredAllergen>& declared,
                                              const AllergenList& list) {
    std::vector<DeclaredAllergen> found;
    for (const auto& addition : finish) {
        for (auto& mention : mentioned_allergens(text_of(addition.add))) {
            if (is_listed(mention.named, list) || is_declared(mention.named, declared, list)) {
                found.push_back({std::move(mention.words), {std::move(mention.named)}});
            }
        }
    }
    return found;
}

} // namespace thawslip::kitchen
