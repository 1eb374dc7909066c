#pragma once

#include "layout/frame.h"
#include "render/pdf_fonts.h"

#include <set>
#include <string>

namespace thawslip::render {

/// What a page draws, as PDF operators (ISO 32000-1, 8 and 9), and the faces it names.
struct PageContent {
    std::string operators;
    std::set<typeset::FaceId> faces;
};

/// Draws a frame. The only place where y is turned from down to up.
PageContent page_content(const layout::Frame& frame, PdfFonts& fonts);

} // namespace thawslip::render
