#pragma once

#include "service/print/lay_out.h"

#include <optional>
#include <string>
#include <vector>

namespace thawslip::service {

/// What is known of days that could be printed.
struct Checked {
    Days days;
    std::optional<LaidOut> labels; ///< one of each dish; nothing where they do not fit
};

/// All that would be refused or cautioned of labels, cards and lists, each said once. What `look`
/// says of stock and layout is the labels'. There is a value, with errors beside it, where the days
/// are well and only something of them cannot be laid out.
Outcome<Checked> check(const DayTexts& texts, const Look& look, const Settings& settings,
                       const Surroundings& around);

/// The best grade that a verifier could give the code of a label on paper of this reflectance
/// (ISO/IEC 15415); nothing where it cannot be graded.
std::optional<char> best_grade(const code::SizedSymbol& code, double paper_reflectance);

} // namespace thawslip::service
