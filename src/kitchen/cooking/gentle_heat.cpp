#include "kitchen/cooking/gentle_heat.h"

#include "base/list.h"
#include "kitchen/measures/number_text.h"
#include "kitchen/texts/negation.h"
#include "kitchen/texts/phrases.h"
#include "kitchen/texts/said_degrees.h"
#include "kitchen/texts/sentences.h"
#include "kitchen/texts/text.h"

#include <algorithm>
#include <cmath>

namespace thawslip::kitchen {
namespace {

constexpr double least_celsius = 160.0;
constexpr double least_after_hot_start = 110.0;

bool has_a_dial(Vessel vessel) {
    return vessel == Vessel::Oven || vessel == Vessel::Grill || vessel == Vessel::Other;
}

/// Whether setting or vessel mean gentle heat, whatever gives it. Common practice, no source.
bool says_low_heat(const Cook& cook) {
    const auto& book = phrase_book(Section::Gentle, "low");
    return !book.find(words_of(cook.in)).empty() || !book.find(words_of(cook.setting)).empty();
}

bool is_only_warm(const Cook& cook) {
    const auto said = words_of(cook.setting);
    return !said.empty() && std::ranges::all_of(said, [&](const std::string& word) {
        return is_one_of(word, {"warm", "keep", "warming", "caliente", "templado"});
    });
}

/// A word before a dial's number, and the lowest number that is 160 °C (common practice, no
/// source).
struct Dial {
    std::string_view word;
    double least;
};
constexpr Dial dials[] = {{"gas mark", 3}, {"gas stufe", 2}, {"gas", 3},
                          {"mark", 3},     {"stufe", 2},     {"nivel", 2},
                          {"level", 2},    {"posicion", 2},  {"posición", 2}};

std::optional<double> amount_at(std::string_view text, std::size_t at) {
    const auto read = read_amount(text, skip_spaces(text, at));
    return read ? std::optional{read.value().amount.value()} : std::nullopt;
}

/// "Gas mark ½", "Gas 1", "Stufe 1".
bool is_low_on_dial(std::string_view text) {
    const auto small = lower(text);
    for (const auto& dial : dials) {
        const auto at = small.find(dial.word);
        const auto amount =
            at == std::string::npos ? std::nullopt : amount_at(small, at + dial.word.size());
        if (amount) {
            return *amount < dial.least;
        }
    }
    return false;
}

/// "Low", and nothing hot; a shelf may be low in a hot oven.
bool says_low(const WordedText& text, bool of_setting) {
    const auto low = mentions(text, Section::Setting, "low");
    const bool means_it = std::ranges::any_of(low, [&](const Mention& mention) {
        return of_setting || !mention.phrase.starts_with("klein"); // a small oven
    });
    return means_it && !says(text, Section::Doing, "hot") && !says(text, Section::Doing, "rack");
}

/// Reads the texts in the order in which the food meets the heat.
class Ear {
public:
    explicit Ear(const Cook& cook) : cook_{cook}, hot_{!has_a_dial(cook.vessel)} {}

    bool is_gentle_vessel() {
        if (says_low_heat(cook_) || is_only_warm(cook_)) {
            return true;
        }
        return has_a_dial(cook_.vessel) &&
               (hears_dial(cook_.setting, true) || hears_dial(cook_.in, false));
    }

    std::optional<GentleHeat> gentle_step() {
        for (std::size_t i = 0; i < cook_.steps.size(); ++i) {
            for (const auto& sentence : sentences(cook_.steps[i])) {
                if (boils(sentence)) {
                    return std::nullopt;
                }
                if (names_slow_cooker(sentence)) {
                    return GentleHeat{true, i};
                }
                if (is_gentle(sentence)) {
                    return GentleHeat{false, i};
                }
            }
        }
        return std::nullopt;
    }

private:
    bool hears(double celsius) {
        if (celsius < (hot_ ? least_after_hot_start : least_celsius)) {
            return true;
        }
        hot_ = true;
        return false;
    }

    bool hears_dial(std::string_view written, bool of_setting) {
        const auto text = worded(written);
        const auto degrees = said_degrees(text);
        for (const auto& each : degrees) {
            if (!clause_says(text, each.word, Section::Doing, "keep") && hears(each.celsius)) {
                return true;
            }
        }
        return degrees.empty() &&
               (is_low_on_dial(written) ||
                (cook_.vessel == Vessel::Oven && !hot_ && says_low(text, of_setting)));
    }

    /// What comes out of a boiling pot is hot already, whatever it goes into.
    bool boils(const WordedText& text) const {
        const auto boiled = mentions(text, Section::BeanState, "boiled");
        return hot_ && std::ranges::any_of(boiled, [&](const Mention& mention) {
                   return is_certain(text, mention);
               });
    }

    static bool names_slow_cooker(const WordedText& text) {
        return is_meant(text, mentions(text, Section::Appliance, "slow cooker")) &&
               !says(text, Section::Doing, "keep");
    }

    bool is_gentle(const WordedText& text) {
        const auto ovens = mentions(text, Section::Appliance, "oven");
        const bool in_oven = !ovens.empty();
        if (in_oven && is_warned_of(text, ovens, 0, {})) {
            return false;
        }
        const bool cooks = has_a_dial(cook_.vessel) && says(text, Section::Doing, "cook");
        bool any = false;
        for (const auto& each : said_degrees(text)) {
            any = true;
            if ((in_oven || cooks) && is_of_heat(text, each, ovens) && hears(each.celsius)) {
                return true;
            }
        }
        return in_oven && !any && !hot_ && says_low(text, false) &&
               !says(text, Section::Doing, "keep");
    }

    /// Whether the temperature is the oven's, and not the food's own or that of what comes after.
    bool is_of_heat(const WordedText& text, const SaidDegrees& said,
                    const std::vector<Mention>& ovens) const {
        constexpr double hottest_middle = 90;
        constexpr double same = 2;
        const auto before = said.word > 0 ? text.words[said.word - 1] : std::string{};
        if (!said.has_unit && !is_one_of(before, {"at", "bei", "a", "to", "auf", "zu"})) {
            return false;
        }
        for (const std::string_view meaning : {"keep", "core"}) {
            if (clause_says(text, said.word, Section::Doing, meaning)) {
                return false;
            }
        }
        const bool at = is_one_of(before, {"at", "bei", "a"});
        const bool is_target =
            (cook_.until && std::abs(cook_.until->celsius - said.celsius) < same) ||
            ends_before(mentions(text, Section::Doing, "until"), said.word,
                        at ? std::size_t{0} : std::size_t{2});
        const bool to = is_one_of(before, {"to", "auf", "a"});
        const bool oven_to = ends_before(ovens, said.word - 1, 0) ||
                             says(text, Section::Doing, "preheat") || said.celsius > hottest_middle;
        return !is_target && (!to || before == "a" || oven_to);
    }

    static bool ends_before(const std::vector<Mention>& all, std::size_t word, std::size_t most) {
        return std::ranges::any_of(all, [&](const Mention& each) {
            const auto end = each.first + each.count;
            return end <= word && word - end <= most;
        });
    }

    const Cook& cook_;
    bool hot_;
};

bool names(std::string_view in, std::string_view appliance) {
    return says(worded(in), Section::Appliance, appliance);
}

} // namespace

std::optional<GentleHeat> gentle_heat(const Cook& cook) {
    Ear ear{cook};
    return ear.is_gentle_vessel() ? GentleHeat{} : ear.gentle_step();
}

std::string_view slow_appliance(std::string_view in) {
    constexpr std::string_view slow_cooker = "slow cooker";
    for (const auto appliance : {slow_cooker, std::string_view{"multicooker"}}) {
        if (names(in, appliance)) {
            return slow_cooker;
        }
    }
    for (const std::string_view appliance : {"water bath", "rice cooker", "haybox"}) {
        if (names(in, appliance)) {
            return appliance;
        }
    }
    return slow_cooker;
}

bool is_no_slow_cooker(std::string_view in) {
    return slow_appliance(in) != "slow cooker";
}

bool is_haybox(std::string_view in) {
    return names(in, "haybox");
}

} // namespace thawslip::kitchen
