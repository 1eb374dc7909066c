#pragma once

#include "code/message.h"

#include <span>
#include <string>
#include <string_view>

namespace thawslip::code {

/// One version of the grammar. A bag may be found years after the program that printed it is gone:
/// once released, a grammar's files and tests do not change.
struct Grammar {
    char version; ///< stands in front of the check characters
    /// The lines of a folded message, all but the closing one.
    std::string (*write)(const Message& message);
    /// What it understands of a text; the rest is passed over.
    Message (*read)(std::string_view text);
};

extern const Grammar grammar_1; ///< printed until October 2026: no thaw time, no cautions
extern const Grammar grammar_2; ///< of labels that name one way to thaw
extern const Grammar grammar_3; ///< of labels that name several

/// Every version there is, in their order.
std::span<const Grammar> grammars();

/// The text of `message` in one version of the grammar, which may leave some of its values out.
std::string write(const Message& message, const Grammar& grammar);

} // namespace thawslip::code
