#pragma once

#include <string>
#include <vector>

namespace thawslip::kitchen {

struct Package;

/// Which meats the words of a dish name, in English, Spanish or German. Stock, fat and eggs of an
/// animal do not count as its meat, nor do "lamb's lettuce" and the like.
struct MeatsNamed {
    bool poultry = false; ///< with birds that are hunted: the agencies ask the same of them
    bool pork = false;
    bool beef_or_lamb = false; ///< veal and mutton too
    bool game = false;         ///< furred game, rabbit and bison
    bool some = false;         ///< meat of an animal that is not named: mince, chops, sausages
};

/// The meats that one text names; `words` as `words_of` gives them.
MeatsNamed meats_in(const std::vector<std::string>& words);

/// The meats that a dish, its ingredients and what is added on cook day name.
MeatsNamed meats_in(const Package& package);

} // namespace thawslip::kitchen
