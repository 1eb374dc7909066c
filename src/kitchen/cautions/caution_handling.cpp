#include "base/list.h"
#include "kitchen/cautions/caution_topics.h"
#include "kitchen/cautions/thaw_places.h"
#include "kitchen/foods/food_words.h"
#include "kitchen/sources.h"
#include "kitchen/texts/negation.h"
#include "kitchen/texts/sentences.h"

#include <algorithm>
#include <iterator>
#include <optional>
#include <tuple>

// What steps and notes tell a cook to do with food that ought not to be done. Nobody can be sure of
// what such words mean, so they are asked about, or the card sets another sentence beside them.

namespace thawslip::kitchen {
namespace {

using namespace scene;

/// Where `says` holds of a sentence.
template <class Says>
Findings sentences_that(const Scene& scene, Says says) {
    return said_of_handling(
        scene, [&](const ReadText& read) { return std::ranges::any_of(read.sentences, says); });
}

bool means(const WordedText& text, std::string_view way) {
    return is_meant(text, mentions(text, Section::Handling, way));
}

template <Word way>
Findings told(const Scene& scene) {
    return sentences_that(scene, [](const WordedText& text) { return means(text, way); });
}

Findings underdone(const Scene& scene) {
    const bool must_be_done =
        holds(scene, {FoodKind::RawGround, FoodKind::RawPoultry, FoodKind::RawFish,
                      FoodKind::RawShellfish, FoodKind::RawEgg});
    return must_be_done ? told<"underdone">(scene) : Findings{};
}

/// Whether one clause has a word of each kind.
bool says_both(const WordedText& text, std::string_view one, std::string_view other) {
    return std::ranges::any_of(mentions(text, Section::Handling, one), [&](const Mention& each) {
        return clause_says(text, each.first, Section::Handling, other);
    });
}

/// "Spoon the bag juices over it to serve": what raw meat has lain in.
bool serves_bag_liquid(const WordedText& text) {
    return std::ranges::any_of(
        mentions(text, Section::Handling, "bag liquid"), [&](const Mention& liquid) {
            return clause_says(text, liquid.first, Section::Doing, "bag") &&
                   clause_says(text, liquid.first, Section::Handling, "as sauce");
        });
}

/// "Serve the marinade from the bag as a dip", and no word of boiling it.
bool serves_marinade(const WordedText& text) {
    const bool serves = means(text, "marinade") || says_both(text, "any marinade", "as sauce") ||
                        serves_bag_liquid(text);
    return serves && !says(text, Section::Handling, "boils it");
}

Findings raw_marinade(const Scene& scene) {
    return holds_raw(scene) ? sentences_that(scene, serves_marinade) : Findings{};
}

/// Where a note on thawing says what such thawing must not be.
Findings noted_of_thaw(const Scene& scene, std::string_view way) {
    return said_of_handling(scene, [&](const ReadText& read) {
        return read.field == FreeText::ThawNote && says(read.text, Section::Handling, way);
    });
}

Findings against_cold_water(const Scene& scene) {
    const bool in_water = scene.package.thaw.method == ThawMethod::ColdWater;
    return in_water ? noted_of_thaw(scene, "against cold water") : Findings{};
}

/// What thawed in water or in a microwave is cooked at once.
Findings kept_after_fast_thaw(const Scene& scene) {
    const bool fast =
        is_one_of(scene.package.thaw.method, {ThawMethod::ColdWater, ThawMethod::Microwave});
    return fast ? noted_of_thaw(scene, "kept") : Findings{};
}

/// What is wrong with the food itself stands in its name too.
Findings suspect(const Scene& scene) {
    return texts_that(scene, [](const ReadText& read) { return means(read.text, "suspect"); });
}

/// "Boiling water", "the oven", "the pot"; not a water bath, where food cooks in a bag made for it,
/// and nothing that only keeps warm.
std::vector<Mention> hot_places(const WordedText& text) {
    auto heat = mentions(text, Section::Handling, "heat");
    std::ranges::copy_if(mentions(text, Section::Appliance), std::back_inserter(heat),
                         [](const Mention& in) {
                             return !is_one_of(in.meaning, {"water bath", "warmer", "haybox"});
                         });
    return heat;
}

/// "Put the closed bag into the oven": the bag, then what is hot, and no word of taking it off. A
/// pot of cold water is for thawing.
bool heats_bag(const WordedText& text) {
    const auto bags = mentions(text, Section::Handling, "bag");
    const auto heat = hot_places(text);
    const bool follows = std::ranges::any_of(bags, [&](const Mention& bag) {
        return std::ranges::any_of(heat, [&](const Mention& hot) {
            return hot.first > bag.first && text.clauses[hot.first] == text.clauses[bag.first];
        });
    });
    return follows && !says(text, Section::Handling, "unpacks") &&
           !says(text, Section::Place, "water") && !says(text, Section::Negation, "not");
}

Findings bag_in_heat(const Scene& scene) {
    return sentences_that(scene, heats_bag);
}

/// How many words stand between two mentions.
std::size_t words_between(const Mention& a, const Mention& b) {
    const auto& [first, second] = a.first < b.first ? std::tie(a, b) : std::tie(b, a);
    const auto end = first.first + first.count;
    return second.first > end ? second.first - end : 0;
}

/// "It stays on the buffet until five", and no word of what keeps it hot.
bool stands_out(const WordedText& text) {
    return means(text, "stands out") && !says(text, Section::Doing, "hot-held");
}

/// "Take it out in the morning and roast it at night", and no cold place in between.
bool is_out_all_day(const WordedText& text) {
    constexpr std::size_t farthest = 4; // "roast the whole joint at night"
    const auto outs = phrases_in(text, Section::PartCooking, "takes out");
    if (!is_meant(text, outs) || says_cold_place(text)) {
        return false;
    }
    const auto clauses = clauses_of(text);
    const auto days = mentions(text, Section::Handling, "by day");
    const auto cooks = mentions(text, Section::Doing, "cook");
    return std::ranges::any_of(
        mentions(text, Section::Handling, "at night"), [&](const Mention& night) {
            const auto is_before = [&](const Mention& each) { return each.first < night.first; };
            return std::ranges::any_of(outs, is_before) && std::ranges::any_of(days, is_before) &&
                   std::ranges::any_of(cooks, [&](const Mention& cook) {
                       return clauses[cook.first] == clauses[night.first] &&
                              outs.front().first < cook.first &&
                              words_between(cook, night) <= farthest;
                   });
        });
}

Findings left_out(const Scene& scene) {
    const auto says = [](const WordedText& text) {
        return stands_out(text) || is_out_all_day(text);
    };
    return is_perishable(scene) ? sentences_that(scene, says) : Findings{};
}

/// Raw meat goes from the freezer into hot fat.
Findings frozen_in_hot_oil(const Scene& scene) {
    const bool frozen = scene.package.thaw.method == ThawMethod::FromFrozen;
    const auto named = std::ranges::find_if(scene.texts, [](const ReadText& read) {
        return says(read.text, Section::Handling, "hot oil");
    });
    return frozen && holds_raw(scene) && named != scene.texts.end()
               ? Findings{{{named->written}, named->where}}
               : Findings{};
}

/// Whether a clause fills the pot at night that another one heats.
bool fills_at_night(const WordedText& text) {
    const auto nights = mentions(text, Section::Handling, "at night");
    return std::ranges::any_of(nights, [&](const Mention& night) {
        return clause_says(text, night.first, Section::Handling, "loads") &&
               !clause_says(text, night.first, Section::Handling, "switches on");
    });
}

/// "Fill it in the evening and switch it on in the morning", in one step or in two, and nothing
/// that keeps it cold until then.
Findings waits_for_heat(const Scene& scene) {
    bool waits = false;
    for (const auto& read : scene.texts) {
        for (const auto& text : read.sentences) {
            waits = (waits || fills_at_night(text)) && !says_cold_place(text);
            if (waits && is_perishable(scene) && says_both(text, "switches on", "by day")) {
                return {{{read.written}, read.where}};
            }
        }
    }
    return {};
}

Findings delayed_start(const Scene& scene) {
    auto found = told<"delayed">(scene);
    return found.empty() ? waits_for_heat(scene) : found;
}

/// How near the nearest of these stands in the clause of a mention; nothing where none does.
std::optional<std::size_t> nearest(const WordedText& text, const Mention& to,
                                   const std::vector<Mention>& all) {
    std::optional<std::size_t> found;
    for (const auto& each : all) {
        if (text.clauses[each.first] == text.clauses[to.first]) {
            found = std::min(found.value_or(text.words.size()), words_between(each, to));
        }
    }
    return found;
}

/// What else may be washed: hands, boards, bags, and any food that is no bird.
std::vector<Mention> other_washables(const Scene& scene, const WordedText& text,
                                     const std::vector<Mention>& birds) {
    auto others = mentions(text, Section::Handling, "washed else");
    std::ranges::copy(mentions(text, Section::Handling, "bag"), std::back_inserter(others));
    for (const auto& match : match_foods(scene.table.words, text.words)) {
        const bool is_bird = std::ranges::any_of(birds, [&](const Mention& bird) {
            return match.first < bird.first + bird.count && bird.first < match.first + match.count;
        });
        if (match.word != nullptr && !is_bird &&
            is_one_of(match.word->role, {FoodRole::Kind, FoodRole::Question, FoodRole::Base})) {
            others.push_back({match.first, match.count, {}, {}});
        }
    }
    return others;
}

/// The birds of a sentence that may be what is washed, and not what something is washed for or
/// after: "Hände nach der Ente abwaschen".
std::vector<Mention> washable_birds(const WordedText& text, std::vector<Mention> birds) {
    constexpr std::size_t article = 1;
    const auto besides = mentions(text, Section::Handling, "washed for");
    std::erase_if(birds, [&](const Mention& bird) {
        return std::ranges::any_of(besides, [&](const Mention& beside) {
            return beside.first < bird.first && words_between(beside, bird) <= article;
        });
    });
    return birds;
}

/// Whether a sentence washes a bird: one that is named nearer than anything else, or, where
/// `is_bird` is what the bag holds, nothing at all: "Rinse and pat dry".
bool washes_bird(const Scene& scene, const WordedText& text, bool is_bird) {
    const auto washes = mentions(text, Section::Handling, "washes");
    if (washes.empty()) {
        return false;
    }
    const auto birds = mentions(text, Section::Handling, "bird");
    const auto others = other_washables(scene, text, birds);
    const auto meant = washable_birds(text, birds);
    for (std::size_t i = 0; i < washes.size(); ++i) {
        const auto bird = nearest(text, washes[i], meant);
        const auto other = nearest(text, washes[i], others);
        const bool is_unnamed = !other && !nearest(text, washes[i], birds);
        const bool is_meant = bird ? !other || *bird < *other : is_bird && is_unnamed;
        if (is_meant && !is_warned_of(text, washes, i, {}) &&
            !clause_says(text, washes[i].first, Section::Negation, "needless")) {
            return true;
        }
    }
    return false;
}

/// What is cooked already has nothing left to spread.
Findings washed_bird(const Scene& scene) {
    const bool is_bird = holds(scene, {FoodKind::RawPoultry});
    const bool may_be_raw =
        is_bird || (holds(scene, {FoodKind::CookedDish}) && !is_surely_cooked(scene));
    return may_be_raw ? sentences_that(scene,
                                       [&](const WordedText& text) {
                                           return washes_bird(scene, text, is_bird);
                                       })
                      : Findings{};
}

constexpr CautionRule handling_rows[] = {
    {"delayed-start", CautionLevel::Report,
     "USDA FSIS, Danger Zone (40 °F to 140 °F): two hours (from memory); USDA FSIS, Slow Cookers "
     "and Food Safety",
     delayed_start},
    {"marinade-raw", CautionLevel::Card,
     "USDA FSIS, Poultry: Basting, Brining, and Marinating (from memory)", raw_marinade},
    {"served-underdone", CautionLevel::Report,
     "FoodSafety.gov, Cook to a Safe Minimum Internal Temperature", underdone},
    {"cold-water-said", CautionLevel::Report, safe_defrosting, against_cold_water},
    {"fast-thaw-kept", CautionLevel::Report, safe_defrosting, kept_after_fast_thaw},
    {"food-suspect", CautionLevel::Report,
     "USDA FSIS, Keep Your Food Safe During Emergencies; CDC, Home-Canned Foods (from memory)",
     suspect},
    {"bag-in-heat", CautionLevel::Report, practice, bag_in_heat},
    {"glass-breaks", CautionLevel::Report,
     "National Center for Home Food Preservation, Freezing: Containers for Freezing (from memory)",
     told<"glass">},
    {"kept-on-shelf", CautionLevel::Report,
     "National Center for Home Food Preservation, Canning: botulism (from memory)", told<"shelf">},
    {"stands-out", CautionLevel::Report,
     "USDA FSIS, Danger Zone (40 °F to 140 °F): two hours, hot food at 140 °F (from memory)",
     left_out},
    {"reheated-again", CautionLevel::Report,
     "UK Food Standards Agency, Cooking your food: reheat once (from memory)",
     told<"again and again">},
    {"poultry-washed", CautionLevel::Report,
     "USDA FSIS, Washing Food: Does it Promote Food Safety?; UK Food Standards Agency and BfR "
     "(Germany): raw poultry is not washed (all from memory)",
     washed_bird},
    {"frozen-hot-oil", CautionLevel::Report,
     "USDA FSIS, Deep Fat Frying and Food Safety (from memory)", frozen_in_hot_oil},
};

} // namespace

std::span<const CautionRule> handling_rules() {
    return handling_rows;
}

} // namespace thawslip::kitchen
