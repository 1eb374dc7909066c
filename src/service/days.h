#pragma once

#include "kitchen/plan.h"
#include "service/settings.h"
#include "toml/document.h"

#include <limits>
#include <set>
#include <string>
#include <vector>

namespace thawslip::service {

/// The text of a description of a day.
struct DayText {
    std::string name; ///< for messages
    std::string text;
    std::vector<kitchen::Batch> batches = {}; ///< of its packages; empty: the usual ones
    std::string place =
        {}; ///< its file, to be found again from anywhere; empty: no file that lasts
};

/// Descriptions as they came from where they are kept.
struct DayTexts {
    std::vector<DayText> texts;
    Diagnostics unreadable; ///< those that did not
};

/// Descriptions of days, read and planned.
struct Days {
    std::vector<toml::Document> documents;
    std::vector<DayText> texts;       ///< one for each document
    std::vector<kitchen::Plan> plans; ///< one for each document
    Diagnostics diagnostics;          ///< placed; of all files together
};

/// Whether the bags' ids are those that are printed, or the archive may still change them.
enum class Ids { Final, Planned };

/// Reads and plans every day, as of `settings.kitchen.today`. Never throws for what a cook can
/// write; what is wrong is in `diagnostics`.
Days plan_days(const std::vector<DayText>& texts, const Settings& settings, Ids ids = Ids::Final);
Days plan_days(const DayTexts& texts, const Settings& settings, Ids ids = Ids::Final);

/// One day read again for what its record says, which no caution changes: many are held against
/// an archive at once. \param table of the settings' storage list
Days reread_day(const DayText& text, const Settings& settings, const kitchen::StorageTable& table);

/// The packages of all days, in their order, each with at most its first `of_each` bags.
std::vector<kitchen::PlannedPackage> packages_of(const Days& days,
                                                 int of_each = std::numeric_limits<int>::max());

/// The ids of all bags of the days.
std::set<std::string> bag_ids(const Days& days);

/// Two days that would give two bags one id: said in their diagnostics.
void refuse_shared_ids(Days& days);

} // namespace thawslip::service
