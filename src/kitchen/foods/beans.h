#pragma once

#include "kitchen/texts/free_texts.h"

#include <chrono>
#include <span>
#include <string_view>

namespace thawslip::kitchen {

/// What a text says of dried beans. Every dried bean of the genus Phaseolus (kidney, black, navy,
/// pinto and their like) carries a toxin that only boiling destroys: FDA, Bad Bug Book,
/// phytohaemagglutinin.
enum class BeanState {
    None,    ///< no such beans, or none that a rule is about: green beans, broad beans, soy
    Dry,     ///< dried, and not boiled for certain
    Unclear, ///< beans, dried or not
    Safe,    ///< canned or boiled, with no doubt about it
};

/// How long the publisher of a list has such beans boil: 10 min for the UK's, else 30.
std::chrono::minutes bean_boil(std::string_view rule_set);

/// What `text` says. "Not canned", "do not boil", "boil if you like" and "boil 5 min" lift
/// nothing; nor does a can of something else, as in "kidney beans and canned tomatoes".
/// \param boil how long is long enough
BeanState bean_state(const WordedText& text, std::chrono::minutes boil);

/// Whether it says that the beans themselves are uncooked: "raw kidney beans", "kidney beans,
/// soaked, uncooked"; not "bean salad with raw onion".
bool names_uncooked_beans(const WordedText& text);

/// Whether a step, or a note, boils the beans, with no doubt about it.
bool steps_boil_beans(std::span<const ReadText> texts, std::chrono::minutes boil);

/// Whether a step, or a note, says that the beans are not boiled, soaked or cooked first, or need
/// not be: so they are dried ones, whatever else is said.
bool steps_forbid_boiling(std::span<const ReadText> texts);

} // namespace thawslip::kitchen
