#pragma once

#include "app/commands.h"
#include "service/print/printing.h"

#include <functional>

namespace thawslip::app {

/// Another program has given ids of this print to other bags meanwhile: nothing is recorded.
class Raced : public SystemFailure {
public:
    Raced(const std::string& why, bool is_out);
    bool is_out() const { return is_out_; } ///< whether it was published all the same

private:
    bool is_out_;
};

/// Has a print published, its file written and its pages handed to the printer, while nobody else
/// can record, then tells the archive what was printed, and the user what of it is new.
/// \param publish throws where nothing came of it
/// \throws Raced before it is published; only with the first print of an archive perhaps after
/// \throws SystemFailure where the archive fails; what was printed stays
void record_print(const service::Printing& printing, const PrintOptions& options,
                  const Settings& settings, Console console, const std::function<void()>& publish);

} // namespace thawslip::app
