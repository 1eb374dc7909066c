#pragma once

#include "base/diagnostic.h"
#include "kitchen/allergens/allergens.h"
#include "kitchen/bag_id.h"
#include "kitchen/cautions/caution.h"
#include "kitchen/cooking/safe_minimum.h"
#include "kitchen/day.h"
#include "kitchen/heat/cooling_advice.h"
#include "kitchen/heat/freezer_load.h"
#include "kitchen/heat/thaw_ceiling.h"
#include "kitchen/heat/thaw_lead.h"
#include "kitchen/room.h"
#include "kitchen/settings.h"
#include "kitchen/storage/fridge_life.h"
#include "kitchen/storage/keep_until.h"
#include "kitchen/storage/storage.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace thawslip::kitchen {

struct Bag {
    std::string id; ///< as printed, with its check character: see bag_id.h
    int number = 1; ///< bag `number` of `of`
    int of = 1;
    std::chrono::days waits{0}; ///< in the refrigerator, until the freezer has room for it
};

/// A package with everything worked out that a print can say.
struct PlannedPackage {
    /// As the cook wrote it, but for the cooking time, which is the one for how it starts to cook;
    /// where bags wait for the freezer, with the longest wait among them in `days_refrigerated`,
    /// so that one dish says one figure on all its prints, the strictest.
    Package package;
    Date made;
    KeepUntil keep_until;
    Batch batch;
    std::vector<Bag> bags;
    std::vector<Finish> finish;                ///< ordered by when they go in
    std::vector<Caution> cautions;             ///< the gravest first; none of level Refuse
    std::vector<DeclaredAllergen> allergens;   ///< what `contains` means, in its order
    std::vector<DeclaredAllergen> may_contain; ///< what `may_contain` means
    std::optional<DaysLeft> after_thawing;     ///< nothing unless it thaws in the refrigerator
    std::optional<ThawLead> thaw_lead;         ///< nothing where food does not thaw as set

    Wetness wetness = Wetness::Either; ///< of its food

    /// How it gets cold in time where it was filled hot, or that it is not; nothing for food that
    /// is all raw, and where the thickness is not known.
    std::optional<CoolingAdvice> cooling = std::nullopt;

    /// How long it takes to freeze, lying as it is placed; nothing where the thickness is not
    /// known.
    std::optional<std::chrono::minutes> freezing = std::nullopt;

    /// How hot it must get at least, and whose figure that is; nothing where none is published.
    std::optional<CountedMinimum> minimum = std::nullopt;

    bool raw = false; ///< whether what is in the bag is raw, or a part of it
    Served served = Served::Cooked;
    std::optional<std::chrono::seconds> hold = std::nullopt; ///< the middle stays that hot for it
    bool counts_from_frozen = false; ///< by may_count_from_frozen of cook_time.h

    /// The same package by each other method that the cook names, in that order: with its own time
    /// to thaw, to keep and to cook. What is to be minded by them stands in `cautions`.
    std::vector<PlannedPackage> other_thaws = {};

    /// Which dish of its day it is, as described, from 1; refused ones count, so that repairing one
    /// changes no other's. All sizes of a dish have one.
    int number = 1;

    int in_freezer = 0; ///< other bags of this dish that are frozen, as far as is known
};

struct Plan {
    std::string kitchen;
    Date made;
    std::optional<Date> prepared = std::nullopt; ///< as the day's
    std::vector<PlannedPackage> packages;
    std::vector<Caution> cautions; ///< what holds for the whole packing day, said once

    /// The day's bags, by their ids, against the freezer's capacity; nothing where that is not
    /// known.
    std::optional<FreezerLoad> freezer_load = std::nullopt;

    std::optional<double> freezer_litres = std::nullopt; ///< as the day's
    Room room = {};                                      ///< what the day's bags need
    /// What is in the freezer beside the day's bags; nothing where nobody knows.
    std::optional<FreezerHolds> holds = std::nullopt;
};

/// A dish of a plan and some of its bags.
struct DishBags {
    const PlannedPackage* planned = nullptr;
    std::vector<std::string> bags;
};

/// The bags called so by their dishes, in the plan's order, which is the cook's.
/// \returns pointers into `plan`
std::vector<DishBags> by_dish(const Plan& plan, const std::vector<std::string>& bags);

/// The packages of a plan, those of one dish together: one, or one for each of its sizes.
std::vector<std::span<const PlannedPackage>> dishes_of(const Plan& plan);

/// Works out dates, ids, order and cautions. Pure: reads no clock and no file.
///
/// What the cook must mend (a kind of food nobody knows, a use-by before the day it was made,
/// a caution of level Refuse) is appended to `faults` with its key path and no file; the package
/// is then left out of the plan.
/// \param batches of each package of the day, in its order, where the archive knows them; without,
/// each is the first of its name, of this kitchen
Plan plan(const Day& day, const StorageTable& table, Diagnostics& faults,
          const KitchenSettings& settings = {}, const std::vector<Batch>& batches = {});

} // namespace thawslip::kitchen
