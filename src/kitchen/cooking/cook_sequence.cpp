#include "kitchen/cooking/cook_sequence.h"

#include "base/list.h"
#include "kitchen/texts/lexicon.h"
#include "kitchen/texts/sentences.h"
#include "kitchen/timeline/cook_window.h"
#include "kitchen/timeline/finish_order.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace thawslip::kitchen {
namespace {

constexpr std::size_t least_letters = 3;   // of a word that names something
constexpr std::size_t least_in_longer = 4; // of one that ends a longer word: crumbs, breadcrumbs

/// Words that join others, in the lexicon's languages: they name nothing.
constexpr std::array<std::string_view, 28> joining = {
    "and", "the",  "for", "with", "from", "into", "und",  "mit", "der", "die",
    "das", "den",  "dem", "ein",  "eine", "zum",  "zur",  "los", "las", "con",
    "del", "para", "una", "les",  "des",  "aux",  "avec", "pour"};

bool names_something(std::string_view word) {
    return word.size() >= least_letters && !contains(joining, word) &&
           word.find_first_of("0123456789") == std::string_view::npos;
}

bool is_end_of(std::string_view part, std::string_view whole) {
    return part.size() >= least_in_longer && whole.ends_with(part);
}

bool have_common_form(const std::vector<Form>& some, const std::vector<Form>& others) {
    return std::ranges::any_of(some, [&others](const Form& form) {
        return form.text.size() >= least_letters &&
               std::ranges::any_of(others, [&form](const Form& other) {
                   return form.text == other.text || is_end_of(form.text, other.text) ||
                          is_end_of(other.text, form.text);
               });
    });
}

/// How many words of an addition a step has.
int shared_words(const WordedText& addition, const WordedText& step) {
    int shared = 0;
    for (std::size_t i = 0; i < addition.words.size(); ++i) {
        shared += names_something(addition.words[i]) &&
                  std::ranges::any_of(step.forms, [&](const std::vector<Form>& forms) {
                      return have_common_form(addition.forms[i], forms);
                  });
    }
    return shared;
}

/// The first of the steps from `from` on that shares most words with an addition.
std::optional<std::size_t> step_naming(const WordedText& addition,
                                       const std::vector<WordedText>& steps, std::size_t from) {
    std::optional<std::size_t> best;
    int most = 0;
    for (auto step = from; step < steps.size(); ++step) {
        const int shared = shared_words(addition, steps[step]);
        if (shared > most) {
            most = shared;
            best = step;
        }
    }
    return best;
}

/// The additions of one moment, each with the step that names it.
struct Gathered {
    When when;
    std::vector<std::size_t> additions;
    std::vector<std::optional<std::size_t>> steps;
    std::size_t first_step = 0; ///< of those that belong to the moment

    bool is_named() const {
        return std::ranges::any_of(steps, [](const auto& step) { return step.has_value(); });
    }
};

/// The moments of a package's additions, the start before them.
std::vector<Gathered> moments_of(const std::vector<Finish>& finish) {
    std::vector<Gathered> moments(1);
    for (std::size_t i = 0; i < finish.size(); ++i) {
        if (finish[i].when != moments.back().when) {
            moments.push_back({finish[i].when, {}, {}});
        }
        moments.back().additions.push_back(i);
    }
    return moments;
}

/// Looks for the steps that name a moment's additions, from `from` on. \returns the first of them
std::optional<std::size_t> name_steps(Gathered& moment, const std::vector<Finish>& finish,
                                      const std::vector<WordedText>& steps, std::size_t from) {
    std::optional<std::size_t> first;
    for (const auto addition : moment.additions) {
        const auto& add = finish[addition].add;
        const auto step =
            step_naming(worded(add.item.empty() ? text_of(add) : add.item), steps, from);
        moment.steps.push_back(step);
        first = !first || (step && *step < *first) ? step : first;
    }
    return first;
}

/// Gives each moment its first step. One whose additions no step names takes none.
void part_steps(std::vector<Gathered>& moments, const std::vector<Finish>& finish,
                const std::vector<WordedText>& steps) {
    std::size_t from = 0;
    name_steps(moments.front(), finish, steps, from);
    for (std::size_t i = 1; i < moments.size(); ++i) {
        const auto first = name_steps(moments[i], finish, steps, std::max<std::size_t>(from, 1));
        moments[i].first_step = first.value_or(steps.size());
        from = first.value_or(from);
    }
    for (auto i = moments.size() - 1; i-- > 1;) {
        if (!moments[i].is_named()) {
            moments[i].first_step = moments[i + 1].first_step;
        }
    }
}

/// Whether all that a step says is for the time that it names at a word: it is one clause, or
/// begins with it. "Bake it, lid off for the last 15 min" says more.
bool is_about(const WordedText& step, std::size_t word) {
    constexpr std::size_t most_before = 2; // "for the last", "in den letzten"
    return step.clauses.front() == step.clauses.back() || word <= most_before;
}

/// The duration whose number stands at a word, its unit behind it.
std::optional<std::chrono::minutes> duration_at(const WordedText& text, std::size_t word) {
    const auto number = word < text.words.size() ? number_at(text, word) : std::nullopt;
    for (const auto& [unit, minutes] : {std::pair{"minutes", 1.0}, std::pair{"hours", 60.0}}) {
        const auto units = mapped(mentions(text, Section::Doing, unit), &Mention::first);
        if (number && contains(units, word + 1)) {
            return std::chrono::minutes{std::lround(*number * minutes)};
        }
    }
    return std::nullopt;
}

/// The time that a step says of itself, counted back from the end: "for the last 15 min".
std::optional<When> closing_time(const WordedText& step) {
    for (const auto& last : mentions(step, Section::Doing, "closing")) {
        const auto time = duration_at(step, last.first + last.count);
        if (time && is_about(step, last.first)) {
            return When{When::Anchor::BeforeEnd, *time};
        }
    }
    return std::nullopt;
}

/// The time that a step begins with, counted from the start: "After 30 min turn it". Not "after 10
/// min more".
std::optional<When> opening_time(const WordedText& step) {
    const auto after = mentions(step, Section::Doing, "elapsed");
    const bool begins = !after.empty() && after.front().first == 0;
    const auto time = begins ? duration_at(step, after.front().count) : std::nullopt;
    return time && !says(step, Section::Doing, "more")
               ? std::optional{When{When::Anchor::AfterStart, *time}}
               : std::nullopt;
}

/// Whether the step belongs to the start as it stands.
bool is_of_start(const std::vector<Gathered>& moments, std::size_t step) {
    return moments.size() == 1 || moments[1].first_step > step;
}

/// Lets a step stand at the time that it says of itself, with those behind it: at that moment, or
/// at one of its own. Where steps would have to change their order for it, it stays where it is.
void stand_at(std::vector<Gathered>& moments, std::size_t step, When when,
              std::chrono::minutes cooking) {
    const auto position = [cooking](const Gathered& moment) {
        return time_from_start(moment.when, cooking);
    };
    const auto own = time_from_start(when, cooking);
    const auto next = std::ranges::find_if(
        moments, [&](const Gathered& moment) { return moment.first_step > step; });
    if (position(*std::prev(next)) >= own) {
        return;
    }
    const auto later = std::ranges::find_if(
        next, moments.end(), [&](const Gathered& moment) { return position(moment) >= own; });
    if (std::any_of(next, later, [](const Gathered& moment) { return moment.is_named(); })) {
        return;
    }
    const bool is_new = later == moments.end() || later->when != when;
    const auto end = is_new ? later : std::next(later);
    std::for_each(next, end, [step](Gathered& moment) { moment.first_step = step; });
    if (is_new) {
        moments.insert(later, Gathered{when, {}, {}, step});
    }
}

void let_times_count(std::vector<Gathered>& moments, const std::vector<WordedText>& steps,
                     const Package& package) {
    const auto cooking = usable_cook_time(package);
    for (std::size_t step = 1; cooking && step < steps.size(); ++step) {
        auto when = closing_time(steps[step]);
        if (!when && is_of_start(moments, step)) {
            when = opening_time(steps[step]);
        }
        if (when && time_from_start(*when, cooking->low) < cooking->low) {
            stand_at(moments, step, *when, middle_of(*cooking));
        }
    }
}

/// The acts of a moment whose steps end before `end`: each addition before the step that names it,
/// one that no step of the moment names before all.
std::vector<CookAct> acts_of(const Gathered& moment, std::size_t end) {
    std::vector<CookAct> acts;
    const auto is_own = [&](const std::optional<std::size_t>& step) {
        return step && *step >= moment.first_step && *step < end;
    };
    CookAct unnamed;
    for (std::size_t i = 0; i < moment.additions.size(); ++i) {
        if (!is_own(moment.steps[i])) {
            unnamed.additions.push_back(moment.additions[i]);
        }
    }
    if (!unnamed.additions.empty()) {
        acts.push_back(std::move(unnamed));
    }
    for (auto step = moment.first_step; step < end; ++step) {
        CookAct act{{}, step};
        for (std::size_t i = 0; i < moment.additions.size(); ++i) {
            if (moment.steps[i] == step) {
                act.additions.push_back(moment.additions[i]);
            }
        }
        acts.push_back(std::move(act));
    }
    return acts;
}

} // namespace

bool still_cooks(const CookMoment& moment, const PlannedPackage& planned) {
    return std::ranges::any_of(moment.acts, [&](const CookAct& act) {
        return act.step &&
               says(worded(planned.package.cook->steps[*act.step]), Section::Doing, "cook");
    });
}

std::vector<CookMoment> cook_sequence(const PlannedPackage& planned) {
    const auto& cook = planned.package.cook;
    const auto steps = cook ? mapped(cook->steps, worded) : std::vector<WordedText>{};
    auto gathered = moments_of(planned.finish);
    part_steps(gathered, planned.finish, steps);
    let_times_count(gathered, steps, planned.package);
    std::vector<CookMoment> moments;
    for (std::size_t i = 0; i < gathered.size(); ++i) {
        const auto end = i + 1 < gathered.size() ? gathered[i + 1].first_step : steps.size();
        moments.push_back({gathered[i].when, acts_of(gathered[i], end)});
    }
    return moments;
}

} // namespace thawslip::kitchen
