#pragma once

#include <string>
#include <string_view>

namespace thawslip::code {

/// Folds free words, in any script, into the characters that a code's text is made of: capitals,
/// digits, space,
/// `$ % + - . /`, and `:` or `,` between two digits. GRAMMAR.md lists every replacement.
///
/// The fold is idempotent and part of the grammar: a value read back from a code equals the fold
/// of the value that was printed. It also takes apart what a phone would act upon instead of
/// showing it: addresses (`www.x.com`), schemes (`word:`), numbers to dial (7 digits and more).
/// Never changes an amount: `1,000` and `1.000` stay as they are.
std::string fold(std::string_view words);

/// A bag id: capitals, digits and hyphens; all else is left out.
std::string fold_bag_id(std::string_view id);

/// Seven digits or more with nothing but spaces, dots, hyphens and plus signs between them, which
/// a phone offers to dial.
bool looks_like_a_number_to_dial(std::string_view text);

} // namespace thawslip::code
