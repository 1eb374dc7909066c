#pragma once

#include "wording/print.h"

#include <string>
#include <string_view>
#include <vector>

namespace thawslip::wording {

/// A dish's name with those words strong by which it is told from the names it could be taken for;
/// no word of it, where there is none such: strong letters run together first where one looks
/// through frost. Two names look alike where they share at least half the
/// words of the shorter one, and one of them begins or ends with a shared word: "Squash stew" and
/// "Squash curry", but not "Squash stew" and "Kale and squash soup with barley". Words of up to
/// three letters count for nothing, capitals neither.
std::vector<Span> told_apart(std::string_view dish, const std::vector<std::string>& others);

} // namespace thawslip::wording
