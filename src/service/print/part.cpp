#include "service/print/part.h"

#include "base/list.h"
#include "base/nearest.h"
#include "base/number_list.h"
#include "base/split.h"
#include "kitchen/bag_id.h"
#include "service/dish_words.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::service {
namespace {

/// Bags as a cook names them.
struct Named {
    std::set<int> numbers;
    std::set<std::string> ids;
};

/// Reads "3-5" or an id into `named`. \returns what is wrong with it, else nothing
std::optional<std::string> read_item(const std::string& item, const PartSource& source,
                                     Named& named) {
    const auto numbers = read_number_list(item, most_bag_number);
    if (numbers) {
        named.numbers.insert(numbers.value().begin(), numbers.value().end());
        return std::nullopt;
    }
    const auto id = kitchen::parse_bag_id(item);
    if (id) {
        named.ids.insert(source.newest_id ? source.newest_id(id.value()) : id.value());
        return std::nullopt;
    }
    const bool as_number = item.find_first_not_of("0123456789-, ") == std::string::npos;
    return as_number ? numbers.fault()
           : id.fault().kind == kitchen::BagIdFault::Kind::WrongCheck
               ? id.fault().message
               : fmt::format("\"{}\" is no bag's number and no id: {}", item, id.fault().message);
}

/// An id may be typed with blanks in it, and blanks may part several.
void read_between_commas(const std::string& text, const PartSource& source, Named& named,
                         Messages& messages) {
    if (!read_item(text, source, named)) {
        return;
    }
    for (const auto& word : split(text, " ")) {
        if (const auto fault = read_item(word, source, named)) {
            messages.error(*fault);
        }
    }
}

Named read_named(const std::string& text, const PartSource& source, Messages& messages) {
    Named named;
    for (const auto& part : parts_between_commas(text)) {
        read_between_commas(part, source, named, messages);
    }
    return named;
}

/// The bags of the dishes that are named; all of them where none is.
std::vector<NamedBag> of_dishes(std::span<const NamedBag> bags, const std::string& dishes,
                                Messages& messages) {
    if (parts_between_commas(dishes).empty()) {
        return {bags.begin(), bags.end()};
    }
    const auto names = dishes_meant(dishes, mapped(bags, &NamedBag::dish), messages);
    std::vector<NamedBag> meant;
    std::ranges::copy_if(bags, std::back_inserter(meant),
                         [&](const NamedBag& bag) { return names.contains(bag.dish); });
    return meant;
}

void no_such_bag(const std::string& id, std::span<const NamedBag> bags, Messages& messages) {
    const auto ids = mapped(bags, &NamedBag::id);
    const auto near = nearest(id, ids);
    messages.error(fmt::format("no bag {} is among those to be printed", id),
                   {near ? fmt::format("did you mean {} ({})?", *near,
                                       std::ranges::find(bags, *near, &NamedBag::id)->dish)
                         : fmt::format("they are {} to {}; thawslip freezer find WORDS names those "
                                       "of the archive",
                                       ids.front(), ids.back())});
}

void no_such_number(int number, int highest, Numbers numbers, Messages& messages) {
    messages.error(
        fmt::format("there is no bag {}: they are numbered 1 to {}", number, highest),
        {numbers == Numbers::OfDish
             ? "with --dish, a number is the bag's within its dish, as on its label"
             : "a number counts through all bags in the order of printing; with --dish, through "
               "the bags of that dish"});
}

/// What a bag is numbered as: within its dish, or by its place among all.
int number_of(std::span<const NamedBag> bags, std::size_t i, Numbers numbers) {
    return numbers == Numbers::OfDish ? bags[i].number : static_cast<int>(i) + 1;
}

/// Whether all that is named is there; what is not is said.
bool are_there(const Named& named, std::span<const NamedBag> bags, Numbers numbers,
               Messages& messages) {
    int highest = 0;
    std::set<int> there;
    for (std::size_t i = 0; i < bags.size(); ++i) {
        there.insert(number_of(bags, i, numbers));
        highest = std::max(highest, number_of(bags, i, numbers));
    }
    bool all = true;
    for (const int number : named.numbers) {
        if (all && !there.contains(number)) {
            no_such_number(number, highest, numbers, messages);
            all = false;
        }
    }
    for (const auto& id : named.ids) {
        if (std::ranges::find(bags, id, &NamedBag::id) == bags.end()) {
            no_such_bag(id, bags, messages);
            all = false;
        }
    }
    return all;
}

void keep_named(std::vector<NamedBag>& bags, const Named& named, Numbers numbers) {
    std::vector<NamedBag> kept;
    for (std::size_t i = 0; i < bags.size(); ++i) {
        if (named.ids.contains(bags[i].id) || named.numbers.contains(number_of(bags, i, numbers))) {
            kept.push_back(bags[i]);
        }
    }
    bags = std::move(kept);
}

/// From the named bag on, in the order of printing; where its number is one of a dish, and there
/// are several dishes or sizes, from the first that has it.
void keep_from(std::vector<NamedBag>& bags, const Named& from, Numbers numbers) {
    const auto is_named = [&](std::size_t i) {
        return from.ids.empty() ? number_of(bags, i, numbers) == *from.numbers.begin()
                                : bags[i].id == *from.ids.begin();
    };
    std::size_t first = 0;
    while (first < bags.size() && !is_named(first)) {
        ++first;
    }
    bags.erase(bags.begin(), bags.begin() + static_cast<std::ptrdiff_t>(first));
}

/// Bags that are named and all lie before the one from which on is printed.
void refuse_before(const Part& part, Messages& messages) {
    const bool are_several =
        part.bags.find_first_of(" ,-") != std::string::npos && !kitchen::parse_bag_id(part.bags);
    messages.error(fmt::format("bag{} {} {} not among those from bag {} on", are_several ? "s" : "",
                               part.bags, are_several ? "are" : "is", part.from),
                   {"--bag alone prints what it names"});
}

/// Where a part begins: nothing where it is not said, or not well.
std::optional<Named> read_from(const std::string& text, const PartSource& source,
                               Messages& messages) {
    if (text.empty()) {
        return std::nullopt;
    }
    auto from = read_named(text, source, messages);
    if (from.numbers.size() + from.ids.size() > 1) {
        messages.error(fmt::format("--from takes one bag, and \"{}\" are several", text),
                       {"name several with --bag"});
    }
    return messages.have_errors() ? std::nullopt : std::optional{std::move(from)};
}

/// Words of which nothing is left but commas and blanks: they must not stand for all bags.
bool names_nothing(const std::string& words) {
    return !words.empty() && parts_between_commas(words).empty();
}

void keep_ids_of(std::vector<NamedBag>& bags, std::span<const NamedBag> others) {
    const auto ids = ids_of(others);
    std::erase_if(bags, [&ids](const NamedBag& bag) { return !ids.contains(bag.id); });
}

void keep_ids(std::vector<NamedBag>& bags, const std::vector<std::string>& ids) {
    if (!ids.empty()) {
        const std::set<std::string> wanted{ids.begin(), ids.end()};
        std::erase_if(bags, [&](const NamedBag& bag) { return !wanted.contains(bag.id); });
    }
}

} // namespace

std::set<std::string> ids_of(std::span<const NamedBag> bags) {
    return mapped<std::set<std::string>>(bags, &NamedBag::id);
}

std::vector<NamedBag> bags_in(const Days& days) {
    std::vector<NamedBag> bags;
    for (const auto& planned : packages_of(days)) {
        for (const auto& bag : planned.bags) {
            bags.push_back({planned.package.dish, bag.id, bag.number});
        }
    }
    return bags;
}

bool are_numbers(const std::string& text) {
    return read_number_list(text, most_bag_number).ok();
}

bool is_whole(const Part& part) {
    return part.dishes.empty() && part.bags.empty() && part.from.empty() && !part.only_new &&
           part.ids.empty();
}

Outcome<std::set<std::string>> bags_of_part(std::span<const NamedBag> bags, const Part& part,
                                            const PartSource& source) {
    Outcome<std::set<std::string>> outcome;
    auto& messages = outcome.messages;
    for (const auto* words : {&part.dishes, &part.bags, &part.from}) {
        if (names_nothing(*words)) {
            messages.error(fmt::format("\"{}\" names no bag", *words));
            return outcome;
        }
    }
    const auto numbers = part.dishes.empty() ? source.numbers : Numbers::OfDish;
    auto left = of_dishes(bags, part.dishes, messages);
    if (messages.have_errors()) {
        return outcome;
    }
    const auto from = read_from(part.from, source, messages);
    const auto named = read_named(part.bags, source, messages);
    if (messages.have_errors() || left.empty() ||
        (from && !are_there(*from, left, numbers, messages)) ||
        !are_there(named, left, numbers, messages)) {
        return outcome;
    }
    auto wanted = left;
    if (from) {
        keep_from(wanted, *from, numbers);
    }
    if (!part.bags.empty()) {
        keep_named(left, named, numbers); // by numbers that count from the first of all
        keep_ids_of(wanted, left);
    }
    if (wanted.empty()) { // a bag from which on is printed is there itself
        refuse_before(part, messages);
        return outcome;
    }
    keep_ids(wanted, part.ids);
    if (part.only_new && source.printed) {
        const auto printed = source.printed();
        std::erase_if(wanted, [&](const NamedBag& bag) { return printed.contains(bag.id); });
    }
    outcome.value = ids_of(wanted);
    return outcome;
}

} // namespace thawslip::service
