#pragma once

#include <cstddef>
#include <optional>
#include <string>

namespace thawslip::app {

/// The bytes of a file that need not be there; nothing where it is not.
/// \param most bytes that it may have
/// \throws SystemFailure where it is there and cannot be read, or has more
std::optional<std::string> text_if_there(const std::string& file, std::size_t most);

} // namespace thawslip::app
