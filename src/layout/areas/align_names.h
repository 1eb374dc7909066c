#pragma once

#include "layout/align.h"
#include "layout/areas/word_choice.h"

#include <array>

namespace thawslip::layout {

/// What a layout calls the ways to align.
inline const std::array<Named<Align>, 3> align_names = {
    {{{"left"}, Align::Left}, {{"centre", {"center"}}, Align::Centre}, {{"right"}, Align::Right}}};

} // namespace thawslip::layout
