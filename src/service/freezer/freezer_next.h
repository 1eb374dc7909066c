#pragma once

#include "archive/archive.h"
#include "kitchen/plan.h"
#include "service/freezer/guest.h"
#include "service/now.h"

#include <chrono>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace thawslip::service {

struct NextQuestion {
    int count = 5; ///< days, from tomorrow on
    std::chrono::minutes at = std::chrono::hours{18} + std::chrono::minutes{30}; ///< to eat
    std::optional<int> serves = {}; ///< people at the table; nothing: as usual_table() of the bags
    bool past_too = false; ///< bags past a best-by date as well; never those past a use-by date
    std::vector<Avoided> without = {}; ///< what a guest may not eat; none: nobody asks
};

/// Bags of one dish and the day they are to be eaten.
struct Proposal {
    kitchen::LocalMinute eat;
    std::vector<archive::Bag> bags;                      ///< at least one, the soonest date first
    std::optional<kitchen::ThawMethod> method = {};      ///< nothing: the label knows
    std::optional<kitchen::LocalMinute> thaw_start = {}; ///< nothing: not thawed, or not known
    std::optional<kitchen::TimeRange> thaw_time = {};
    std::optional<std::chrono::days> cook_within = {};
    /// What its bags were filled with, thawed by `method`; nothing: the label knows.
    std::optional<kitchen::PlannedPackage> way = {};

    int servings() const; ///< of all its bags
};

/// A meal that dishes are not proposed for, as their date comes before it.
struct MealAfterDate {
    kitchen::LocalMinute eat;
    std::vector<archive::Bag> bags; ///< of each dish the one with the soonest date
};

/// What is proposed, and what is not.
struct Menu {
    std::vector<Proposal> proposals;
    /// Meals that nothing can be thawed for of what is not past its date by then.
    std::vector<kitchen::LocalMinute> without;
    std::vector<MealAfterDate> after_date; ///< meals without a proposal, soonest first
    int past = 0;                          ///< bags past the date on their label
    int too_many = 0;                      ///< bags whose date comes before their turn
    int serves = 1;                        ///< what each proposal serves at least
    std::vector<std::string> small;        ///< dishes that are a child's portion, no dinner
    std::vector<std::string> too_few;      ///< dishes whose bags together do not serve enough
    std::vector<std::string> avoided; ///< dishes with what the guest may not eat, or that nobody
                                      ///< knows the contents of
    int days_left = 0;                ///< meals for which every dish was proposed already
};

/// For how many a dinner is where nobody says: for one where most bags are for one, else for two.
int usual_table(const std::vector<archive::Bag>& bags);

/// Whether a bag is a child's portion by its dish's name, in three languages, or by its weight:
/// less than 150 g a serving is no dinner (common practice, no source).
bool is_small_portion(const archive::Bag& bag);

/// What a bag was filled with; nullptr where that cannot be read any longer.
using PackageOf = std::function<const kitchen::PlannedPackage*(const archive::Bag&)>;

/// What to eat on the coming days and when to start thawing it: each day the dish with the soonest
/// date that can still be thawed as its label says, with as many of its bags as the table needs,
/// and no dish twice. Raw and cooked bags of one name are two dishes.
/// \param frozen the bags of the freezer, the soonest date first
Menu freezer_next(std::vector<archive::Bag> frozen, const PackageOf& package_of,
                  const NextQuestion& question, const Now& now, const kitchen::ThawSettings& thaw);

/// The same of the freezer that an archive knows.
Menu freezer_next(archive::Archive& archive, const NextQuestion& question, const Now& now,
                  const kitchen::ThawSettings& thaw);

} // namespace thawslip::service
