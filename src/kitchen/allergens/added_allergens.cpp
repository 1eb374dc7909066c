#include "kitchen/allergens/added_allergens.h"

#include "base/list.h"

#include <string>

namespace thawslip::kitchen {
namespace {

std::vector<std::string> added_texts(const Package& package) {
    auto texts = mapped(package.finish, [](const Finish& finish) { return text_of(finish.add); });
    for (const auto& side : package.sides) {
        texts.push_back(text_of(side.add));
    }
    return texts;
}

} // namespace

std::vector<DeclaredAllergen> added_allergens(const Package& package) {
    std::vector<DeclaredAllergen> found;
    for (const auto& text : added_texts(package)) {
        for (auto& mention : mentioned_allergens(text)) {
            found.push_back({std::move(mention.words), {std::move(mention.named)}});
        }
    }
    return found;
}

std::vector<DeclaredAllergen> added_allergens(const Package& package,
                                              const std::vector<DeclaredAllergen>& declared,
                                              const AllergenList& list) {
    auto found = added_allergens(package);
    std::erase_if(found, [&](const DeclaredAllergen& added) {
        const auto& named = added.meant.front();
        return !is_listed(named, list) && !is_declared(named, declared, list);
    });
    return found;
}

} // namespace thawslip::kitchen
