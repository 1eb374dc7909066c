#pragma once

#include "code/patterns.h"
#include "code/recover/local.h"

namespace thawslip::code {

/// A finder pattern that was found, and which module of the symbol its middle is.
struct Anchor {
    Local local;
    Module at;
};

/// How well the picture shows a finder pattern there: 1 where black is black and white is white, 0
/// where there is nothing of it.
double likeness(const GreyPicture& picture, const Local& local);

/// The same, put right by small steps until the picture shows a finder pattern no better.
Local settled(const GreyPicture& picture, Local local);

} // namespace thawslip::code
