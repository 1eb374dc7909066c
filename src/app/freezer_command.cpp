#include "app/archive_commands.h"
#include "app/archive_place.h"
#include "app/bag_text.h"
#include "app/clock.h"
#include "app/guest_text.h"
#include "base/counted.h"
#include "base/list.h"
#include "base/utf8.h"
#include "json/answers.h"
#include "service/freezer/bags.h"
#include "service/messages.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <functional>
#include <ostream>

namespace thawslip::app {
namespace {

using service::are_of_one_package;
using service::BagTotal;
using service::FoundBag;
using service::FreezerList;

std::string days_text(long days) {
    if (days < 0) {
        return counted(-days, "day") + " past";
    }
    return counted(days, "day") + " left";
}

/// "2.2 kg"; what is lighter than a kilogram in whole grams: "750 g". Halves go up, as on the page.
std::string weight_text(double grams) {
    return std::round(grams) < 1000.0 ? fmt::format("{:.0f} g", std::round(grams))
                                      : fmt::format("{:.1f} kg", std::round(grams / 100.0) / 10.0);
}

std::string weight_text(const archive::Bag& bag) {
    return bag.weight ? weight_text(bag.weight->grams) : "";
}

std::string since_text(const FoundBag& found) {
    const auto& bag = found.bag;
    return fmt::format("{} since {}{}", shown_word(bag.state), bag.changed.substr(0, 10),
                       found.printed_since.empty()
                           ? ""
                           : ", but its label was printed again on " + found.printed_since);
}

std::size_t widest_dish(const std::vector<FoundBag>& bags) {
    std::size_t widest = 0;
    for (const auto& found : bags) {
        widest = std::max(widest, count_code_points(dish_text(found.bag)));
    }
    return widest;
}

std::string line_of(const FoundBag& found, kitchen::Date today, std::size_t widest) {
    const auto& bag = found.bag;
    const auto left = kitchen::days_between(today, bag.keep_until).count();
    const auto state = bag.state == archive::State::Frozen ? days_text(left) : since_text(found);
    const auto pad = widest - std::min(widest, count_code_points(dish_text(bag)));
    return fmt::format("{}  {}{}  serves {:>3}  {:>8}  {:<7} {}  {}{}\n", bag.id, dish_text(bag),
                       std::string(pad, ' '), bag.servings, weight_text(bag), date_head(bag),
                       kitchen::to_iso(bag.keep_until), state,
                       bag.place.empty() ? "" : "  " + bag.place);
}

/// "contains celery; may contain hazelnuts; added on cook day: milk".
std::string allergens_text(const FoundBag& found, const wording::Style& style) {
    if (!found.allergens) {
        return "what it contains is not known here: see the label";
    }
    std::string text;
    const auto add = [&](std::string_view head, const std::vector<kitchen::DeclaredAllergen>& all) {
        if (const auto names = wording::say_contains(all, style); !names.empty()) {
            text += fmt::format("{}{} {}", text.empty() ? "" : "; ", head, names);
        }
    };
    add("contains", found.allergens->contains);
    add("may contain", found.allergens->may_contain);
    add("added on cook day:", found.allergens->added);
    return text.empty() ? "no allergen is named on its label" : text;
}

using TextOf = std::function<std::string(const FoundBag&)>;

/// Bags a line each, and below those of one package what is said of them all.
void show_bags(const std::vector<FoundBag>& bags, const TextOf& text_of, std::ostream& out) {
    const auto widest = widest_dish(bags);
    const auto now = today();
    for (std::size_t i = 0; i < bags.size(); ++i) {
        out << line_of(bags[i], now, widest);
        if (i + 1 == bags.size() || !are_of_one_package(bags[i].bag, bags[i + 1].bag)) {
            out << "             " << text_of(bags[i]) << "\n";
        }
    }
}

std::string_view where_named(service::NamedIn in) {
    using enum service::NamedIn;
    switch (in) {
    case Contains: return "contains";
    case MayContain: return "may contain";
    case Added: return "gets on cook day";
    case Words: return "its description says";
    case Group: return "names another of that group, ask:";
    }
    return {};
}

/// "milk: contains butter; walnut: may contain tree nuts".
std::string why_not(const FoundBag& found) {
    return joined(found.named, "; ", [](const service::AvoidedNamed& named) {
        return fmt::format("{}: {} {}", named.avoided, where_named(named.in), named.as);
    });
}

std::vector<FoundBag> those(const FreezerList& list,
                            const std::function<bool(const FoundBag&)>& wanted) {
    std::vector<FoundBag> bags;
    std::ranges::copy_if(list.bags, std::back_inserter(bags), wanted);
    return bags;
}

/// What a guest may not eat, what nobody knows, and what no label names it on.
void show_without(const FreezerList& list, const std::vector<service::Avoided>& without,
                  const wording::Style& style, std::ostream& out) {
    const auto words = joined(without, ", ", &service::Avoided::written);
    const auto named = those(list, [](const FoundBag& bag) { return !bag.named.empty(); });
    const auto unknown = those(list, [](const FoundBag& bag) { return !bag.allergens; });
    const auto unnamed =
        those(list, [](const FoundBag& bag) { return bag.allergens && bag.named.empty(); });
    out << fmt::format("Named ({}), so not for this guest: {}\n", words,
                       counted(named.size(), "bag"));
    const TextOf contents = [&style](const FoundBag& bag) { return allergens_text(bag, style); };
    show_bags(named, why_not, out);
    if (!unknown.empty()) {
        out << fmt::format(
            "\nNot known, for the description cannot be read, so not for this guest: "
            "{}\n",
            counted(unknown.size(), "bag"));
        show_bags(unknown, contents, out);
    }
    out << fmt::format("\nNo label names it ({}): {}\n", words, counted(unnamed.size(), "bag"));
    show_bags(unnamed, contents, out);
    out << "\n" << no_promise_to_guests;
}

std::string total_text(const BagTotal& total) {
    const auto weight = total.grams <= 0.0  ? std::string{}
                        : total.all_weighed ? ", " + weight_text(total.grams)
                                            : ", at least " + weight_text(total.grams);
    return counted(total.bags, "bag") + ", " + counted(total.servings, "serving") + weight;
}

/// \param heading over them
void show_totals(const FreezerList& list, std::string_view heading, std::ostream& out) {
    BagTotal all;
    out << (list.totals.empty() ? "" : heading);
    for (const auto& [dish, total] : list.totals) {
        out << fmt::format("{}: {}\n", dish, total_text(total));
        all += total;
    }
    if (list.totals.size() > 1) {
        out << fmt::format("in all: {}\n", total_text(all));
    }
}

/// \param gone_too whether bags are listed that are not in the freezer, and not counted
void show_list(const FreezerList& list, const wording::Style& style, bool gone_too,
               std::ostream& out) {
    show_bags(
        list.bags, [&style](const FoundBag& bag) { return allergens_text(bag, style); }, out);
    show_totals(list, gone_too ? "\nOf these, in the freezer:\n" : "\n", out);
    if (list.past > 0) {
        out << fmt::format("{} past the date on the label; the rules of your local food authority "
                           "come first\n",
                           counted(list.past, "bag"));
    }
}

} // namespace

ExitStatus freezer_list(const FreezerListOptions& options, AnswerAs answer,
                        const Settings& settings, Console console) {
    auto avoided = avoided_of(options.without, console);
    if (!avoided) {
        return ExitStatus::Usage;
    }
    auto question = options.question;
    question.without = std::move(*avoided);
    const auto style = service::message_style(settings);
    auto archive = existing_archive(settings, archive::Mode::Read);
    const auto list = archive ? service::freezer_list(*archive, question, today(), *style.allergens)
                              : FreezerList{};
    if (answer == AnswerAs::Json) {
        console.out << json::freezer(list.bags, today(), style);
    } else if (!archive) {
        console.out << no_archive_text(settings) << "\n";
    } else if (list.bags.empty()) {
        console.out << (question.words.empty()
                            ? "the freezer is empty, as far as the archive knows\n"
                            : "no bag in the freezer is called that\n");
    } else if (!question.without.empty()) {
        show_without(list, question.without, style, console.out);
    } else {
        show_list(list, style, options.question.gone_too, console.out);
    }
    return ExitStatus::Done;
}

} // namespace thawslip::app
