#pragma once

#include "archive/archive.h"
#include "service/messages.h"

#include <span>
#include <string>

namespace thawslip::service {

/// Which bags are noted as gone and get a label again all the same.
Messages cautions_of_gone(std::span<const archive::Bag> bags);

/// Whether no print has been of a bag yet, though others of its day: it counts as never filled.
bool is_unprinted(archive::Archive& archive, const archive::Bag& bag);

/// The day on which labels with this bag were last printed, where that was after it was noted as
/// gone; else empty.
std::string printed_since_gone(archive::Archive& archive, const archive::Bag& bag);

/// Whether a print of the archive printed labels; else cards.
bool is_labels(const archive::StoredPrint& print);

} // namespace thawslip::service
