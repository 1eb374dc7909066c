#pragma once

#include "app/settings.h"
#include "kitchen/plan.h"
#include "toml/document.h"

#include <iosfwd>
#include <string>
#include <vector>

namespace thawslip::app {

/// The days named on the command line, read and planned.
struct Days {
    std::vector<toml::Document> documents;
    std::vector<std::string> as_written; ///< one for each document: its bytes
    std::vector<kitchen::Plan> plans;    ///< one for each document
    Diagnostics diagnostics;             ///< placed; of all files together
};

/// Whether the bags' ids are those that are printed, or the archive may still change them.
enum class Ids { Final, Planned };

/// Reads every file and plans every day, as of today. Never throws for what a cook can write; what
/// is wrong is in `diagnostics`. \throws SystemFailure where a file may not be read
Days read_days(const std::vector<std::string>& files, const Settings& settings,
               Ids ids = Ids::Final);

/// A description that is not in a file any longer.
struct DayText {
    std::string name; ///< for messages
    std::string text;
    std::vector<kitchen::Batch> batches = {}; ///< of its packages; empty: the usual ones
};
/// The same for texts.
Days read_days(const std::vector<DayText>& texts, const Settings& settings, Ids ids = Ids::Final);

/// Two days that would give two bags one id: said in their diagnostics.
void refuse_shared_ids(Days& days);

} // namespace thawslip::app
