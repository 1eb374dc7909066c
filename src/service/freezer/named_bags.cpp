#include "service/freezer/named_bags.h"

#include "base/letters.h"
#include "base/list.h"
#include "base/split.h"
#include "base/utf8.h"
#include "kitchen/bag_id.h"
#include "service/dish_words.h"
#include "service/freezer/bags.h"
#include "unicode/ascii.h"

#include <algorithm>
#include <fmt/format.h>
#include <numeric>
#include <set>

namespace thawslip::service {
namespace {

std::vector<std::string> words_in(const std::string& part) {
    return split(part, " \t\r\n");
}

bool has_digit(std::string_view text) {
    return std::ranges::any_of(text, is_digit<char>);
}

/// Whether somebody who typed this hardly meant a word: an id with a slip in it.
bool looks_like_id(const std::string& word) {
    const auto id = kitchen::parse_bag_id(word);
    const bool wrong = !id && id.fault().kind == kitchen::BagIdFault::Kind::WrongCheck;
    return wrong || has_digit(word);
}

bool is_known_id(archive::Archive& archive, const std::string& word) {
    const auto id = kitchen::parse_bag_id(word);
    return id && archive.bag(id.value());
}

/// "K7Q 2M4 9XC" is one id; "K7Q-2M4-9XC T10-WKR-87W" are two.
std::vector<std::string> ids_in(archive::Archive& archive, const std::string& part) {
    const auto words = words_in(part);
    if (const auto id = joined(words, ""); is_known_id(archive, id)) {
        return {id};
    }
    const bool all = !words.empty() && std::ranges::all_of(words, [&](const std::string& word) {
        return is_known_id(archive, word);
    });
    return all ? words : std::vector<std::string>{};
}

void put_oldest_first(std::vector<archive::Bag>& bags) {
    std::ranges::stable_sort(bags, [](const archive::Bag& a, const archive::Bag& b) {
        return std::tie(a.made, a.keep_until, a.dish, a.number) <
               std::tie(b.made, b.keep_until, b.dish, b.number);
    });
}

std::vector<std::string> dishes_of(archive::Archive& archive, archive::Which which) {
    const auto dishes = mapped<std::set<std::string>>(archive.bags(which), &archive::Bag::dish);
    return {dishes.begin(), dishes.end()};
}

void refuse_words(archive::Archive& archive, const std::string& part, archive::Which which,
                  Messages& messages) {
    const auto gone = which == archive::Which::InFreezer
                          ? archive.find(search_words({part}), archive::Which::All)
                          : std::vector<archive::Bag>{};
    auto hints = near_dishes(part, dishes_of(archive, which));
    if (!gone.empty()) {
        hints = {fmt::format("bag {} of \"{}\" is noted as {}: thawslip freezer list --all",
                             gone.back().id, gone.back().dish, shown_word(gone.back().state))};
    }
    const std::string where = which == archive::Which::InFreezer ? " in the freezer" : "";
    messages.error(fmt::format("no bag{} is called \"{}\"", where, part), std::move(hints));
}

void refuse_id(archive::Archive& archive, const std::string& part, Messages& messages) {
    for (const auto& word : words_in(part)) {
        if (looks_like_id(word) && !is_known_id(archive, word)) {
            messages.add(bags_by_id(archive, {word}).messages);
        }
    }
}

/// Whether a dish is called so, comma and all: "Chestnut, kale and barley soup".
bool is_in_a_name(const std::vector<std::string>& dishes, const std::string& words) {
    const auto wanted = unicode::fold_for_search(words);
    return std::ranges::any_of(dishes, [&wanted](const std::string& dish) {
        return unicode::fold_for_search(dish).find(wanted) != std::string::npos;
    });
}

} // namespace

std::vector<std::string> parts_of(archive::Archive& archive,
                                  const std::vector<std::string>& typed) {
    auto pieces = parts_between_commas(joined(typed, " "));
    for (auto& piece : pieces) { // several blanks are as good as one
        piece = joined(words_in(piece), " ");
    }
    const auto dishes =
        pieces.size() < 2 ? std::vector<std::string>{} : dishes_of(archive, archive::Which::All);
    std::vector<std::string> parts;
    for (const auto& part : pieces) {
        const auto together = parts.empty() ? part : parts.back() + ", " + part;
        if (!parts.empty() && !first_invalid_utf8(together) && is_in_a_name(dishes, together)) {
            parts.back() = together;
        } else {
            parts.push_back(part);
        }
    }
    return parts;
}

Outcome<NamedBags> named_bags(archive::Archive& archive, const std::string& part,
                              archive::Which which) {
    Outcome<NamedBags> outcome;
    if (first_invalid_utf8(part)) {
        outcome.messages.error("the words are not UTF-8");
        return outcome;
    }
    if (const auto ids = ids_in(archive, part); !ids.empty()) {
        auto bags = bags_by_id(archive, ids);
        outcome.value = NamedBags{std::move(*bags.value), true};
        return outcome;
    }
    auto found = archive.find(search_words({part}), which);
    if (!found.empty()) {
        put_oldest_first(found);
        outcome.value = NamedBags{std::move(found), false};
        return outcome;
    }
    refuse_id(archive, part, outcome.messages);
    if (!outcome.messages.have_errors()) {
        refuse_words(archive, part, which, outcome.messages);
    }
    return outcome;
}

std::vector<std::size_t> oldest_of(std::string_view /*words*/,
                                   std::span<const archive::Bag> /*bags*/) {
    return {0};
}

std::vector<std::size_t> all_of(std::string_view /*words*/, std::span<const archive::Bag> bags) {
    std::vector<std::size_t> all(bags.size());
    std::iota(all.begin(), all.end(), std::size_t{0});
    return all;
}

namespace {

/// Bags in the likeliest of the states that any is in.
void keep_likeliest(std::vector<archive::Bag>& bags, const std::vector<archive::State>& states) {
    const auto has = [&bags](archive::State state) {
        return std::ranges::find(bags, state, &archive::Bag::state) != bags.end();
    };
    const auto likeliest = std::ranges::find_if(states, has);
    std::erase_if(bags, [&](const archive::Bag& bag) {
        return likeliest == states.end() || bag.state != *likeliest;
    });
}

/// Whether whoever chooses takes all that are shown.
bool takes_all(const ChooseBags& choose) {
    const auto* chooser = choose.target<decltype(&all_of)>();
    return chooser != nullptr && *chooser == &all_of;
}

/// The bags that words mean. All of a dish are those that are out and those that are frozen; what
/// is gone does not come back with them.
void keep_meant(std::vector<archive::Bag>& bags, const BagsAskedFor& asked) {
    const auto can_be = [&asked](const archive::Bag& bag) {
        return !is_gone(bag) && std::ranges::find(asked.states, bag.state) != asked.states.end();
    };
    if (takes_all(asked.choose) && std::ranges::any_of(bags, can_be)) {
        std::erase_if(bags, [&](const archive::Bag& bag) { return !can_be(bag); });
    } else {
        keep_likeliest(bags, asked.states);
    }
}

bool is_among(const std::vector<archive::Bag>& bags, const std::string& id) {
    return std::ranges::find(bags, id, &archive::Bag::id) != bags.end();
}

void refuse_states(const std::string& part, const std::vector<archive::Bag>& found,
                   Messages& messages) {
    messages.error(fmt::format("no bag of \"{}\" is left that this can be noted of: {} is noted as "
                               "{} since {}",
                               part, found.front().id, shown_word(found.front().state),
                               found.front().changed.substr(0, 10)),
                   {"thawslip freezer history WORDS says what was noted; thawslip freezer undo "
                    "takes the last change back"});
}

/// Several fit, and nobody can be asked.
void refuse_several(const std::string& part, const std::vector<archive::Bag>& bags,
                    HowMany how_many, Messages& messages) {
    constexpr std::size_t most = 12;
    std::string ids;
    for (std::size_t i = 0; i < std::min(most, bags.size()); ++i) {
        ids += fmt::format("{}{} ({}, made {})", i == 0 ? "" : ", ", bags[i].id, bags[i].dish,
                           kitchen::to_iso(bags[i].made));
    }
    if (bags.size() > most) {
        ids += fmt::format(" and {} more", bags.size() - most);
    }
    messages.error(fmt::format("\"{}\" fits {} bags; which is meant?", part, bags.size()),
                   {"the oldest first: " + ids,
                    how_many == HowMany::One
                        ? "name one by its id, or say --oldest"
                        : "name one by its id, or say --oldest, or --all for every one of them"});
}

/// The bags of one part that are meant.
void choose(archive::Archive& archive, const std::string& part, const BagsAskedFor& asked,
            std::vector<archive::Bag>& chosen, Messages& messages) {
    auto named = named_bags(archive, part, archive::Which::All);
    messages.add(named.messages);
    if (!named) {
        return;
    }
    auto bags = named.value->bags;
    std::erase_if(bags, [&](const archive::Bag& bag) { return is_among(chosen, bag.id); });
    if (!named.value->by_id) {
        keep_meant(bags, asked);
    }
    if (bags.empty() && !named.value->by_id) {
        refuse_states(part, named.value->bags, messages);
    } else if (named.value->by_id || bags.size() == 1) {
        std::ranges::move(bags, std::back_inserter(chosen));
    } else if (!asked.choose) {
        refuse_several(part, bags, asked.how_many, messages);
    } else {
        for (const auto place : asked.choose(part, bags)) {
            if (!is_among(chosen, bags.at(place).id)) {
                chosen.push_back(bags[place]);
            }
        }
    }
}

} // namespace

Outcome<std::vector<archive::Bag>> chosen_bags(archive::Archive& archive,
                                               const BagsAskedFor& asked) {
    Outcome<std::vector<archive::Bag>> outcome;
    std::vector<archive::Bag> chosen;
    const auto parts = parts_of(archive, asked.typed);
    if (parts.empty()) { // an empty variable of a script, above all
        outcome.messages.error("no bag is named", {"name it by words of its dish, or by its id"});
    }
    for (const auto& part : parts) {
        choose(archive, part, asked, chosen, outcome.messages);
    }
    if (!outcome.messages.have_errors()) {
        outcome.value = std::move(chosen);
    }
    return outcome;
}

} // namespace thawslip::service
