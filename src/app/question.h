#pragma once

#include <functional>
#include <iosfwd>
#include <optional>
#include <string>

namespace thawslip::app {

/// Asks a person: shows a question and takes a line, without the blanks around it.
/// \returns nothing where no more comes (the end of the input)
using Ask = std::function<std::optional<std::string>(const std::string& question)>;

/// Whether somebody sits at a terminal: standard input comes from there, and standard error, on
/// which is asked, goes there.
bool somebody_is_there();

/// Shows questions on `out` and reads the answers from `in`. \pre both outlive it
Ask ask_on(std::istream& in, std::ostream& out);

} // namespace thawslip::app
