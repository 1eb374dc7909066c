#pragma once

#include "code/patterns.h"

#include <optional>
#include <string>
#include <vector>

namespace thawslip::code {

/// A symbol as a camera saw it: for each module, row by row, how much darker than its surroundings'
/// middle grey it is. Negative is light; what is near 0 is doubtful.
struct SeenModules {
    int version = 1;
    std::vector<float> darkness;
};

/// Modules whose colour is the same in all symbols of a version, by their place in a row-by-row
/// symbol: finder patterns with their light rims, timing and alignment patterns.
struct KnownModule {
    Module at;
    bool dark = false;
};
std::vector<KnownModule> known_modules(int version);

/// The same, less what a blur has mixed into each module of those beside it.
SeenModules crisper(const SeenModules& seen);

/// The text of a symbol, worked out from doubtful modules: of level and mask those that are
/// likeliest, and in every block the codewords that are least certain are taken for lost, more and
/// more of them, until the others make sense (generalised minimum distance: Forney 1966, from
/// memory). \returns nothing where none does, with a reserve that keeps accidents out
std::optional<std::string> text_of(const SeenModules& seen);

} // namespace thawslip::code
