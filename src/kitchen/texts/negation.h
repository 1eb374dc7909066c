#pragma once

#include "kitchen/texts/lexicon.h"

#include <span>

namespace thawslip::kitchen {

// Whether a text says that something is so or that it is not. Two questions, for where a text
// stays unsure they lean to different sides: neither ever lifts a rule on a doubtful word.

/// The clause of each word: what punctuation parts, parted again before words such as "but" and
/// "until". A clause of nothing but negations ("never, ever") belongs to the next.
std::vector<int> clauses_of(const WordedText& text);

/// Whether a warning names `all[which]`, as in "never on the counter", "auf der Arbeitsplatte
/// nicht", "not on the counter, the table or the sink". A negation that another word comes
/// between ("no fridge needed on the counter") belongs to that one; "not only" and "no longer
/// than" are none.
///
/// \param all    mentions of what is warned of, in order
/// \param rivals mentions that a negation may belong to instead
bool is_warned_of(const WordedText& text, std::span<const Mention> all, std::size_t which,
                  std::span<const Mention> rivals);

/// Whether the text names one of `all`, mentions of one thing in order, and does not warn of it.
bool is_meant(const WordedText& text, std::span<const Mention> all);

/// Whether the clause says without any negation, condition or doubt what the mention names: "boiled
/// 30 min", and not "do not boil", "unless boiled", "boil if you like".
bool is_certain(const WordedText& text, const Mention& mention);

/// The first of the words directly before a mention that say nothing of themselves: "any of the".
std::size_t first_filler_before(const WordedText& text, const Mention& mention);

/// Whether the text names one of `all`, mentions of one thing in order, and does not deny it:
/// "juice, no sugar" names juice.
bool is_named(const WordedText& text, std::span<const Mention> all);

/// Whether `all[which]` is what directly before or behind it denies: "sin gluten", "free of nuts",
/// "egg-free", "glutenfrei", "without milk or eggs"; and not "no-bake cheese cake".
bool is_denied(const WordedText& text, std::span<const Mention> all, std::size_t which);

} // namespace thawslip::kitchen
