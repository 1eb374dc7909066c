#pragma once

#include "kitchen/texts/free_texts.h"

namespace thawslip::kitchen {

/// Whether a text thaws food in a warm place or in warm water: "on the counter overnight", "auf der
/// Fensterbank", but not "never on the counter", "in the garage fridge", "in the sink, in cold
/// water".
///
/// \param raw whether the bag holds raw meat: that does not stand warm as dough does while it rises
bool thaws_warm(const ReadText& read, bool raw);

/// Whether a text leaves food out of the refrigerator for two hours or more: "take it out 3 h
/// before", "4 horas fuera de la nevera". The most that USDA FSIS lets it stand is two hours in
/// all.
bool stands_too_long(const ReadText& read, bool raw);

/// Whether a thaw note puts the bag into an oven or into more than 21 °C (70 °F), or a step or
/// another note thaws it there.
bool thaws_in_heat(const ReadText& read);

/// Whether it thaws food in a place that no rule knows, neither a warm one nor a cold one: "thaw it
/// on the mantelpiece". A plate or a tray is no place.
bool thaws_somewhere(const ReadText& read);

/// Whether it says that food cools overnight or for hours, in no refrigerator, or is left in its
/// pot so long: "leave it on the stove until the next day".
bool cools_outside(const ReadText& read);

/// Whether a text names a refrigerator that the food is in, cold water or another cold place.
bool says_cold_place(const WordedText& text);

/// The longest time that a text names, in hours; 0 for none.
double hours_said(const WordedText& text);

} // namespace thawslip::kitchen
