#include "app/archive_commands.h"
#include "app/archive_place.h"
#include "app/bag_text.h"
#include "app/clock.h"
#include "app/commands/report.h"
#include "app/counted.h"
#include "app/json/answers.h"
#include "base/utf8.h"

#include <algorithm>
#include <fmt/format.h>
#include <ostream>

namespace thawslip::app {
namespace {

using service::BagTotal;
using service::FoundBag;
using service::FreezerList;

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
    return fmt::format("{} since {}{}", shown_word(bag.state), bag.changed.substr(0, 10),
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
    for (const auto& found : bags) {
        widest = std::max(widest, count_code_points(dish_text(found.bag)));
    }
    return widest;
}

std::string total_text(const BagTotal& total) {
    const auto weight = total.grams <= 0.0 ? std::string{}
                        : total.all_weighed
                            ? fmt::format(", {:.1f} kg", total.grams / 1000.0)
                            : fmt::format(", at least {:.1f} kg", total.grams / 1000.0);
    return counted(total.bags, "bag") + ", " + counted(total.servings, "serving") + weight;
}

void show_totals(const FreezerList& list, std::ostream& out) {
    BagTotal all;
    out << (list.totals.empty() ? "" : "\n");
    for (const auto& [dish, total] : list.totals) {
        out << fmt::format("{}: {}\n", dish, total_text(total));
        all += total;
    }
    if (list.totals.size() > 1) {
        out << fmt::format("in all: {}\n", total_text(all));
    }
}

void show_list(const FreezerList& list, std::ostream& out) {
    const auto widest = widest_dish(list.bags);
    const auto now = today();
    for (const auto& found : list.bags) {
        out << line_of(found, now, widest);
    }
    show_totals(list, out);
    if (list.past > 0) {
        out << fmt::format("{} past the date on the label; the rules of your local food authority "
                           "come first\n",
                           counted(list.past, "bag"));
    }
}

} // namespace

ExitStatus freezer_list(const service::FreezerQuestion& question, AnswerAs answer,
                        const Settings& settings, Console console) {
    auto archive = existing_archive(settings, archive::Mode::Read);
    const auto list = archive ? service::freezer_list(*archive, question, today()) : FreezerList{};
    if (answer == AnswerAs::Json) {
        console.out << freezer_json(list.bags, today());
    } else if (!archive) {
        console.out << no_archive_text(settings) << "\n";
    } else if (list.bags.empty()) {
        console.out << (question.words.empty()
                            ? "the freezer is empty, as far as the archive knows\n"
                            : "no bag in the freezer is called that\n");
    } else {
        show_list(list, console.out);
    }
    return ExitStatus::Done;
}

} // namespace thawslip::app
