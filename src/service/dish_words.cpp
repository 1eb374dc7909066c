#include "service/dish_words.h"

#include "base/list.h"
#include "base/nearest.h"
#include "base/split.h"
#include "base/utf8.h"
#include "unicode/ascii.h"

#include <algorithm>
#include <fmt/format.h>
#include <iterator>
#include <optional>

namespace thawslip::service {
namespace {

/// As the archive's index has them: those of the folded text.
std::vector<std::string> search_words_of(std::string_view text) {
    const bool clean = !first_invalid_utf8(text);
    return searchable_words(clean ? unicode::fold_for_search(text) : std::string{});
}

/// How far words are from a dish: for each the fewest edits to one of its words.
std::size_t distance(const std::vector<std::string>& words, const std::string& dish) {
    std::size_t edits = 0;
    for (const auto& word : words) {
        std::size_t fewest = word.size();
        for (const auto& there : search_words_of(dish)) {
            const auto begun = there.substr(0, word.size());
            fewest = std::min({fewest, edit_distance(word, there), edit_distance(word, begun)});
        }
        edits += fewest;
    }
    return edits;
}

/// At most three, the nearest first.
std::vector<std::string> nearest_dishes(std::string_view words,
                                        std::span<const std::string> dishes) {
    constexpr std::size_t most = 3;
    const auto wanted = search_words_of(words);
    std::vector<std::string> near;
    add_all_once(near, dishes);
    std::ranges::stable_sort(near, {},
                             [&](const std::string& dish) { return distance(wanted, dish); });
    near.resize(std::min(near.size(), most));
    return near;
}

/// The dish whose name, or one word of it, comes nearest, accents and capitals aside.
std::optional<std::string> meant_dish(std::string_view words, std::span<const std::string> dishes) {
    if (first_invalid_utf8(words)) {
        return std::nullopt;
    }
    const auto folded = mapped(dishes, unicode::fold_for_search);
    if (const auto near = nearest(unicode::fold_for_search(words), folded)) {
        return dishes[static_cast<std::size_t>(std::ranges::find(folded, *near) - folded.begin())];
    }
    const auto wanted = search_words_of(words);
    const auto found = std::ranges::find_if(dishes, [&wanted](const std::string& dish) {
        const auto there = search_words_of(dish);
        return std::ranges::any_of(
            wanted, [&there](const std::string& word) { return nearest(word, there).has_value(); });
    });
    return found == dishes.end() ? std::nullopt : std::optional{*found};
}

} // namespace

bool has_words(std::string_view name, std::string_view words) {
    const auto there = search_words_of(name);
    const auto wanted = search_words_of(words);
    return !wanted.empty() && std::ranges::all_of(wanted, [&](const std::string& word) {
        return std::ranges::any_of(
            there, [&](const std::string& whole) { return whole.starts_with(word); });
    });
}

bool are_all_of(std::string_view words, std::string_view name) {
    return search_words_of(words) == search_words_of(name);
}

std::vector<std::string> near_dishes(std::string_view words, std::span<const std::string> dishes) {
    if (const auto meant = meant_dish(words, dishes)) {
        return {fmt::format("did you mean \"{}\"?", *meant)};
    }
    const auto near = nearest_dishes(words, dishes);
    if (near.size() == 1) {
        return {fmt::format("the only dish is \"{}\"", near.front())};
    }
    return near.empty() ? near : std::vector{"the nearest are " + list_of(near)};
}

std::string too_few_bags(std::size_t there, int wanted, std::string_view dish, int serves) {
    return fmt::format("only {} of {} bags of \"{}\"{} {} there", there, wanted, dish,
                       serves > 0 ? fmt::format(" (for {})", serves) : "",
                       there == 1 ? "is" : "are");
}

Messages no_such_dish(std::string_view words, std::span<const std::string> dishes) {
    Messages messages;
    messages.error(fmt::format("no dish has the words \"{}\"", words), near_dishes(words, dishes));
    return messages;
}

namespace {

/// The names that words mean: where these are a dish's whole name, no other that only has them.
std::set<std::string> names_with(std::string_view words, std::span<const std::string> names) {
    const auto names_where = [&names](const auto& is_meant) {
        std::set<std::string> meant;
        std::ranges::copy_if(names, std::inserter(meant, meant.end()), is_meant);
        return meant;
    };
    auto whole = names_where([&](const std::string& name) { return are_all_of(words, name); });
    return whole.empty()
               ? names_where([&](const std::string& name) { return has_words(name, words); })
               : whole;
}

} // namespace

std::set<std::string> dishes_meant(const std::string& words, std::span<const std::string> names,
                                   Messages& messages) {
    const bool is_one = std::ranges::any_of(
        names, [&](const std::string& name) { return are_all_of(words, name); });
    auto parts = is_one ? std::vector{words} : parts_between_commas(words);
    if (parts.empty()) {
        parts = {words}; // nothing but commas
    }
    std::set<std::string> meant;
    for (const auto& part : parts) {
        auto of_part = names_with(part, names);
        if (of_part.empty()) {
            messages.add(no_such_dish(part, names));
        }
        meant.merge(of_part);
    }
    return meant;
}

} // namespace thawslip::service
