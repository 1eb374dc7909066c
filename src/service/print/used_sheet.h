#pragma once

#include "archive/values.h"
#include "layout/sheets/impose.h"
#include "service/print/lay_out.h"
#include "service/print/surroundings.h"

#include <optional>
#include <string>

namespace thawslip::service {

/// Which cells of a stock are printed on, as `look` says. Where that is from the next one on, the
/// last print on this stock says which; that, and where nothing is known of one, is told.
layout::Imposition imposition_of(const Look& look, const layout::Stock& stock,
                                 const Surroundings& around, Messages& messages);

/// Where a print stops: at which cell the next one on its stock may go on. Nothing for stocks of
/// one cell, which are used up by each print.
/// \param at the kitchen's date and time
std::optional<archive::UsedSheet> stopped_at(const LaidOut& laid_out, const std::string& at);

} // namespace thawslip::service
