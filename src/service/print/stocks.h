#pragma once

#include "layout/frame.h"
#include "service/messages.h"
#include "service/print/surroundings.h"

#include <string>

namespace thawslip::service {

/// A stock drawn to scale, with its measures.
Outcome<layout::Frame> drawing_of(const layout::Stock& stock, const typeset::FontSet& fonts);

/// A page with rulers and crosses, by which to measure a printer.
struct Ruler {
    Size paper;
    layout::Frame page;
};
/// \param paper its name: "a4", "letter landscape"
Outcome<Ruler> ruler(const std::string& paper, const Surroundings& around);

} // namespace thawslip::service
