#include "base/list.h"
#include "kitchen/cautions/caution_topics.h"
#include "kitchen/foods/food_words.h"
#include "kitchen/foods/meat_words.h"
#include "kitchen/texts/text.h"

#include <algorithm>
#include <span>

namespace thawslip::kitchen {
namespace {

using namespace scene;

constexpr std::string_view source =
    "USDA FSIS, Barbecue and Food Safety: never brown or partially cook meat to finish later (read "
    "in a copy)";

const PhraseBook& phrases(std::string_view meaning) {
    return phrase_book(Section::PartCooking, meaning);
}

/// What one language has for cooking in part: by stems, for cooks bend their words.
struct Stems {
    Rows whole; ///< "halbgar-"
    Rows part;  ///< "partly", before a word for heat
    Rows heat;  ///< "grill-"
    Rows after; ///< "a medias", behind one
};

const std::vector<Stems>& stems() {
    static const auto all = mapped(lexicon_files(), [](const LexiconFile& file) {
        const auto rows = [&file](std::string_view meaning) {
            return rows_of(file, Section::PartCooking, meaning);
        };
        return Stems{rows("in part"), rows("part"), rows("heat"), rows("after")};
    });
    return all;
}

/// "Cocinar el pollo a medias": the verb stands a few words before.
bool says_so_after(const Stems& of, std::span<const std::string> words) {
    constexpr std::size_t farthest = 4;
    for (std::size_t i = 1; i + 1 < words.size(); ++i) {
        const auto near = std::min(i, farthest);
        if (fits_any(of.after, words[i] + " " + words[i + 1]) &&
            std::ranges::any_of(words.subspan(i - near, near), [&of](const std::string& word) {
                return fits_any(of.heat, word);
            })) {
            return true;
        }
    }
    return false;
}

/// "Partly grilled", "medio frito", "halb braten"; "half a chicken" and "half roast duck" are whole
/// things.
bool says_so_before(const Stems& of, std::span<const std::string> words) {
    for (std::size_t i = 0; i + 1 < words.size(); ++i) {
        if (fits_any(of.part, words[i]) && fits_any(of.heat, words[i + 1])) {
            return true;
        }
    }
    return false;
}

/// Whether a text says so, in any of the forms that German bends its words into.
bool is_in_part(const std::vector<std::string>& words) {
    return !phrases("in part").find(words).empty() ||
           std::ranges::any_of(stems(), [&words](const Stems& of) {
               const auto bent = [&of](const auto& word) { return fits_any(of.whole, word); };
               return std::ranges::any_of(words, bent) || says_so_before(of, words) ||
                      says_so_after(of, words);
           });
}

/// Coloured outside; whether it is cooked through is not said. But not "brown sugar" and the like,
/// which the list has as two words.
bool is_browned(const std::vector<std::string>& words) {
    return std::ranges::any_of(phrases("browned").find(words), [&](const PhraseMatch& match) {
        return match.count == 1 || !words.at(match.first).starts_with("brown");
    });
}

bool has_raw_meat(const Scene& scene) {
    return holds(scene, {FoodKind::RawGround, FoodKind::RawPoultry, FoodKind::RawCut});
}

bool names_meat(const std::vector<std::string>& words) {
    const auto named = meats_in(words);
    return named.poultry || named.pork || named.beef_or_lamb || named.game || named.some;
}

template <class Says>
Findings said_of_bag(const Scene& scene, Says says) {
    Findings found;
    for (const auto& [text, where] : texts_of_bag(scene.package)) {
        const auto words = words_of(text);
        if (!says_no(words) && says(words)) {
            found.push_back({{text}, where});
        }
    }
    return found;
}

/// "Raw inside", "not cooked through": of meat that has been cooked, or begun to be.
bool is_undone(const Scene& scene, const std::vector<std::string>& words) {
    const bool meat = names_meat(words) || names_meat(words_of(scene.package.dish));
    return meat && !phrases("undone").find(words).empty() &&
           (!has_raw_meat(scene) || is_browned(words));
}

/// "Part-cooked chicken" wherever it is named, or the same words of a dish of raw meat.
Findings part_cooked(const Scene& scene) {
    auto found = said_of_bag(scene, [&](const std::vector<std::string>& words) {
        return is_in_part(words) && (has_raw_meat(scene) || names_meat(words));
    });
    for (const auto& [text, where] : texts_of_bag(scene.package)) {
        if (found.empty() && is_undone(scene, words_of(text))) {
            found.push_back({{text}, where});
        }
    }
    return found;
}

/// "Seared before bagging", of the bag's meat; a note that names another food is about that.
Findings perhaps_part_cooked(const Scene& scene) {
    return said_of_bag(scene, [&](const std::vector<std::string>& words) {
        const bool note = words == words_of(scene.package.note);
        const bool of_bag = note && match_foods(scene.table.words, words).empty();
        return has_raw_meat(scene) && is_browned(words) && (names_meat(words) || of_bag);
    });
}

/// "Finish on Sunday", "am Sonntag fertig braten", "dorar hoy, asar el domingo".
bool finishes_another_time(const std::vector<std::string>& words) {
    constexpr std::size_t farthest = 4;
    const auto times = phrases("another time").find(words);
    if (!times.empty() && !phrases("today").find(words).empty()) {
        return true;
    }
    return std::ranges::any_of(phrases("finish").find(words), [&](const PhraseMatch& finish) {
        return std::ranges::any_of(times, [&](const PhraseMatch& time) {
            return std::max(time.first, finish.first) - std::min(time.first, finish.first) <=
                   farthest;
        });
    });
}

/// A step that begins to cook meat and then puts it by, or cooks meat in part, which says as much.
Findings paused(const Scene& scene) {
    if (!scene.package.cook) {
        return {};
    }
    const auto& steps = scene.package.cook->steps;
    for (std::size_t i = 0; i < steps.size(); ++i) {
        const auto words = words_of(steps[i]);
        const bool puts_by = !phrases("later").find(words).empty() || finishes_another_time(words);
        const bool pauses = puts_by && (is_browned(words) || is_in_part(words));
        if (!says_no(words) && ((pauses && (has_raw_meat(scene) || names_meat(words))) ||
                                (is_in_part(words) && names_meat(words)))) {
            return {{{}, cook_place(scene, "steps").index(i)}};
        }
    }
    return {};
}

constexpr CautionRule part_cooking_rows[] = {
    refusal("part-cooked", source, part_cooked,
            "\"{0}\": meat must not be cooked in part to be finished later, what lives in it "
            "survives and grows",
            "cook it through before it is frozen, or freeze it raw"),
    {"cook-without-pause", CautionLevel::LabelAndCard, source, paused,
     "COOK THROUGH WITHOUT A PAUSE"},
    {"part-cooked-perhaps", CautionLevel::Report, source, perhaps_part_cooked},
};

} // namespace

std::span<const CautionRule> part_cooking_rules() {
    return part_cooking_rows;
}

} // namespace thawslip::kitchen
