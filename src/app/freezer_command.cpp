#include "app/archive_bags.h"
#include "app/archive_commands.h"
#include "app/archive_place.h"
#include "app/clock.h"
#include "app/json.h"
#include "base/utf8.h"
#include "kitchen/thaw_lead.h"
#include "unicode/ascii.h"
#include "wording/phrases.h"

#include <algorithm>
#include <fmt/format.h>
#include <map>
#include <ostream>

namespace thawslip::app {
namespace {

const wording::Language& language() {
    return wording::shipped_language("en");
}

std::string days_text(long days) {
    if (days < 0) {
        return fmt::format("{} day{} past", -days, days == -1 ? "" : "s");
    }
    return fmt::format("{} day{} left", days, days == 1 ? "" : "s");
}

/// "use by" where the cook set it, "best by" where a list of storage times gave it.
std::string_view head_of(const archive::Bag& bag) {
    return bag.basis == kitchen::DateBasis::SetByCook ? "use by " : "best by";
}

std::string weight_text(const archive::Bag& bag) {
    return bag.weight ? fmt::format("{:.1f} kg", bag.weight->grams / 1000.0) : "";
}

std::string line_of(const archive::Bag& bag, kitchen::Date today, std::size_t widest) {
    const auto left = kitchen::days_between(today, bag.keep_until).count();
    const auto state =
        bag.state == archive::State::Frozen
            ? days_text(left)
            : fmt::format("{} since {}", word_of(bag.state), bag.changed.substr(0, 10));
    const auto pad = widest - std::min(widest, count_code_points(bag.dish));
    return fmt::format("{}  {}{}  serves {:>3}  {:>8}  {} {}  {}\n", bag.id, bag.dish,
                       std::string(pad, ' '), bag.servings, weight_text(bag), head_of(bag),
                       kitchen::to_iso(bag.keep_until), state);
}

std::size_t widest_dish(const std::vector<archive::Bag>& bags) {
    std::size_t widest = 0;
    for (const auto& bag : bags) {
        widest = std::max(widest, count_code_points(bag.dish));
    }
    return widest;
}

struct Total {
    int bags = 0;
    int servings = 0;
    double grams = 0.0;
    bool all_weighed = true;
};

void tell_totals(const std::vector<archive::Bag>& bags, Console console) {
    std::map<std::string, Total> totals;
    for (const auto& bag : bags) {
        if (bag.state == archive::State::Frozen) {
            auto& total = totals[bag.dish];
            ++total.bags;
            total.servings += bag.servings;
            total.grams += bag.weight ? bag.weight->grams : 0.0;
            total.all_weighed = total.all_weighed && bag.weight;
        }
    }
    console.out << "\n";
    for (const auto& [dish, total] : totals) {
        console.out << fmt::format("{}: {} bag{}, {} servings{}\n", dish, total.bags,
                                   total.bags == 1 ? "" : "s", total.servings,
                                   total.grams <= 0.0 ? ""
                                   : total.all_weighed
                                       ? fmt::format(", {:.1f} kg", total.grams / 1000.0)
                                       : fmt::format(", at least {:.1f} kg", total.grams / 1000.0));
    }
}

void tell_json(const std::vector<archive::Bag>& bags, kitchen::Date today, Console console) {
    console.out << "[";
    const char* between = "\n";
    for (const auto& bag : bags) {
        console.out << between
                    << fmt::format(R"(  {{"id": {}, "dish": {}, "servings": {}, "made": "{}", )"
                                   R"("use_by": "{}", "date": "{}", "days_left": {}, "grams": {}, )"
                                   R"("state": "{}", "changed": {}}})",
                                   json_string(bag.id), json_string(bag.dish), bag.servings,
                                   kitchen::to_iso(bag.made), kitchen::to_iso(bag.keep_until),
                                   bag.basis == kitchen::DateBasis::SetByCook ? "use by" : "best",
                                   kitchen::days_between(today, bag.keep_until).count(),
                                   bag.weight ? fmt::format("{}", bag.weight->grams) : "null",
                                   word_of(bag.state), json_string(bag.changed));
        between = ",\n";
    }
    console.out << (bags.empty() ? "]\n" : "\n]\n");
}

std::string words_of(const std::vector<std::string>& words) {
    std::string all;
    for (const auto& word : words) {
        all += first_invalid_utf8(word) ? "" : word + " ";
    }
    return unicode::fold_for_search(all);
}

std::vector<archive::Bag> asked_for(const FreezerQuestion& question, const Settings& settings) {
    auto archive = existing_archive(settings, archive::Mode::Read);
    if (!archive) {
        return {};
    }
    const auto which = question.gone_too ? archive::Which::All : archive::Which::InFreezer;
    return question.words.empty() ? archive->bags(which)
                                  : archive->find(words_of(question.words), which);
}

/// "into the refrigerator 22 h before cooking", "straight from the freezer".
std::string thaw_text(const kitchen::Package& package, const Settings& settings) {
    const auto lead = kitchen::thaw_lead(package.thaw.method, package.thickness, package.weight,
                                         settings.kitchen.thaw);
    if (package.thaw.method == kitchen::ThawMethod::FromFrozen) {
        return "cooked from frozen: do not thaw";
    }
    if (!lead) {
        return "thaw as the label says";
    }
    const auto time = say_duration(lead.value().lead, language());
    switch (package.thaw.method) {
    case kitchen::ThawMethod::Refrigerator:
        return fmt::format("into the refrigerator {} before cooking", time);
    case kitchen::ThawMethod::ColdWater:
        return fmt::format("into cold water {} before cooking, then cook at once", time);
    case kitchen::ThawMethod::Microwave:
        return fmt::format("into the microwave {} before cooking, then cook at once", time);
    case kitchen::ThawMethod::FromFrozen: break;
    }
    return {};
}

std::string counted_bags(std::size_t count) {
    return fmt::format("{} bag{}", count, count == 1 ? "" : "s");
}

} // namespace

ExitStatus freezer_list(const FreezerQuestion& question, const Settings& settings,
                        Console console) {
    const auto bags = asked_for(question, settings);
    const auto now = today();
    if (question.listing == Listing::Json) {
        tell_json(bags, now, console);
        return ExitStatus::Done;
    }
    if (bags.empty()) {
        console.out << (question.words.empty()
                            ? "the freezer is empty, as far as the archive knows\n"
                            : "no bag in the freezer is called that\n");
        return ExitStatus::Done;
    }
    const auto widest = widest_dish(bags);
    std::size_t past = 0;
    for (const auto& bag : bags) {
        console.out << line_of(bag, now, widest);
        past += bag.state == archive::State::Frozen && bag.keep_until < now ? 1U : 0U;
    }
    tell_totals(bags, console);
    if (past > 0) {
        console.out << fmt::format("{} past the date on the label; the rules of your local food "
                                   "authority come first\n",
                                   counted_bags(past));
    }
    return ExitStatus::Done;
}

ExitStatus freezer_set(const std::vector<std::string>& typed, archive::State state,
                       const Settings& settings, Console console) {
    auto archive = existing_archive(settings, archive::Mode::Write);
    if (!archive) {
        console.err << "error: nothing has been printed yet\n";
        return ExitStatus::Refused;
    }
    const auto bags = bags_by_id(*archive, typed, console);
    if (!bags) {
        return ExitStatus::Refused;
    }
    std::vector<std::string> ids;
    for (const auto& bag : *bags) {
        ids.push_back(bag.id);
    }
    archive->set_state(ids, state, now_text());
    for (const auto& bag : *bags) {
        console.out << fmt::format("{} {}: {}\n", bag.id, bag.dish, word_of(state));
        const bool was_out = bag.state == archive::State::Out;
        if (state == archive::State::Frozen && was_out) {
            console.err << fmt::format(
                "caution: {} has been out since {}; what was thawed in cold water or in the "
                "microwave must be cooked before it is frozen again\n",
                bag.id, bag.changed);
        }
    }
    return ExitStatus::Done;
}

ExitStatus freezer_next(int count, const Settings& settings, Console console) {
    auto archive = existing_archive(settings, archive::Mode::Read);
    const auto all =
        archive ? archive->bags(archive::Which::InFreezer) : std::vector<archive::Bag>{};
    const auto now = today();
    int proposed = 0;
    std::size_t past = 0;
    for (const auto& bag : all) {
        if (bag.keep_until < now) {
            ++past;
            continue;
        }
        if (proposed == count) {
            break;
        }
        ++proposed;
        const auto eat = kitchen::add_days(now, std::chrono::days{proposed});
        const auto planned = package_of(*archive, bag);
        console.out << fmt::format("{}  {}  {}  ({} {}): {}\n", kitchen::to_iso(eat), bag.id,
                                   bag.dish, head_of(bag), kitchen::to_iso(bag.keep_until),
                                   planned ? thaw_text(planned->package, settings)
                                           : "thaw as the label says");
    }
    if (proposed == 0) {
        console.out << "the freezer is empty, as far as the archive knows\n";
    }
    if (past > 0) {
        console.out << fmt::format("not proposed: {} past the date on the label, see thawslip "
                                   "freezer list\n",
                                   counted_bags(past));
    }
    return ExitStatus::Done;
}

} // namespace thawslip::app
