#include "service/reprint/wanted_prints.h"

#include "base/list.h"
#include "base/split.h"
#include "service/dish_words.h"
#include "service/freezer/bags.h"
#include "service/freezer/gone_bags.h"
#include "service/print/printed_bags.h"

#include <algorithm>
#include <fmt/format.h>
#include <map>

namespace thawslip::service {
namespace {

/// Whether what the archive calls `kept` has prints of the kind wanted on it.
bool has_kind(std::string_view kept, What what) {
    const bool is_card = what != What::Labels;
    return kept == kept_as(what) ||
           (is_card &&
            (what == What::Cards ? kept != kept_as(What::Labels) : kept == kept_as(What::Cards)));
}

/// The same print, but of the kind alone that is wanted of it.
archive::StoredPrint narrowed(archive::StoredPrint print, What what) {
    if (what != What::Cards) {
        print.setup.what = kept_as(what);
    }
    return print;
}

/// A print and the bags that it was of; nothing: all of its days.
struct KnownPrint {
    archive::StoredPrint print;
    std::optional<std::set<std::string>> part;
};

std::vector<KnownPrint> prints_of(archive::Archive& archive, archive::DayKey day) {
    std::vector<KnownPrint> prints;
    for (auto& print : archive.prints_of(day)) {
        auto part = part_of(print);
        prints.push_back({std::move(print), std::move(part)});
    }
    return prints;
}

/// The newest print of the kind wanted that a bag is on, else the newest of that kind; nullptr
/// where there is none. \param prints of its day, newest first
const archive::StoredPrint* print_for(const std::vector<KnownPrint>& prints, const std::string& bag,
                                      What what) {
    const auto is_meant = [what](const KnownPrint& known) {
        return has_kind(known.print.setup.what, what);
    };
    const auto has_bag = [&](const KnownPrint& known) {
        return is_meant(known) && (!known.part || known.part->contains(bag));
    };
    const auto with_bag = std::ranges::find_if(prints, has_bag);
    const auto found = with_bag != prints.end() ? with_bag : std::ranges::find_if(prints, is_meant);
    return found != prints.end() ? &found->print : nullptr;
}

/// A print of a kind that was never printed, on the usual stock.
archive::StoredPrint new_print(const std::vector<KnownPrint>& prints, What what) {
    // A day that came from another archive may come without its prints.
    auto print = prints.empty() ? archive::StoredPrint{} : prints.front().print;
    print.setup.what = kept_as(what);
    print.setup.stock.clear();
    print.setup.layout.clear();
    print.setup.look.clear();
    print.setup.files.clear();
    return print;
}

bool is_same_print(const archive::StoredPrint& one, const archive::StoredPrint& other) {
    return one.setup == other.setup && one.first_at == other.first_at;
}

/// The prints that together have all of a bag that is wanted. Its two kinds of cards are on one
/// print, or on two where they were printed apart; of one that was never printed there is none.
std::vector<archive::StoredPrint> prints_for(const std::vector<KnownPrint>& prints,
                                             const std::string& bag, What what) {
    if (what != What::Cards) {
        const auto* found = print_for(prints, bag, what);
        return {found != nullptr ? narrowed(*found, what) : new_print(prints, what)};
    }
    const auto* cook_day = print_for(prints, bag, What::CookDayCards);
    const auto* finishing = print_for(prints, bag, What::FinishingCards);
    if (cook_day == finishing) {
        return {cook_day != nullptr ? *cook_day : new_print(prints, what)};
    }
    std::vector<archive::StoredPrint> both;
    if (cook_day != nullptr) {
        both.push_back(narrowed(*cook_day, What::CookDayCards));
    }
    if (finishing != nullptr) {
        both.push_back(narrowed(*finishing, What::FinishingCards));
    }
    return both;
}

void add_wanted(std::vector<WantedPrint>& wanted, archive::StoredPrint print,
                const archive::Bag& bag) {
    // Of a print of many days this one is enough, and all that a bag's label needs.
    print.days = {bag.day};
    auto same = std::ranges::find_if(wanted, [&](const WantedPrint& known) {
        return known.print.days == print.days && is_same_print(known.print, print);
    });
    if (same == wanted.end()) {
        wanted.push_back({std::move(print), {}});
        same = std::prev(wanted.end());
    }
    same->bags.insert(bag.id);
}

std::vector<WantedPrint> prints_with(archive::Archive& archive,
                                     const std::vector<archive::Bag>& bags, What what) {
    std::vector<WantedPrint> prints;
    std::map<archive::DayKey, std::vector<KnownPrint>> by_day;
    for (const auto& bag : bags) {
        const auto [known, is_new] = by_day.try_emplace(bag.day);
        if (is_new) {
            known->second = prints_of(archive, bag.day);
        }
        for (auto& print : prints_for(known->second, bag.id, what)) {
            add_wanted(prints, std::move(print), bag);
        }
    }
    return prints;
}

std::vector<WantedPrint> prints_on(archive::Archive& archive, kitchen::Date date, What what,
                                   const Part& part) {
    std::vector<WantedPrint> prints;
    for (auto& print : archive.prints_on(date)) {
        if (has_kind(print.setup.what, what)) {
            prints.push_back({narrowed(std::move(print), what), {}, true, part});
        }
    }
    return prints;
}

/// The bags in the freezer of dishes that are named, a comma between several.
Outcome<std::vector<archive::Bag>> bags_of_dishes(archive::Archive& archive,
                                                  const std::string& dishes) {
    Outcome<std::vector<archive::Bag>> outcome;
    std::vector<archive::Bag> all;
    for (const auto& words : parts_between_commas(dishes)) {
        auto found = archive.find(search_words({words}), archive::Which::InFreezer);
        if (found.empty()) {
            outcome.messages.add(no_such_dish(
                words, mapped(archive.bags(archive::Which::InFreezer), &archive::Bag::dish)));
        }
        for (auto& bag : found) {
            if (std::ranges::find(all, bag.id, &archive::Bag::id) == all.end()) {
                all.push_back(std::move(bag));
            }
        }
    }
    if (!outcome.messages.have_errors()) {
        outcome.value = std::move(all);
    }
    return outcome;
}

/// The bags of the day that a bag is of, in the order of its description.
Outcome<std::vector<archive::Bag>> bags_of_day_of(archive::Archive& archive,
                                                  const std::string& typed) {
    auto bags = bags_by_id(archive, {typed});
    if (bags) {
        bags.value = archive.bags_of(bags.value->front().day);
    }
    return bags;
}

bool has_ids_alone(const std::string& bags) {
    return !bags.empty() && std::ranges::none_of(parts_between_commas(bags), are_numbers);
}

/// All bags that a question may be about, of which its part is taken.
Outcome<std::vector<archive::Bag>> bags_asked_about(archive::Archive& archive,
                                                    const ReprintQuestion& question) {
    const auto& part = question.part;
    if (!question.bags.empty()) {
        return bags_meant(archive, question.bags);
    }
    if (!part.dishes.empty()) {
        return bags_of_dishes(archive, part.dishes);
    }
    if (has_ids_alone(part.bags)) {
        return bags_by_id(archive, parts_between_commas(part.bags));
    }
    if (!part.from.empty() && has_ids_alone(part.from)) {
        return bags_of_day_of(archive, part.from);
    }
    Outcome<std::vector<archive::Bag>> outcome;
    if (part.bags.empty() && part.from.empty()) {
        outcome.value = archive.bags(archive::Which::InFreezer);
    } else {
        outcome.messages.error("a number says which bag of a dish, and no dish is named",
                               {"name one with --dish, or what was printed on a day with "
                                "--printed"});
    }
    return outcome;
}

std::vector<NamedBag> named(const std::vector<archive::Bag>& bags) {
    return mapped(bags, [](const archive::Bag& bag) {
        return NamedBag{bag.dish, bag.id, bag.number};
    });
}

/// What is left of bags when a part of them is taken. Their numbers are those of their dish.
Outcome<std::vector<archive::Bag>> part_of_bags(archive::Archive& archive,
                                                std::vector<archive::Bag> bags,
                                                const ReprintQuestion& question) {
    Outcome<std::vector<archive::Bag>> outcome;
    auto part = question.part;
    PartSource source;
    source.numbers =
        part.dishes.empty() && question.bags.empty() ? Numbers::OfPrint : Numbers::OfDish;
    if (question.bags.empty()) {
        part.dishes.clear(); // they are those of the dishes already
    }
    source.newest_id = [&archive](const std::string& id) {
        const auto bag = archive.bag(id);
        return bag ? bag->id : id;
    };
    source.printed = [&] {
        return mapped<std::set<std::string>>(
            printed_bags(archive, what_of(question.kind), ids_of(named(bags))),
            [](const auto& printed) { return printed.first; });
    };
    const auto wanted = bags_of_part(named(bags), part, source);
    outcome.messages = wanted.messages;
    if (wanted) {
        std::erase_if(bags,
                      [&](const archive::Bag& bag) { return !wanted.value->contains(bag.id); });
        outcome.value = std::move(bags);
    }
    return outcome;
}

/// The bags that a question is about.
Outcome<std::vector<archive::Bag>> bags_wanted(archive::Archive& archive,
                                               const ReprintQuestion& question) {
    auto bags = bags_asked_about(archive, question);
    if (!bags || bags.value->empty() || is_whole(question.part)) {
        return bags;
    }
    auto part = part_of_bags(archive, std::move(*bags.value), question);
    bags.messages.add(part.messages);
    return {std::move(part.value), std::move(bags.messages)};
}

/// The days nearest to `date` on which something of the kind was printed, in their order.
std::vector<std::string> days_near(archive::Archive& archive, kitchen::Date date, What wanted) {
    constexpr std::size_t most = 3;
    std::set<kitchen::Date> printed;
    for (const auto& [day, what] : archive.days_printed()) {
        if (day.ok() && has_kind(what, wanted)) {
            printed.insert(day);
        }
    }
    std::vector<kitchen::Date> near{printed.begin(), printed.end()};
    std::ranges::stable_sort(near, {}, [date](kitchen::Date day) {
        return std::chrono::abs(kitchen::days_between(date, day));
    });
    near.resize(std::min(near.size(), most));
    std::ranges::sort(near);
    return mapped(near, [](kitchen::Date day) { return kitchen::to_iso(day); });
}

void refuse_day(archive::Archive& archive, kitchen::Date date, What what, Messages& messages) {
    const auto noun = kept_as(what);
    const auto near = days_near(archive, date, what);
    messages.error(fmt::format("no {} were printed on {}", noun, kitchen::to_iso(date)),
                   {near.empty()
                        ? fmt::format("no {} were ever printed into this archive", noun)
                        : fmt::format("{} were printed on {}", noun, fmt::join(near, ", "))});
}

} // namespace

What what_of(ReprintKind kind) {
    switch (kind) {
    case ReprintKind::Labels: break;
    case ReprintKind::Cards: return What::Cards;
    case ReprintKind::FinishingCards: return What::FinishingCards;
    case ReprintKind::CookDayCards: return What::CookDayCards;
    }
    return What::Labels;
}

Outcome<std::vector<WantedPrint>> find_prints(archive::Archive& archive,
                                              const ReprintQuestion& question) {
    Outcome<std::vector<WantedPrint>> outcome;
    const auto what = what_of(question.kind);
    if (question.printed.empty()) {
        const auto bags = bags_wanted(archive, question);
        outcome.messages = bags.messages;
        if (bags) {
            outcome.value = prints_with(archive, *bags.value, what);
        }
        return outcome;
    }
    const auto date = kitchen::parse_iso(question.printed);
    if (!date) {
        outcome.messages.error(
            fmt::format("\"{}\" is no date; expected one like 2026-10-17", question.printed));
        return outcome;
    }
    auto prints = prints_on(archive, *date, what, question.part);
    if (prints.empty()) {
        refuse_day(archive, *date, what, outcome.messages);
    } else {
        outcome.value = std::move(prints);
    }
    return outcome;
}

} // namespace thawslip::service
