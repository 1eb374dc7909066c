#pragma once

#include <cstddef>
#include <functional>

namespace thawslip {

/// Told by long work how far it is: `done` of `of`, each time that a piece of it is done. Called
/// from several threads at once, and may be empty.
using Progress = std::function<void(std::size_t done, std::size_t of)>;

} // namespace thawslip
