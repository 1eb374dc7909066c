#include "kitchen/caution_topics.h"
#include "kitchen/meat_words.h"
#include "kitchen/text.h"

#include <algorithm>
#include <array>

namespace thawslip::kitchen {
namespace {

using namespace scene;

constexpr std::string_view source =
    "USDA FSIS, Barbecue and Food Safety: never brown or partially cook meat to finish later (read "
    "in a copy)";

/// Cooked in part, without any doubt: English, Spanish, German.
const PhraseBook& in_part() {
    static const PhraseBook book{
        {"part cooked",  "part cook",        "par cooked",     "par cook",      "parcooked",
         "partcooked",   "partially cooked", "partially cook", "partly cooked", "partly cook",
         "half cooked",  "half cook",        "undercooked",    "undercook",     "under cooked",
         "parboiled",    "parboil",          "par boiled",     "par boil",      "half done",
         "half roasted", "a medio cocer",    "a medio hacer",  "a medio asar",  "medio cocido",
         "medio cocida", "medio hecho",      "medio hecha",    "semicocido",    "semicocida",
         "poco hecho",   "poco hecha",       "precocer",       "halb gar",      "halb gare",
         "halb durch",   "halb gebraten",    "halb gekocht",   "angaren",       "vorkochen"}};
    return book;
}

/// Whether a text says so, in any of the forms that German bends its words into.
bool is_in_part(const std::vector<std::string>& words) {
    constexpr std::array<std::string_view, 3> stems{"halbgar", "teilgegart", "angegart"};
    const auto bent = [&](const std::string& word) {
        return std::ranges::any_of(stems, [&](auto stem) { return word.starts_with(stem); });
    };
    return !in_part().find(words).empty() || std::ranges::any_of(words, bent);
}

/// Coloured outside; whether it is cooked through is not said.
const PhraseBook& browned() {
    static const PhraseBook book{
        {"brown",        "browned",     "sear",         "seared",      "pan seared",
         "dorado",       "dorada",      "dorados",      "doradas",     "dorar",
         "sellado",      "sellada",     "sellar",       "marcado",     "marcada",
         "marcar",       "soasado",     "rehogado",     "rehogada",    "angebraten",
         "anbraten",     "angebratene", "angebratenes", "angerostet",  "vorgebraten",
         "vorgegart",    "vorgaren",    "brown sugar",  "brown rice",  "brown bread",
         "brown butter", "brown sauce", "brown lentil", "brown onion", "brown mushroom",
         "brown shrimp", "brown stock", "brown gravy",  "brown bean"}};
    return book;
}

/// But not "brown sugar" and the like, which the list has as two words.
bool is_browned(const std::vector<std::string>& words) {
    return std::ranges::any_of(browned().find(words), [&](const PhraseMatch& match) {
        return match.count == 1 || !words.at(match.first).starts_with("brown");
    });
}

/// That something is kept for another time.
const PhraseBook& for_later() {
    static const PhraseBook book{{"chill",           "chilled",
                                  "refrigerate",     "refrigerated",
                                  "freeze",          "frozen",
                                  "cool down",       "cool it",
                                  "cool them",       "let cool",
                                  "finish later",    "until later",
                                  "for later",       "next day",
                                  "day after",       "overnight",
                                  "tomorrow",        "enfriar",
                                  "enfrie",          "enfria",
                                  "dejar enfriar",   "congelar",
                                  "congele",         "refrigerar",
                                  "refrigere",       "a la nevera",
                                  "al frigorifico",  "dia siguiente",
                                  "para otro dia",   "terminar despues",
                                  "toda la noche",   "kuhl stellen",
                                  "kalt stellen",    "kaltstellen",
                                  "abkuhlen",        "auskuhlen",
                                  "einfrieren",      "in den kuhlschrank",
                                  "am nachsten tag", "am folgenden tag",
                                  "uber nacht",      "spater fertig"}};
    return book;
}

bool has_raw_meat(const Scene& scene) {
    return holds(scene, {FoodKind::RawGround, FoodKind::RawPoultry, FoodKind::RawCut});
}

bool names_meat(const std::vector<std::string>& words) {
    const auto named = meats_in(words);
    return named.poultry || named.pork || named.beef_or_lamb || named.game || named.some;
}

std::vector<PlacedText> packed_texts(const Package& package) {
    auto texts = texts_in_bag(package);
    texts.push_back({package.note, package.where.key("note")});
    return texts;
}

/// "Part-cooked chicken" wherever it is named, or the same words of a dish of raw meat.
Findings part_cooked(const Scene& scene) {
    Findings found;
    for (const auto& [text, where] : packed_texts(scene.package)) {
        const auto words = words_of(text);
        if (!says_no(words) && is_in_part(words) && (has_raw_meat(scene) || names_meat(words))) {
            found.push_back({{text}, where});
        }
    }
    return found;
}

Findings perhaps_part_cooked(const Scene& scene) {
    Findings found;
    for (const auto& [text, where] : packed_texts(scene.package)) {
        const auto words = words_of(text);
        if (has_raw_meat(scene) && !says_no(words) && is_browned(words) && names_meat(words)) {
            found.push_back({{text}, where});
        }
    }
    return found;
}

/// A step of cook day that begins to cook meat and then puts it by.
Findings paused(const Scene& scene) {
    if (!scene.package.cook) {
        return {};
    }
    const auto& steps = scene.package.cook->steps;
    for (std::size_t i = 0; i < steps.size(); ++i) {
        const auto words = words_of(steps[i]);
        const bool begins = is_browned(words) || is_in_part(words);
        if (begins && !for_later().find(words).empty() && !says_no(words) &&
            (has_raw_meat(scene) || names_meat(words))) {
            return {{{}, cook_place(scene, "steps").index(i)}};
        }
    }
    return {};
}

constexpr CautionRule rules[] = {
    {"part-cooked", CautionLevel::Refuse,
     "\"{0}\": meat must not be cooked in part to be finished later, what lives in it survives and "
     "grows",
     "cook it through before it is frozen, or freeze it raw", source, part_cooked},
    {"cook-without-pause", CautionLevel::LabelAndCard,
     "Once you have begun to cook it, cook it through without a pause.", "", source, paused,
     "COOK THROUGH WITHOUT A PAUSE"},
    {"part-cooked-perhaps", CautionLevel::Report,
     "\"{0}\": is that meat only browned? cook it through before it is frozen, or freeze it raw",
     "", source, perhaps_part_cooked},
};

} // namespace

std::span<const CautionRule> part_cooking_rules() {
    return rules;
}

} // namespace thawslip::kitchen
