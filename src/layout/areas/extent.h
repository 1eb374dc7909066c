#pragma once

#include "base/geometry.h"
#include "code/symbol.h"
#include "wording/print_fields.h"

#include <optional>
#include <string>
#include <vector>

namespace thawslip::toml {
class Table;
}

namespace thawslip::layout {

// What areas of every kind are asked with, and what they answer.

/// What the areas of a layout may name: what its kind of print can say, and its groups.
struct PrintFields {
    std::string print; ///< "bag label"
    std::vector<wording::FieldOfKind> fields;
    std::vector<std::string> groups = {}; ///< never empty once a layout is read
};

/// How large the areas of one group are set, in one number, so that the hierarchy among them is
/// always kept: at 0 each stands at its smallest x-height, at 1 at its comfortable one, at 2 at its
/// largest; between them it grows in proportion.
struct Scale {
    double value = 1.0;
};

/// How type stands in an area: its size and the distance between baselines.
struct TypeSize {
    Length size;
    Length leading;
};

/// Whether the rows of an area are as high as what stands in them, one of them at least.
enum class RowHeights { Given, FollowContent };

/// How much of its room an area takes where that is higher than what it asks for.
enum class Takes { WhatItNeeds, ASquare, AllThereIs };

/// What an area needs at one size and width.
struct Extent {
    Length height;
    std::optional<Length> first_baseline = {}; ///< from the top; nothing where there are no words
    int cut_paragraphs = 0;                    ///< in which a word is wider than its line
    Takes takes = Takes::WhatItNeeds;
};

/// What is not known before all areas have their places: the print's code, and whose dots it is
/// drawn in.
struct Ink {
    const code::SizedSymbol* symbol = nullptr;
    code::PrinterDots printer;
};

} // namespace thawslip::layout
