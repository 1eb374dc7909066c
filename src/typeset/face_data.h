#pragma once

#include "typeset/face.h"
#include "typeset/hb_handle.h"

#include <hb.h>
#include <string>

namespace thawslip::typeset {

/// What a Face shares among its copies. HarfBuzz keeps pointers into `bytes`, so the struct is
/// made once, on the heap, and never moved. Both HarfBuzz objects are immutable, which is what
/// makes reading them from several threads safe.
struct Face::Data {
    std::string path;
    std::string bytes;
    std::string postscript_name;
    HbHandle<hb_face_t, hb_face_destroy> face;
    HbHandle<hb_font_t, hb_font_destroy> font; ///< scaled so that 1 unit = 1 font unit
    int units_per_em = 0;
    FaceMetrics metrics;
};

} // namespace thawslip::typeset
