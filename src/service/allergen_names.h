#pragma once

#include "kitchen/allergens/allergens.h"

#include <string>
#include <vector>

namespace thawslip::service {

/// Allergens by what they mean, so that "Celery" and "celery" are one: "tree nuts (walnut)"; what
/// is on no list as it was written. \param before stands before each of them: "may contain "
std::vector<std::string> allergen_names(const std::vector<kitchen::DeclaredAllergen>& list,
                                        const std::string& before = {});

/// Words in order, each once.
std::vector<std::string> sorted_once(std::vector<std::string> words);

} // namespace thawslip::service
