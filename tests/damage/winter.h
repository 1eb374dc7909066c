#pragma once

#include "damage/print.h"

// What a winter does to a label. Every function works on the label's paper, in millimetres.
namespace thawslip::damage {

/// Ice grains on the label, each hiding most of what is below it, until they cover `share` of it;
/// between them a thin rime that takes up to `haze` of the contrast.
void frost(Label& label, double share, double haze, Random& random);

/// Where other bags have rubbed: a band `width` mm wide and two thirds of the code long, in whose
/// middle about the share `wear` of the ink has come off in flakes of a fifth of a millimetre and
/// the rest is worn thin.
void scuff(Label& label, double width, double wear, Random& random);

/// What a knife or a fork did: a line `width` mm wide and `length` mm long without any ink.
void scratch(Label& label, double width, double length, Random& random);

/// A wet thumb drawn over the code: a stroke that covers `share` of the code's square, inside
/// which ink is dragged along until hardly a module can be told from the next.
void smear(Label& label, double share, Random& random);

/// Melt water at one of the code's four corners, by lot: as far as `reach` of the code's side from
/// it the ink has run until modules of half a millimetre cannot be told apart, and half has gone.
void wet_corner(Label& label, double reach, Random& random);

/// A fold right across the code: ink broken off along a hair line, one side in shade.
void crease(Label& label, Random& random);

} // namespace thawslip::damage
