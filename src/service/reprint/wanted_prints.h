#pragma once

#include "archive/archive.h"
#include "service/messages.h"
#include "service/print/job.h"
#include "service/print/part.h"

#include <set>
#include <string>
#include <vector>

namespace thawslip::service {

/// Cards are of two kinds, which may have been printed apart.
enum class ReprintKind { Labels, Cards, FinishingCards, CookDayCards };

/// What is to be printed again.
struct ReprintQuestion {
    std::vector<std::string> bags; ///< ids, or words of a dish
    std::string printed;           ///< the day of a print, as written; empty: by `bags`
    ReprintKind kind = ReprintKind::Labels;
    Part part = {}; ///< of those bags, or of what was printed on that day; alone: of all bags
};

/// One print of the archive and the bags of it that are wanted.
struct WantedPrint {
    archive::StoredPrint print;
    std::set<std::string> bags; ///< newest ids
    bool whole = false;
    Part part = {}; ///< of a whole print
};

/// What the kind of print is called by whoever lays it out.
What what_of(ReprintKind kind);

/// The prints to be made again: those that hold the bags, or those of a date. Where each bag has
/// such a print already and only those without were asked for, there are none.
Outcome<std::vector<WantedPrint>> find_prints(archive::Archive& archive,
                                              const ReprintQuestion& question);

} // namespace thawslip::service
