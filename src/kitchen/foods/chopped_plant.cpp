#include "kitchen/foods/chopped_plant.h"

#include "base/list.h"

#include <algorithm>
#include <array>
#include <string_view>

namespace thawslip::kitchen {
namespace {

/// Behind these another thing begins.
constexpr std::array<std::string_view, 20> parting = {
    "and", "with", "or",  "in", "on", "of",  "und", "mit", "oder", "im",
    "auf", "an",   "aus", "y",  "e",  "con", "en",  "de",  "o",    "u"};

/// Whether two mentions stand in one clause with no joining word between them.
bool are_together(const WordedText& text, const Mention& a, const Mention& b) {
    const auto& [first, second] = a.first < b.first ? std::pair{a, b} : std::pair{b, a};
    if (text.clauses[a.first] != text.clauses[b.first]) {
        return false;
    }
    for (auto i = first.first + first.count; i < second.first; ++i) {
        if (contains(parting, text.words[i])) {
            return false;
        }
    }
    return true;
}

} // namespace

bool is_chopped_plant(const WordedText& text) {
    const auto plants = mentions(text, Section::Plant, "named");
    const auto all = mentions(text, Section::Plant, "ground");
    return std::ranges::any_of(all, [&](const Mention& ground) {
        return std::ranges::any_of(
            plants, [&](const Mention& plant) { return are_together(text, ground, plant); });
    });
}

} // namespace thawslip::kitchen
