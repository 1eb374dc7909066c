#include "base/list.h"
#include "kitchen/cautions/caution_topics.h"
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

bool begins_with_any(const std::string& word, std::span<const std::string_view> stems) {
    return std::ranges::any_of(stems, [&](auto stem) { return word.starts_with(stem); });
}

/// "Cocinar el pollo a medias": the verb stands a few words before.
bool says_halfway_in_spanish(const std::vector<std::string>& words) {
    static constexpr std::string_view heat[] = {"coc",  "cuec",  "cuez", "asa",
                                                "frei", "horne", "hac"};
    constexpr std::size_t farthest = 5;
    for (std::size_t i = 1; i < words.size(); ++i) {
        const auto first = i > farthest ? i - farthest : 0;
        if (words[i] == "medias" && words[i - 1] == "a" &&
            std::any_of(words.begin() + static_cast<std::ptrdiff_t>(first),
                        words.begin() + static_cast<std::ptrdiff_t>(i),
                        [](const auto& word) { return begins_with_any(word, heat); })) {
            return true;
        }
    }
    return false;
}

/// A word for "in part" beside one for cooking: "partly grilled", "medio frito", "halb braten". By
/// stems, for cooks bend them; "half a chicken" and "half roast duck" are whole things.
bool says_part_of_cooking(const std::vector<std::string>& words) {
    struct Tongue {
        std::vector<std::string_view> part;
        std::vector<std::string_view> heat;
    };
    static const Tongue tongues[] = {
        {{"part", "par", "partly", "partially", "semi"},
         {"cook", "roast", "fried", "fry", "grill", "bak", "poach", "brais", "boil"}},
        {{"medio", "media", "parcialmente", "semi"},
         {"coc", "cuec", "cuez", "asa", "frei", "frit", "horne", "hech", "hac", "guis"}},
        {{"halb", "teilweise", "teils"},
         {"gar", "gegar", "brat", "gebrat", "koch", "gekoch", "schmor", "geschmor", "durch"}}};
    for (std::size_t i = 0; i + 1 < words.size(); ++i) {
        for (const auto& tongue : tongues) {
            if (contains(tongue.part, words[i]) && begins_with_any(words[i + 1], tongue.heat)) {
                return true;
            }
        }
    }
    return says_halfway_in_spanish(words);
}

/// Whether a text says so, in any of the forms that German bends its words into.
bool is_in_part(const std::vector<std::string>& words) {
    static constexpr std::string_view stems[] = {"halbgar", "teilgegart", "angegart",   "teilgar",
                                                 "angar",   "halbdurch",  "precocinar", "precuez",
                                                 "parcook", "parfr",      "precocine"};
    const auto bent = [](const std::string& word) { return begins_with_any(word, stems); };
    return !phrases("in part").find(words).empty() || std::ranges::any_of(words, bent) ||
           says_part_of_cooking(words);
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

/// "Part-cooked chicken" wherever it is named, or the same words of a dish of raw meat.
Findings part_cooked(const Scene& scene) {
    return said_of_bag(scene, [&](const std::vector<std::string>& words) {
        return is_in_part(words) && (has_raw_meat(scene) || names_meat(words));
    });
}

Findings perhaps_part_cooked(const Scene& scene) {
    return said_of_bag(scene, [&](const std::vector<std::string>& words) {
        return has_raw_meat(scene) && is_browned(words) && names_meat(words);
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
        const bool puts_by = !phrases("later").find(words).empty();
        const bool pauses = puts_by && (is_browned(words) || is_in_part(words));
        if (!says_no(words) && ((pauses && (has_raw_meat(scene) || names_meat(words))) ||
                                (is_in_part(words) && names_meat(words)))) {
            return {{{}, cook_place(scene, "steps").index(i)}};
        }
    }
    return {};
}

constexpr CautionRule rules[] = {
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
    return rules;
}

} // namespace thawslip::kitchen
