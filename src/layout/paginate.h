#pragma once

#include "base/geometry.h"
#include "layout/areas/content.h"
#include "layout/layout.h"
#include "wording/print.h"

#include <vector>

namespace thawslip::layout {

/// Splits a print over several cells where its words do not fit one, or what may run on only at a
/// size halfway between the smallest and the comfortable one or below.
///
/// Only fields in areas that may continue are split, and only between paragraphs: a step is never
/// broken, and a heading stays with what it heads; where an area keeps them whole, with all that it
/// heads, unless that is more than a card. There are as few cards as a size a little below
/// comfortable allows, filled evenly. A card that begins inside a section says its heading again,
/// and what heads the columns of its rows. The first card carries everything else, the safety lines
/// above all; the further ones repeat the areas that say so, and each carries a field "page" ("Card
/// 1 of 2") made from the print's `page_phrase`. What runs on ends with its `more_phrase` on
/// each but the last: a cook who holds one card of several sees that there is more to do. \returns
/// the cards in order; one, unchanged, where the print fits or nothing of it may continue
std::vector<wording::Print> paginate(const wording::Print& print, const Layout& layout, Size room,
                                     Shaper& shaper);

} // namespace thawslip::layout
