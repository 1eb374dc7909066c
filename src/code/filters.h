#pragma once

#include "code/read_picture.h"

namespace thawslip::code {

/// The picture as it would be if the light fell evenly on it: each pixel by the light of the paper
/// around it. What is dark and narrower than twice `reach` pixels counts as ink, what is wider as
/// shadow (a grey-level closing: Serra, Image Analysis and Mathematical Morphology, 1982, from
/// memory), so the edge of a shadow stays one. \pre reach > 0
GreyPicture evened(const GreyPicture& picture, int reach);

/// The picture less a blur, as far as noise allows: what three boxes of `box` pixels would have
/// made of it is taken off in a few steps (Van Cittert's iteration, 1931, from memory). Three boxes
/// are near enough to a Gaussian whose standard deviation is half the root of box² − 1.
/// \pre box is odd and above 1
GreyPicture sharpened(const GreyPicture& picture, int box);

/// The picture in black and white: a pixel is dark where it is darker than the mean of the squares
/// of 8 × 8 pixels around it, two on each side. Where these differ by no more than a camera's
/// noise, nothing is dark.
GreyPicture black_and_white(const GreyPicture& picture);

} // namespace thawslip::code
