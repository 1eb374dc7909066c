#include "kitchen/foods/beans.h"

#include "base/number_in.h"
#include "kitchen/texts/negation.h"

#include <algorithm>
#include <optional>

namespace thawslip::kitchen {
namespace {

using std::chrono::minutes;

/// The shortest time that stands in the words of the clause: "30-40 min" is 30 min.
std::optional<minutes> time_in_clause(const WordedText& text, const std::vector<int>& clauses,
                                      int clause) {
    std::optional<minutes> shortest;
    for (const auto& mention : mentions(text, Section::BeanState)) {
        const bool hours = mention.meaning == "hours";
        if (clauses[mention.first] != clause || (!hours && mention.meaning != "minutes")) {
            continue;
        }
        for (auto i = mention.first; i > 0 && number_in<double>(text.words[i - 1]); --i) {
            const auto value = *number_in<double>(text.words[i - 1]) * (hours ? 60.0 : 1.0);
            const minutes time{static_cast<int>(std::min(value, 10'000.0))};
            shortest = std::min(shortest.value_or(time), time);
        }
    }
    return shortest;
}

bool covers(const std::vector<Mention>& all, std::size_t word) {
    return std::ranges::any_of(all, [word](const Mention& mention) {
        return mention.first <= word && word < mention.first + mention.count;
    });
}

/// Whether the clause says nothing but how the beans are: ", drained, from a can".
bool is_only_state(const WordedText& text, const std::vector<int>& clauses, int clause) {
    auto state = mentions(text, Section::BeanState);
    for (std::size_t i = 0; i < text.words.size(); ++i) {
        const bool said = covers(state, i);
        const bool filler =
            std::ranges::any_of(mentions(text, Section::Negation, "filler"),
                                [&](const Mention& mention) { return mention.first == i; });
        if (clauses[i] == clause && !said && !filler && !number_in<double>(text.words[i])) {
            return false;
        }
    }
    return true;
}

/// Whether the state is one of the beans: in their clause, or in one that is about nothing else.
bool is_of_beans(const WordedText& text, const std::vector<int>& clauses, const Mention& state,
                 const std::vector<Mention>& beans) {
    const int clause = clauses[state.first];
    return std::ranges::any_of(
               beans, [&](const Mention& bean) { return clauses[bean.first] == clause; }) ||
           is_only_state(text, clauses, clause);
}

bool is_long_enough(const WordedText& text, const std::vector<int>& clauses, const Mention& boiled,
                    minutes boil) {
    return time_in_clause(text, clauses, clauses[boiled.first]).value_or(boil) >= boil;
}

bool says_certainly(const WordedText& text, const std::vector<Mention>& beans,
                    std::string_view state, minutes boil) {
    const auto clauses = clauses_of(text);
    return std::ranges::any_of(
        mentions(text, Section::BeanState, state), [&](const Mention& mention) {
            return is_certain(text, mention) && is_of_beans(text, clauses, mention, beans) &&
                   (state != "boiled" || is_long_enough(text, clauses, mention, boil));
        });
}

/// Dried, soaked or uncooked; not "not dried".
bool says_dried(const WordedText& text) {
    return is_named(text, mentions(text, Section::BeanState, "dried")) ||
           is_named(text, mentions(text, Section::BeanState, "uncooked"));
}

/// Whether nothing but how beans are stands between the two.
bool are_together(const WordedText& text, const Mention& bean, const Mention& state) {
    const auto& first = bean.first < state.first ? bean : state;
    const auto& second = bean.first < state.first ? state : bean;
    const auto states = mentions(text, Section::BeanState);
    for (auto i = first.first + first.count; i < second.first; ++i) {
        if (!covers(states, i)) {
            return false;
        }
    }
    return text.clauses[first.first] == text.clauses[second.first];
}

/// "Not from a can": so it must be something else.
bool says_not_canned(const WordedText& text) {
    const auto canned = mentions(text, Section::BeanState, "canned");
    for (std::size_t i = 0; i < canned.size(); ++i) {
        if (is_warned_of(text, canned, i, {})) {
            return true;
        }
    }
    return false;
}

/// Whether a text is about beans: it names them, means them by "them", or speaks of soaking.
bool is_about_beans(const WordedText& text) {
    return says(text, Section::Bean, "bean") || says(text, Section::BeanState, "them") ||
           says(text, Section::BeanState, "first");
}

/// Whether a text warns of `state`, or calls it needless: "do not boil", "no need to soak".
bool rules_out(const WordedText& text, std::string_view state) {
    const auto needless = mentions(text, Section::Negation, "needless");
    const auto said = mentions(text, Section::BeanState, state);
    for (std::size_t i = 0; i < said.size(); ++i) {
        const bool unneeded = std::ranges::any_of(needless, [&](const Mention& mention) {
            return text.clauses[mention.first] == text.clauses[said[i].first];
        });
        if (unneeded || is_warned_of(text, said, i, {})) {
            return true;
        }
    }
    return false;
}

} // namespace

minutes bean_boil(std::string_view rule_set) {
    return minutes{rule_set == "uk" ? 10 : 30};
}

bool steps_forbid_boiling(std::span<const ReadText> texts) {
    return std::ranges::any_of(texts, [](const ReadText& read) {
        return !names_food(read.field) && is_about_beans(read.text) &&
               (rules_out(read.text, "boiled") || rules_out(read.text, "first"));
    });
}

BeanState bean_state(const WordedText& text, minutes boil) {
    const auto beans = mentions(text, Section::Bean, "bean");
    if (beans.empty()) {
        return BeanState::None;
    }
    if (says_certainly(text, beans, "boiled", boil)) {
        return BeanState::Safe;
    }
    if (says_dried(text) || says_not_canned(text)) {
        return BeanState::Dry;
    }
    return says_certainly(text, beans, "canned", boil) ? BeanState::Safe : BeanState::Unclear;
}

bool names_uncooked_beans(const WordedText& text) {
    const auto beans = mentions(text, Section::Bean, "bean");
    const auto uncooked = mentions(text, Section::BeanState, "uncooked");
    const auto clauses = clauses_of(text);
    for (std::size_t i = 0; i < uncooked.size(); ++i) {
        const bool of_beans = is_only_state(text, clauses, clauses[uncooked[i].first]) ||
                              std::ranges::any_of(beans, [&](const Mention& bean) {
                                  return are_together(text, bean, uncooked[i]);
                              });
        if (!beans.empty() && of_beans && !is_warned_of(text, uncooked, i, {})) {
            return true;
        }
    }
    return false;
}

bool steps_boil_beans(std::span<const ReadText> texts, minutes boil) {
    return std::ranges::any_of(texts, [&](const ReadText& read) {
        const auto beans = mentions(read.text, Section::Bean, "bean");
        return !names_food(read.field) && !beans.empty() &&
               says_certainly(read.text, beans, "boiled", boil);
    });
}

} // namespace thawslip::kitchen
