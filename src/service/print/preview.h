#pragma once

#include "layout/compose.h"
#include "service/print/job.h"
#include "service/print/look.h"
#include "service/print/surroundings.h"

#include <optional>
#include <string>
#include <vector>

namespace thawslip::service {

/// One print as it comes out: a label, a card, a page of a list. Prints of one dish and size differ
/// in their bag's own words alone, so one of them stands for all.
struct Sample {
    PrintOf of;
    std::string name; ///< the dish, or the list
    KeyPath where;    ///< whose package; empty for a list
    int card = 1;     ///< where a print runs on over several
    int copies = 1;   ///< how many such prints come out
    layout::Frame frame;
    std::vector<layout::AreaReport> areas;
};

/// What would be printed of days, to be looked at.
struct Preview {
    Days days;
    std::vector<Sample> samples; ///< none where they cannot be laid out
    std::string why_nothing;     ///< where there is nothing to print
    typeset::FontSet fonts;      ///< that the frames are drawn with
};

/// Reads and plans days and lays out what `what` names of them, one print of each dish: as quick as
/// can be, for every change of a text. Says what `check` does of these prints. There is a value,
/// with errors beside it, where the days are well and only their prints are not.
Outcome<Preview> preview(const DayTexts& texts, What what, const Look& look,
                         const Settings& settings, const Surroundings& around);

} // namespace thawslip::service
