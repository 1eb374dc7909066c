#pragma once

#include "app/commands.h"
#include "service/freezer/guest.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::app {

/// What a guest may not eat, as typed after `--without`, what is wrong with it told; nothing where
/// that is refused. Nothing typed: nobody asks, and nothing is avoided.
std::optional<std::vector<service::Avoided>> avoided_of(const std::optional<std::string>& typed,
                                                        Console console);

/// Said below what was found for a guest: silence is no promise. Two lines and more, with its end.
extern const std::string_view no_promise_to_guests;

} // namespace thawslip::app
