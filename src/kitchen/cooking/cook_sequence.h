#pragma once

#include "kitchen/plan.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace thawslip::kitchen {

/// What is done in one go: additions, and the step that puts them in. One of the two at least.
struct CookAct {
    std::vector<std::size_t> additions; ///< places in PlannedPackage::finish
    std::optional<std::size_t> step;    ///< a place in Cook::steps
    friend bool operator==(const CookAct&, const CookAct&) = default;
};

/// What belongs to one moment of cooking, in order.
struct CookMoment {
    When when;
    std::vector<CookAct> acts;
    friend bool operator==(const CookMoment&, const CookMoment&) = default;
};

/// The cook's steps and the additions of a package as one sequence, moment by moment; the start is
/// always the first, though nothing may belong to it.
///
/// A step belongs to the first moment whose addition it names, and those behind it to the same,
/// until one names an addition of a later moment: "Stir in the spinach" begins "last 10 min", when
/// the spinach goes in. Words are compared by their dictionary forms, in any language. Steps keep
/// their order, and additions theirs: one that no step names stands at the end of what comes before
/// the next moment. A step that is all about a time before the end, "Take the lid off for the last
/// 15 min", stands at that time, and so does one of the start that begins with a time, "After 30
/// min turn it". Nothing is left out, whatever the words are.
std::vector<CookMoment> cook_sequence(const PlannedPackage& planned);

/// Whether something is still cooked at a moment, as its steps say: "Boil for 2 min, then season".
bool still_cooks(const CookMoment& moment, const PlannedPackage& planned);

} // namespace thawslip::kitchen
