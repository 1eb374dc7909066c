#pragma once

#include "damage/raster.h"

namespace thawslip::damage {

/// What a phone's sensor hands on: 8-bit grey, rows from the top.
struct Picture {
    int width = 0;
    int height = 0;
    std::vector<std::uint8_t> pixels;
};

/// How a label is photographed.
struct Photography {
    double pixels_per_mm = 8.0; ///< where the label is nearest
    double turn = 0.0;          ///< radians in the picture plane
    double tilt_x = 0.0;        ///< perspective: scale changes by this share over the label's width
    double tilt_y = 0.0;
    double curl = 0.0;     ///< mm by which the middle of the bag bulges
    double cylinder = 0.0; ///< mm, the radius of what the label is wrapped around; 0: it lies flat
    double axis = 0.0;     ///< radians, which way that lies: 0 along the label's columns
    double crest = 0.0;    ///< mm from the label's middle to where that is nearest
    double blotches = 0.0; ///< share of the light that is missing in shadows with sharp edges
    double blur = 0.5;     ///< standard deviation, pixels
    double shade = 0.0;    ///< share of the light that is missing in the darkest corner
    double noise = 0.01;   ///< standard deviation, share of full white
    double coarseness = 0; ///< quantisation step of the 8 × 8 blocks' waves, grey levels; 0: none
};

Picture photographed(const Raster& paper, double paper_scale, const Photography& photography,
                     Random& random);

enum class Camera {
    Good, ///< 8 to 16 pixels a millimetre: a frame 1280 to 1920 wide that sees 120 to 160 mm
    Poor, ///< 5 to 8: a cheap phone's preview, or one that cannot focus any nearer
};

/// A photograph by a person in a kitchen: held in one hand, not quite straight.
Photography some_photography(Camera camera, Random& random);

} // namespace thawslip::damage
