#pragma once

#include "service/print/lay_out.h"

#include <span>
#include <string>
#include <vector>

namespace thawslip::service {

/// A print with all that it is made from, ready to be drawn sheet by sheet (draw_sheet).
struct Printing {
    Days days;
    Job job; ///< without prints: there is nothing to print, and nothing is laid out
    LaidOut laid_out;
    Look look = {}; ///< as asked for, with the bags and the first cell that it came to
    std::string why_nothing = {}; ///< where there is nothing to print
};

/// From the texts of days to sheets: reads and plans them, gives the bags their ids, makes the
/// prints that `what` names and lays them out as `look` says. Nothing is written or remembered.
Outcome<Printing> print(const DayTexts& texts, What what, const Look& look,
                        const Settings& settings, const Surroundings& around);

/// The same of a door list whose bags are known from elsewhere. Of `rows`, those of the part that
/// `look` names are printed.
Outcome<Printing> print_door_list(std::vector<wording::DoorRow> rows, const Look& look,
                                  const Settings& settings, const Surroundings& around);

/// What the code of each label carries, in the order of the labels.
Outcome<std::vector<std::string>> code_texts(const DayTexts& texts, const Look& look,
                                             const Settings& settings, const Surroundings& around);

} // namespace thawslip::service
