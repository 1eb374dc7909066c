#pragma once

#include "thawslip/kitchen.h"

#include <optional>
#include <string>
#include <vector>

namespace thawslip {

/// What is printed of days.
enum class Print {
    Labels, ///< one for every bag
    Cards,  ///< for each dish its cook-day card, then the finishing cards of its bags
    FinishingCards,
    CookDayCards,
    Lists,     ///< day sheets, shopping lists and the door list
    DaySheets, ///< with their shopping lists
    DoorList,
};

enum class Format { Pdf, Svg };

/// How prints are laid out, and where on the sheets they stand.
struct Look {
    std::string stock = {};     ///< name of a stock, or a file; empty: the one that fits the paper
    std::string layout = {};    ///< the same of a layout; empty: chosen by the cell's shape
    int first_cell = 1;         ///< counted along rows from 1
    std::vector<int> skip = {}; ///< cells of the first sheet that cannot be used
    std::optional<double> dots_per_inch = {}; ///< of the printer; nothing: as the settings say
    std::optional<bool> large_print = {}; ///< type 1.4 times as large; nothing: as the settings say
    bool trial = false;                   ///< every sheet says that it is no label of food
};

/// What was drawn.
struct Sheets {
    int prints = 0; ///< labels, cards or lists
    int sheets = 0;
    std::string stock;              ///< what they are drawn for
    std::vector<std::string> files; ///< one PDF with all sheets, or an SVG for each
};

/// Draws what is wanted of days. Bags get the ids of first batches: without an archive the same
/// text has the same ids. What does not fit, or could harm, is refused with what would do instead.
Outcome<Sheets> draw(const Kitchen& kitchen, const std::vector<DayText>& days, Print what,
                     const Look& look = {}, Format format = Format::Pdf);

/// All that would be refused or cautioned of labels, cards and lists.
/// \returns whether labels, cards and lists can be printed
Outcome<bool> check(const Kitchen& kitchen, const std::vector<DayText>& days,
                    const Look& look = {});

/// What the code of each label carries, in the order of the labels: printable ASCII and newlines,
/// as src/code/GRAMMAR.md says.
Outcome<std::vector<std::string>>
code_texts(const Kitchen& kitchen, const std::vector<DayText>& days, const Look& look = {});

} // namespace thawslip
