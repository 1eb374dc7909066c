#include "app/archive_bags.h"
#include "app/archive_commands.h"
#include "app/archive_place.h"
#include "app/clock.h"
#include "app/counted.h"
#include "app/gone_bags.h"
#include "app/json.h"
#include "app/station.h"
#include "base/utf8.h"
#include "unicode/ascii.h"

#include <algorithm>
#include <fmt/format.h>
#include <map>
#include <ostream>

namespace thawslip::app {
namespace {

/// A bag of the archive, and the day its label was printed after it was noted as gone, if any.
struct FoundBag {
    archive::Bag bag;
    std::string printed_since;
};

std::string days_text(long days) {
    if (days < 0) {
        return counted(-days, "day") + " past";
    }
    return counted(days, "day") + " left";
}

std::string weight_text(const archive::Bag& bag) {
    return bag.weight ? fmt::format("{:.1f} kg", bag.weight->grams / 1000.0) : "";
}

std::string since_text(const FoundBag& found) {
    const auto& bag = found.bag;
    return fmt::format("{} since {}{}", word_of(bag.state), bag.changed.substr(0, 10),
                       found.printed_since.empty()
                           ? ""
                           : ", but its label was printed again on " + found.printed_since);
}

std::string line_of(const FoundBag& found, kitchen::Date today, std::size_t widest) {
    const auto& bag = found.bag;
    const auto left = kitchen::days_between(today, bag.keep_until).count();
    const auto state = bag.state == archive::State::Frozen ? days_text(left) : since_text(found);
    const auto pad = widest - std::min(widest, count_code_points(dish_text(bag)));
    return fmt::format("{}  {}{}  serves {:>3}  {:>8}  {:<7} {}  {}\n", bag.id, dish_text(bag),
                       std::string(pad, ' '), bag.servings, weight_text(bag), date_head(bag),
                       kitchen::to_iso(bag.keep_until), state);
}

std::size_t widest_dish(const std::vector<FoundBag>& bags) {
    std::size_t widest = 0;
    for (const auto& [bag, printed_since] : bags) {
        widest = std::max(widest, count_code_points(dish_text(bag)));
    }
    return widest;
}

struct Total {
    int bags = 0;
    int servings = 0;
    double grams = 0.0;
    bool all_weighed = true;

    Total& operator+=(const Total& more) {
        bags += more.bags;
        servings += more.servings;
        grams += more.grams;
        all_weighed = all_weighed && more.all_weighed;
        return *this;
    }
};

Total total_of(const archive::Bag& bag) {
    return {1, bag.servings, bag.weight ? bag.weight->grams : 0.0, bag.weight.has_value()};
}

std::string total_text(const Total& total) {
    const auto weight = total.grams <= 0.0 ? std::string{}
                        : total.all_weighed
                            ? fmt::format(", {:.1f} kg", total.grams / 1000.0)
                            : fmt::format(", at least {:.1f} kg", total.grams / 1000.0);
    return counted(total.bags, "bag") + ", " + counted(total.servings, "serving") + weight;
}

void tell_totals(const std::vector<FoundBag>& bags, Console console) {
    std::map<std::string, Total> totals;
    for (const auto& [bag, printed_since] : bags) {
        if (bag.state == archive::State::Frozen) {
            totals[bag.dish] += total_of(bag);
        }
    }
    if (totals.empty()) {
        return;
    }
    Total all;
    console.out << "\n";
    for (const auto& [dish, total] : totals) {
        console.out << fmt::format("{}: {}\n", dish, total_text(total));
        all += total;
    }
    if (totals.size() > 1) {
        console.out << fmt::format("in all: {}\n", total_text(all));
    }
}

std::string bag_json(const archive::Bag& bag, kitchen::Date today) {
    return fmt::format(
        R"({{"id": {}, "dish": {}, "raw": {}, "servings": {}, "made": "{}", "use_by": "{}", )"
        R"("date": "{}", "days_left": {}, "grams": {}, "state": "{}", )"
        R"("changed": {}}})",
        json_string(bag.id), json_string(bag.dish), is_raw(bag), bag.servings,
        kitchen::to_iso(bag.made), kitchen::to_iso(bag.keep_until), archive::word_of(bag.basis),
        kitchen::days_between(today, bag.keep_until).count(),
        bag.weight ? fmt::format("{}", bag.weight->grams) : "null", word_of(bag.state),
        json_string(bag.changed));
}

void tell_json(const std::vector<FoundBag>& bags, kitchen::Date today, Console console) {
    std::vector<std::string> values;
    for (const auto& [bag, printed_since] : bags) {
        values.push_back(bag_json(bag, today));
    }
    console.out << json_lines(values);
}

std::string words_of(const std::vector<std::string>& words) {
    std::string all;
    for (const auto& word : words) {
        all += first_invalid_utf8(word) ? "" : word + " ";
    }
    return unicode::fold_for_search(all);
}

std::vector<FoundBag> asked_for(const FreezerQuestion& question, const Settings& settings) {
    auto archive = existing_archive(settings, archive::Mode::Read);
    if (!archive) {
        return {};
    }
    const auto which = question.gone_too ? archive::Which::All : archive::Which::InFreezer;
    auto bags = question.words.empty() ? archive->bags(which)
                                       : archive->find(words_of(question.words), which);
    std::vector<FoundBag> found;
    for (auto& bag : bags) {
        auto printed_since = printed_since_gone(*archive, bag);
        found.push_back({std::move(bag), std::move(printed_since)});
    }
    return found;
}

} // namespace

ExitStatus freezer_list(const FreezerQuestion& question, const Settings& settings,
                        Console console) {
    const auto bags = asked_for(question, settings);
    const auto now = today();
    if (question.answer == AnswerAs::Json) {
        tell_json(bags, now, console);
        return ExitStatus::Done;
    }
    if (bags.empty() && !existing_archive(settings, archive::Mode::Read)) {
        console.out << no_archive_text(settings) << "\n";
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
    for (const auto& found : bags) {
        console.out << line_of(found, now, widest);
        const auto& bag = found.bag;
        past += bag.state == archive::State::Frozen && bag.keep_until < now ? 1U : 0U;
    }
    tell_totals(bags, console);
    if (past > 0) {
        console.out << fmt::format("{} past the date on the label; the rules of your local food "
                                   "authority come first\n",
                                   counted(past, "bag"));
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
    archive->set_state(ids, state, now_text(), station_now());
    auto status = ExitStatus::Done;
    for (const auto& bag : *bags) {
        const auto now = archive->bag(bag.id);
        if (!now || now->state != state) {
            console.err << fmt::format(
                "error: {} {} is still noted as {}: what the archive knows of it is of a time to "
                "come that nothing can follow\n    hint: thawslip archive check\n",
                bag.id, bag.dish, word_of(bag.state));
            status = ExitStatus::Refused;
            continue;
        }
        console.out << fmt::format("{} {}: {}\n", bag.id, bag.dish, word_of(state));
        const bool was_out = bag.state == archive::State::Out;
        if (state == archive::State::Frozen && was_out) {
            console.err << fmt::format(
                "caution: {} has been out since {}; what was thawed in cold water or in the "
                "microwave must be cooked before it is frozen again\n",
                bag.id, bag.changed);
        }
    }
    return status;
}

} // namespace thawslip::app
