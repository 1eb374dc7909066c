#pragma once

#include "kitchen/plan.h"
#include "wording/language.h"
#include "wording/print.h"

namespace thawslip::wording {

// The fields that several prints share, one function each. A field without paragraphs has
// nothing to say.

Field dish_field(const kitchen::PlannedPackage& planned);
Field servings_field(const kitchen::PlannedPackage& planned, const Language& language);
Field bag_field(const kitchen::Bag& bag, const Language& language);
Field id_field(const kitchen::Bag& bag);
Field made_field(const kitchen::PlannedPackage& planned, const Language& language);
Field keep_until_field(const kitchen::PlannedPackage& planned, const Language& language);
Field thaw_field(const kitchen::PlannedPackage& planned, const Language& language);
Field contains_field(const kitchen::PlannedPackage& planned, const Language& language);
Field note_field(const kitchen::PlannedPackage& planned, const Language& language);
Field kitchen_field(const std::string& kitchen, const Language& language);

/// The line that every print with food advice carries.
Field local_rules_field(const Language& language);

/// Cautions of at least `least`, one paragraph each.
Field cautions_field(const kitchen::PlannedPackage& planned, kitchen::CautionLevel least,
                     const Language& language);

/// The words of one caution in this language; English where its table has none.
std::string say_caution(const kitchen::Caution& caution, const Language& language);

/// "1 l vegetable stock (small bag taped to this one)": what is added and where it waits.
std::string say_addition(const kitchen::Finish& finish);

} // namespace thawslip::wording
