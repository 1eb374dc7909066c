#include "app/choose_bags.h"

#include "app/bag_text.h"
#include "app/question.h"

#include <charconv>
#include <fmt/format.h>
#include <iostream>
#include <ostream>

namespace thawslip::app {
namespace {

std::string line_of(std::size_t number, const archive::Bag& bag) {
    return fmt::format("{:>4}  {}  {}, bag {} of {}, serves {}, made {}, {} {}{}\n", number, bag.id,
                       dish_text(bag), bag.number, bag.of, bag.servings, kitchen::to_iso(bag.made),
                       date_head(bag), kitchen::to_iso(bag.keep_until),
                       bag.place.empty() ? "" : ", " + bag.place);
}

void show(std::string_view words, std::span<const archive::Bag> bags, std::ostream& err) {
    err << fmt::format("\"{}\" fits {} bags, the oldest first:\n", words, bags.size());
    for (std::size_t i = 0; i < bags.size(); ++i) {
        err << line_of(i + 1, bags[i]);
    }
}

/// The numbers in a line, each from 1 to `most`; nothing where anything else stands there.
std::optional<std::vector<std::size_t>> numbers_in(const std::string& line, std::size_t most) {
    std::vector<std::size_t> numbers;
    const auto* at = line.data();
    const auto* end = at + line.size();
    while (at != end) {
        if (*at == ' ' || *at == ',') {
            ++at;
            continue;
        }
        std::size_t number = 0;
        const auto read = std::from_chars(at, end, number);
        if (read.ec != std::errc{} || number < 1 || number > most) {
            return std::nullopt;
        }
        numbers.push_back(number - 1);
        at = read.ptr;
    }
    return numbers;
}

std::vector<std::size_t> ask(std::string_view words, std::span<const archive::Bag> bags,
                             std::ostream& err) {
    show(words, bags, err);
    const auto ask = ask_on(std::cin, err);
    while (const auto answer =
               ask("which? a number, several with commas, \"all\", or Enter for none:")) {
        if (*answer == "all") {
            return service::all_of(words, bags);
        }
        if (auto numbers = numbers_in(*answer, bags.size())) {
            return std::move(*numbers);
        }
        err << fmt::format("numbers from 1 to {} are taken\n", bags.size());
    }
    return {};
}

} // namespace

service::ChooseBags choose_bags(WhichOfSeveral which, Console console) {
    switch (which) {
    case WhichOfSeveral::Oldest: return service::oldest_of;
    case WhichOfSeveral::All: return service::all_of;
    case WhichOfSeveral::Ask: break;
    }
    if (!somebody_is_there()) {
        return {};
    }
    return [console](std::string_view words, std::span<const archive::Bag> bags) {
        return ask(words, bags, console.err);
    };
}

} // namespace thawslip::app
