#pragma once

#include "kitchen/allergens/allergens.h"
#include "kitchen/foods/flesh_named.h"
#include "kitchen/plan.h"
#include "service/messages.h"

#include <string>
#include <vector>

namespace thawslip::service {

/// Something that a guest may not eat, as it was typed.
struct Avoided {
    std::string written;
    /// Which allergens it is, in any of the three languages; "nuts" are all tree nuts and peanuts.
    /// None: no list knows it, and it is looked for in the words of the description.
    std::vector<kitchen::NamedAllergen> meant;
    /// Meat, poultry, fish or shellfish that it is: looked for in kinds of food, too.
    kitchen::FleshNamed flesh = {};
};

/// Where a bag's description names what is avoided.
enum class NamedIn {
    Contains,
    MayContain,
    Added, ///< what is added on cook day
    Words, ///< the cook's own words: ingredients, steps, notes, the dish's name
    Group, ///< another of the same group, or one that does not say which: ask
};

/// That a bag's description names something.
struct AvoidedNamed {
    std::string avoided; ///< as typed
    NamedIn in = NamedIn::Contains;
    std::string as; ///< how the description calls it
    friend bool operator==(const AvoidedNamed&, const AvoidedNamed&) = default;
};

/// What a guest may not eat, a comma between several. Refused where nothing is there. What no list
/// knows is said: it is only looked for as a word.
Outcome<std::vector<Avoided>> read_avoided(const std::string& typed);

/// Where a package's description names what is avoided, each once, where that is said most plainly.
/// Nothing is never a promise: what no label names may be there all the same.
std::vector<AvoidedNamed> avoided_in(const kitchen::PlannedPackage& planned,
                                     const std::vector<Avoided>& avoided);

} // namespace thawslip::service
