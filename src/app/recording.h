#pragma once

#include "app/lay_out.h"

#include <functional>

namespace thawslip::app {

/// Another program has given ids of this print to other bags meanwhile: nothing is recorded.
struct Raced : SystemFailure {
    using SystemFailure::SystemFailure;
};

/// Has a print published, its file written and its pages handed to the printer, while nobody else
/// can record, then tells the archive what was printed, and the user what of it is new.
/// \param publish throws where nothing came of it
/// \throws Raced before it is published
/// \throws SystemFailure where the archive fails; what was printed stays
void record_print(const Job& job, const Days& days, const LaidOut& laid_out,
                  const PrintOptions& options, const Settings& settings, Console console,
                  const std::function<void()>& publish);

} // namespace thawslip::app
