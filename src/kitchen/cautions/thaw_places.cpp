#include "kitchen/cautions/thaw_places.h"

#include "base/letters.h"
#include "base/list.h"
#include "kitchen/foods/meat_words.h"
#include "kitchen/texts/negation.h"
#include "kitchen/texts/said_degrees.h"
#include "kitchen/texts/sentences.h"

#include <algorithm>
#include <cstdlib>

namespace thawslip::kitchen {
namespace {

using Mentions = std::vector<Mention>;

std::size_t end_of(const Mention& mention) {
    return mention.first + mention.count;
}

/// What a text says of places, by what they are for thawing food.
struct Places {
    Mentions warm; ///< rooms, basins and warm water too
    Mentions safe; ///< refrigerators, cold water
    Mentions away; ///< "out of", "next to"
};

Places places_in(const WordedText& text) {
    Places places;
    for (const auto& place : mentions(text, Section::Place)) {
        const bool safe = is_one_of(place.meaning, {"safe", "cool", "water"});
        (place.meaning == "away" ? places.away : safe ? places.safe : places.warm).push_back(place);
    }
    return places;
}

bool has_between(const Mentions& all, std::size_t first, std::size_t end) {
    return std::ranges::any_of(
        all, [&](const Mention& each) { return each.first >= first && each.first < end; });
}

bool is_before(const Mention& away, const Mention& place) {
    constexpr std::size_t article = 1;
    return end_of(away) <= place.first && place.first - end_of(away) <= article;
}

/// "Out of the fridge", "aus dem Kühlschrank", "next to the fridge", "sacar la carne de la nevera":
/// the food is not in it.
bool is_left(const WordedText& text, const Mention& fridge, const Places& places) {
    const auto is_of = [&](std::size_t back) {
        return fridge.first > back && is_one_of(text.words[fridge.first - back - 1], {"de", "del"});
    };
    const bool taken = is_of(0) || is_of(1);
    return std::ranges::any_of(places.away,
                               [&](const Mention& away) { return is_before(away, fridge); }) ||
           (taken && std::ranges::any_of(
                         mentions(text, Section::Doing, "takes out"), [&](const Mention& each) {
                             return each.first < fridge.first &&
                                    text.clauses[each.first] == text.clauses[fridge.first];
                         }));
}

/// "Out of the sun": what is away from a heater is not beside it.
bool is_shunned(const WordedText& text, const Mention& heater, const Places& places) {
    return std::ranges::any_of(places.away, [&](const Mention& away) {
        return is_before(away, heater) &&
               is_one_of(words_of(text, away), {"out of", "outside of", "from", "off", "aus",
                                                "ausserhalb", "vom", "fuera de", "fuera del"});
    });
}

bool is_fridge(const WordedText& text, const Mention& place, const Places& places) {
    return place.meaning == "safe" && !is_left(text, place, places);
}

/// Whether a time or another turn of what is done stands between two places, which then are two.
bool is_parted(const WordedText& text, const Mention& one, const Mention& other) {
    const auto first = std::min(end_of(one), end_of(other));
    const auto end = std::max(one.first, other.first);
    const auto doubts = mentions(text, Section::Negation);
    const bool turns = std::ranges::any_of(doubts, [&](const Mention& each) {
        return is_one_of(each.meaning, {"clause", "not", "or", "doubt"}) && each.first >= first &&
               each.first < end;
    });
    return turns || has_between(mentions(text, Section::Thawing, "long"), first, end) ||
           std::any_of(text.words.begin() + static_cast<std::ptrdiff_t>(std::min(first, end)),
                       text.words.begin() + static_cast<std::ptrdiff_t>(end),
                       [](const std::string& word) { return is_digit(word[0]); });
}

bool is_in(std::string_view word) {
    return is_one_of(word, {"in", "im", "en", "inside"});
}

/// "In the fridge", "im alten Kühlschrank": food is in it, wherever it stands.
bool is_inside(const WordedText& text, const Mention& fridge) {
    constexpr std::size_t most_words = 3;
    for (auto i = fridge.first - std::min(fridge.first, most_words); i < fridge.first; ++i) {
        if (is_in(text.words[i]) && text.clauses[i] == text.clauses[fridge.first]) {
            return true;
        }
    }
    return false;
}

/// "Garage fridge", "fridge in the cellar", "in the fridge beside the sink": where the refrigerator
/// stands.
bool is_where_a_fridge_stands(const WordedText& text, const Mention& place, const Places& places) {
    constexpr int next_clause = 1;
    return std::ranges::any_of(places.safe, [&](const Mention& safe) {
        if (!is_fridge(text, safe, places)) {
            return false;
        }
        const bool near =
            std::abs(text.clauses[safe.first] - text.clauses[place.first]) <= next_clause;
        const bool here = text.clauses[safe.first] == text.clauses[place.first];
        const bool behind = here && safe.first < place.first && is_inside(text, safe);
        return (here && safe.first == end_of(place)) ||
               (((place.meaning == "room" && near) || behind) && !is_parted(text, place, safe));
    });
}

bool is_bath(const Mention& place) {
    return is_one_of(place.meaning, {"bath", "boils"});
}

/// A bowl of cold water may stand on the counter, and a sink may be full of it: "sink, cold water".
bool is_cold_bath(const WordedText& text, const Mention& place, const Places& places) {
    const auto clauses = clauses_of(text);
    const int apart = place.meaning == "basin" ? 1 : 0;
    return !is_bath(place) && std::ranges::any_of(places.safe, [&](const Mention& other) {
        const bool near = clauses[other.first] == clauses[place.first] ||
                          std::abs(text.clauses[other.first] - text.clauses[place.first]) == apart;
        return other.meaning == "water" && near && is_certain(text, other);
    });
}

/// Whether a clause before that of a word names meat, or the text says before it that something is
/// filled.
bool is_filled_before(const WordedText& text, std::size_t word) {
    const auto clauses = clauses_of(text);
    const auto first = std::ranges::find(clauses, clauses[word]) - clauses.begin();
    const auto meats = meats_in({text.words.begin(), text.words.begin() + first});
    return meats.poultry || meats.pork || meats.beef_or_lamb || meats.game || meats.some ||
           has_between(mentions(text, Section::Dish, "stuffed"), 0, word) ||
           has_between(mentions(text, Section::Handling, "fills"), 0, word);
}

/// Whether what rises or soaks until `word` is dough or beans and not the raw meat of the bag: "let
/// the dough rise, then fill it", not "fill it and let it rise".
bool rises_apart(const WordedText& text, bool raw, std::size_t word) {
    const auto rising = mentions(text, Section::Thawing, "rising");
    const bool names_dough = rising.size() > mentions(text, Section::Thawing, "rises").size();
    return !rising.empty() && (!raw || (names_dough && !is_filled_before(text, word)));
}

/// The last word that says that something rises, or for how long.
std::size_t end_of_rising(const WordedText& text) {
    std::size_t last = 0;
    for (const std::string_view meaning : {"rises", "long"}) {
        for (const auto& each : mentions(text, Section::Thawing, meaning)) {
            last = std::max(last, each.first);
        }
    }
    return last;
}

/// Whether frozen food is said to lie in the place for long: a thaw note is about that and plates;
/// of other words it takes one for thawing, for frozen food or for hours, unless a clause is about
/// the refrigerator: "overnight in the fridge; serve at the table". Food is "frozen" for many
/// reasons, and it goes into hot water to cook: there only thawing counts.
bool is_about_thawing(const ReadText& read, const Mention& place, const Places& places, bool raw) {
    if (read.field == FreeText::ThawNote) {
        return !clause_says(read.text, place.first, Section::Handling, "crockery");
    }
    const bool rises = rises_apart(read.text, raw, end_of_rising(read.text)) &&
                       !says(read.text, Section::Thawing, "frozen");
    const bool only_thawing = names_food(read.field) || is_bath(place) || rises;
    const bool says_minutes = says(read.text, Section::Doing, "minutes");
    const auto clauses = clauses_of(read.text);
    return std::ranges::any_of(mentions(read.text, Section::Thawing), [&](const Mention& mention) {
        const bool counts =
            mention.meaning == "thaw" || (mention.meaning == "marinating" && !says_minutes) ||
            (!only_thawing && (mention.meaning == "long" || mention.meaning == "frozen"));
        return counts && std::ranges::none_of(places.safe, [&](const Mention& other) {
                   return clauses[other.first] == clauses[mention.first] &&
                          (other.meaning == "water" || !is_left(read.text, other, places));
               });
    });
}

/// "Hold the bag under hot water", "lay it in the sun, in its bag": a closed bag in water that is
/// no cold water and boils nothing, or at a heater. What is tipped out of it goes into hot water to
/// cook.
bool warms_the_bag(const ReadText& read, const Mention& place, const Places& places) {
    if (!is_one_of(place.meaning, {"bath", "heats"}) || names_food(read.field) ||
        is_shunned(read.text, place, places)) {
        return false;
    }
    const auto is = [&](std::string_view meaning) {
        return says(read.text, Section::Doing, meaning);
    };
    return is("bag") && !is("contents") && !is("cook");
}

bool lies_warm(const ReadText& read, const Places& places, std::size_t which, bool raw) {
    const auto& place = places.warm[which];
    const bool thaws =
        is_about_thawing(read, place, places, raw) || warms_the_bag(read, place, places);
    return thaws && !is_cold_bath(read.text, place, places) &&
           !is_where_a_fridge_stands(read.text, place, places) &&
           !is_warned_of(read.text, places.warm, which, places.safe);
}

/// How long a text says from a word on, in hours, and the word after it.
struct Span {
    double hours = 0;
    std::size_t end = 0;
};

Span span_at(const WordedText& text, std::size_t word) {
    constexpr double minutes_of_hour = 60;
    constexpr double many = 3;
    const auto number = number_at(text, word);
    const auto other = number_at(text, word + 1); // "2-3 h"
    const auto unit = word + (number && other ? std::size_t{2} : std::size_t{1});
    const auto names = [&](std::string_view meaning, std::size_t at) {
        return std::ranges::any_of(
            mentions(text, Section::Doing, meaning),
            [&](const Mention& each) { return each.first <= at && at < end_of(each); });
    };
    if (number && names("hours", unit)) {
        return {std::max(*number, other.value_or(0)), unit + 1};
    }
    if (number && names("minutes", unit)) {
        return {std::max(*number, other.value_or(0)) / minutes_of_hour, unit + 1};
    }
    for (const auto& several : mentions(text, Section::Doing, "several")) {
        if (several.first == word && names("hours", end_of(several))) {
            const auto said = words_of(text, several);
            const bool two = said == "two" || said == "dos" || said == "zwei";
            return {two ? 2 : many, end_of(several) + 1};
        }
    }
    return {};
}

/// Whether the hours are those that food stands: not those that it cooks, lies in the refrigerator,
/// rises as dough does, or must not stay.
bool is_of_standing(const WordedText& text, const Places& places, std::size_t word,
                    const Span& span, bool raw) {
    constexpr double most_hours = 2;
    const auto clauses = clauses_of(text);
    const auto here = [&](const Mentions& all) {
        return std::ranges::any_of(
            all, [&](const Mention& each) { return clauses[each.first] == clauses[word]; });
    };
    const bool limit = span.hours <= most_hours && here(mentions(text, Section::Doing, "limit"));
    if (limit || here(mentions(text, Section::Negation, "not")) ||
        (here(mentions(text, Section::Thawing, "rising")) && rises_apart(text, raw, word)) ||
        std::ranges::any_of(places.safe, [&](const Mention& each) {
            return clauses[each.first] == clauses[word] && is_fridge(text, each, places);
        })) {
        return false;
    }
    const auto before = mentions(text, Section::Doing, "before");
    if (has_between(before, span.end, span.end + 1)) {
        return true; // "3 h before", also before it is cooked
    }
    const bool cooks =
        here(mentions(text, Section::Doing, "cook")) || here(mentions(text, Section::Appliance));
    return !cooks && (here(mentions(text, Section::Doing, "stand")) ||
                      here(mentions(text, Section::Thawing, "marinating")) || here(places.warm) ||
                      here(places.away) || here(before));
}

/// "Sit the bag out", "dejar la carne fuera"; not "leave to thaw out".
bool says_left_out(const WordedText& text) {
    for (std::size_t word = 1; word < text.words.size(); ++word) {
        const bool thaws =
            text.words[word - 1].starts_with("thaw") || text.words[word - 1].starts_with("defrost");
        if (thaws ||
            !is_one_of(text.words[word], {"out", "outside", "fuera", "afuera", "draussen"})) {
            continue;
        }
        const bool of_it =
            word + 1 < text.words.size() && is_one_of(text.words[word + 1], {"de", "del"});
        const bool spanish = is_one_of(text.words[word], {"fuera", "afuera"}) && !of_it;
        const std::size_t most_words = spanish ? 6 : 3;
        for (auto i = word - std::min(word, most_words); i < word; ++i) {
            if (is_one_of(text.words[i],
                          {"sit", "leave", "left", "leaving", "sitting", "stand", "lie", "dejar",
                           "dejarlo", "dejarla", "deje", "deja", "reposar", "repose", "lassen"})) {
                return true;
            }
        }
    }
    return false;
}

bool stands_out(const WordedText& text, const Places& places) {
    const bool warm = std::ranges::any_of(places.warm, [&](const Mention& place) {
        return place.meaning != "basin" && !is_bath(place) &&
               !is_where_a_fridge_stands(text, place, places);
    });
    return warm || says_left_out(text) ||
           std::ranges::any_of(places.safe, [&](const Mention& place) {
               return place.meaning != "water" && is_left(text, place, places);
           });
}

/// A word for thawing itself; "until soft" and "loosen" are said of cooking too.
bool names_thawing(std::string_view words) {
    constexpr std::string_view stems[] = {"thaw", "frost", "freez", "tau", "congel", "hiel"};
    return std::ranges::any_of(
        stems, [&](std::string_view stem) { return words.find(stem) != std::string_view::npos; });
}

/// Whether the clause of a word tells to thaw, or the one behind it says "until it has thawed"; of
/// what has thawed before ("aufgetaut in den Ofen") it does not.
bool thaws_at(const WordedText& text, std::size_t word) {
    const auto clauses = clauses_of(text);
    return std::ranges::any_of(mentions(text, Section::Thawing, "thaw"), [&](const Mention& thaw) {
        const auto at = thaw.first;
        const auto first =
            static_cast<std::size_t>(std::ranges::find(clauses, clauses[at]) - clauses.begin());
        const bool until = is_one_of(text.words[first], {"until", "till", "bis", "hasta"});
        const bool has_thawed =
            text.words[at].find("getaut") != std::string::npos || text.words[at] == "thawed";
        const bool here =
            until ? clauses[at] == clauses[word] + 1 : clauses[at] == clauses[word] && !has_thawed;
        return here && names_thawing(words_of(text, thaw));
    });
}

/// "In the oven", "im Backofen", "en el horno apagado"; not "into the oven", "in den Ofen".
bool lies_in_oven(const WordedText& text, bool must_thaw) {
    const auto ovens = mentions(text, Section::Appliance, "oven");
    for (std::size_t i = 0; i < ovens.size(); ++i) {
        const auto word = [&](std::size_t back) {
            return ovens[i].first >= back ? std::string_view{text.words[ovens[i].first - back]}
                                          : std::string_view{};
        };
        const bool inside = ovens[i].first == 0 || word(1) == "im" || is_in(word(1)) ||
                            (is_in(word(2)) && word(1) != "den" && word(1) != "die");
        const bool other = clause_says(text, ovens[i].first, Section::Doing, "cook") ||
                           clause_says(text, ovens[i].first, Section::Doing, "before") ||
                           clause_says(text, ovens[i].first, Section::Handling, "crockery") ||
                           clause_says(text, ovens[i].first, Section::Thawing, "frozen");
        const bool thaws = !must_thaw || thaws_at(text, ovens[i].first);
        if (inside && thaws && !other && !is_warned_of(text, ovens, i, {})) {
            return true;
        }
    }
    return false;
}

/// "On the mantelpiece", and with "inside" for `where` "in the hay"; not "on a plate", "in its
/// bag", "in the 3 hours before".
bool names_a_place(const WordedText& text, std::string_view where) {
    constexpr std::size_t reach = 4; // "on the lowest shelf", "in its own vacuum pouch"
    const auto all_at = mentions(text, Section::Doing, where);
    for (std::size_t i = 0; i < all_at.size(); ++i) {
        const auto& at = all_at[i];
        const auto end = std::min(end_of(at) + reach, text.words.size());
        const auto in_reach = [&](Section section, std::string_view meaning) {
            return has_between(mentions(text, section, meaning), at.first, end);
        };
        const bool number = std::any_of(text.words.begin() + static_cast<std::ptrdiff_t>(at.first),
                                        text.words.begin() + static_cast<std::ptrdiff_t>(end),
                                        [](const std::string& word) { return is_digit(word[0]); });
        const bool is_time =
            in_reach(Section::Thawing, "long") || in_reach(Section::Thawing, "when");
        if (end > end_of(at) && !number && !is_time && !in_reach(Section::Doing, "holder") &&
            !in_reach(Section::Doing, "bag") &&
            !has_between(mentions(text, Section::Appliance), at.first, end) &&
            !is_warned_of(text, all_at, i, {})) {
            return true;
        }
    }
    return false;
}

/// "Overnight", "for hours"; not "the day before", which says when and not for how long.
bool lasts_long(const WordedText& text) {
    const auto when = mentions(text, Section::Thawing, "when");
    return std::ranges::any_of(mentions(text, Section::Thawing, "long"), [&](const Mention& each) {
        return !contains(mapped(when, &Mention::first), each.first);
    });
}

/// "Leave it in the pot", "on the stove", and nothing that heats it or that soaks in it.
bool is_left_in_pot(const WordedText& text) {
    return is_meant(text, mentions(text, Section::Doing, "left")) &&
           (says(text, Section::Appliance, "pot") || says(text, Section::Appliance, "pan")) &&
           !says(text, Section::Thawing, "rising") && !says(text, Section::Doing, "cook") &&
           !says(text, Section::Setting, "heat") && !says(text, Section::Setting, "slow") &&
           !says(text, Section::Doing, "hot-held") && said_degrees(text).empty();
}

} // namespace

bool thaws_warm(const ReadText& read, bool raw) {
    const auto places = places_in(read.text);
    for (std::size_t i = 0; i < places.warm.size(); ++i) {
        if (lies_warm(read, places, i, raw)) {
            return true;
        }
    }
    return false;
}

bool stands_too_long(const ReadText& read, bool raw) {
    if (read.field != FreeText::ThawNote && read.field != FreeText::Note &&
        read.field != FreeText::Step) {
        return false;
    }
    constexpr double most_hours = 2;
    for (const auto& text : read.sentences) {
        const auto places = places_in(text);
        const auto words = stands_out(text, places) ? text.words.size() : 0;
        for (std::size_t word = 0; word < words; ++word) {
            const auto span = span_at(text, word);
            if (span.hours >= most_hours && is_of_standing(text, places, word, span, raw)) {
                return true;
            }
        }
    }
    return false;
}

bool thaws_in_heat(const ReadText& read) {
    const bool told_so = read.field == FreeText::Step || read.field == FreeText::Note;
    if (read.field != FreeText::ThawNote && !told_so) {
        return false;
    }
    constexpr double warmest_water = 21.5;
    for (const auto& text : read.sentences) {
        for (const auto& degrees : said_degrees(text)) {
            const auto told = [&](Section section, std::string_view meaning) {
                return clause_says(text, degrees.word, section, meaning);
            };
            const bool thaws = !told_so || thaws_at(text, degrees.word);
            if (degrees.has_unit && degrees.celsius > warmest_water && thaws &&
                !told(Section::Doing, "limit") && !told(Section::Negation, "not") &&
                !told(Section::Doing, "cook") && !told(Section::Doing, "core")) {
                return true;
            }
        }
        if (lies_in_oven(text, told_so)) {
            return true;
        }
    }
    return false;
}

bool thaws_somewhere(const ReadText& read) {
    return !thaws_warm(read, false) &&
           std::ranges::any_of(read.sentences, [&read](const WordedText& text) {
               const bool is_note = read.field == FreeText::ThawNote;
               const bool thaws =
                   is_note || is_meant(text, mentions(text, Section::Thawing, "thaw"));
               return thaws && places_in(text).safe.empty() &&
                      (names_a_place(text, "at") || (is_note && names_a_place(text, "inside")));
           });
}

bool says_cold_place(const WordedText& text) {
    const auto places = places_in(text);
    return std::ranges::any_of(places.safe, [&](const Mention& place) {
        return place.meaning != "safe" || is_fridge(text, place, places);
    });
}

double hours_said(const WordedText& text) {
    double longest = 0;
    for (std::size_t word = 0; word < text.words.size(); ++word) {
        longest = std::max(longest, span_at(text, word).hours);
    }
    return longest;
}

bool cools_outside(const ReadText& read) {
    for (const auto& text : read.sentences) {
        const bool cold = says_cold_place(text);
        const bool freezes = says(text, Section::Thawing, "freezes");
        if (!cold && !freezes && lasts_long(text) &&
            (is_meant(text, mentions(text, Section::Doing, "cools")) || is_left_in_pot(text))) {
            return true;
        }
    }
    return false;
}

} // namespace thawslip::kitchen
