#pragma once

#include "archive/archive.h"
#include "kitchen/date.h"
#include "service/freezer/guest.h"
#include "wording/door_list.h"

#include <chrono>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace thawslip::service {

struct FreezerQuestion {
    std::vector<std::string> words;    ///< of dishes or places, or beginnings; empty: everything
    bool gone_too = false;             ///< bags that are out, eaten or discarded as well
    std::vector<Avoided> without = {}; ///< what a guest may not eat; none: nobody asks
    std::optional<std::string> place = {}; ///< only bags that lie there, as the cook wrote it
};

/// A bag of the archive, and the day its label was printed after it was noted as gone, if any.
struct FoundBag {
    archive::Bag bag;
    std::string printed_since;
    std::optional<wording::DoorAllergens> allergens = {}; ///< nothing: not known any longer
    std::vector<AvoidedNamed> named = {};                 ///< what is not for the guest
};

/// What is in these bags, in their order, and what of that a guest may not eat.
/// \param list the allergens that what is added on cook day is held against
std::vector<FoundBag> found_bags(archive::Archive& archive, std::vector<archive::Bag> bags,
                                 const std::vector<Avoided>& without,
                                 const kitchen::AllergenList& list);

struct BagTotal {
    int bags = 0;
    int servings = 0;
    double grams = 0.0;      ///< of those with a weight
    bool all_weighed = true; ///< whether all have one

    BagTotal& operator+=(const BagTotal& more);
};

BagTotal total_of(const archive::Bag& bag);

struct FreezerList {
    std::vector<FoundBag> bags;             ///< the soonest date first
    std::map<std::string, BagTotal> totals; ///< of each dish, what is frozen
    int past = 0;                           ///< frozen bags past the date on their label
};

/// What the archive has of what is asked for.
/// \param list the allergens that what is added on cook day is held against
FreezerList freezer_list(archive::Archive& archive, const FreezerQuestion& question,
                         kitchen::Date today, const kitchen::AllergenList& list);

/// What is frozen of these bags, by the month of the date on the label.
std::map<std::chrono::year_month, BagTotal> totals_by_month(std::span<const FoundBag> bags);

/// The same by where they lie, as the cook wrote it; empty: where that is not known.
std::map<std::string, BagTotal> totals_by_place(std::span<const archive::Bag> bags);

} // namespace thawslip::service
