#pragma once

#include "kitchen/plan.h"
#include "wording/print.h"
#include "wording/style.h"

#include <string>
#include <string_view>
#include <vector>

namespace thawslip::wording {

// What the sheets of a packing day are put together from.

/// The same with a box to tick before it.
Paragraph ticked(Paragraph paragraph);

/// What stands above a section.
Paragraph heading(std::string_view words);

/// A dish by its number of the day: "2 · RAW · Apple and sage pork".
std::string numbered(const kitchen::PlannedPackage& planned, const Style& style);

/// "Sat 17 Oct 2026", on one line.
std::string say_weekday_date(kitchen::Date date, const Language& language);

/// A list with what stands above it.
struct Column {
    std::string head; ///< words
    std::vector<Paragraph> cells;
};

/// Lists side by side, a row at a time, so that they may run on to another page. An empty one has
/// no head.
void add_side_by_side(Field& field, std::vector<Column> columns);

/// A sheet of a packing day with its title and whose kitchen it is, and nothing below.
/// \param title its words
/// \param date words too
Print new_sheet(const std::string& title, const std::string& date, const std::string& kitchen,
                const Style& style);

} // namespace thawslip::wording
