#include "code/instructions.h"

#include "base/list.h"
#include "code/message.h"

#include <algorithm>

namespace thawslip::code {
namespace {

/// What a cook does with the thawed bag, without where the additions wait.
struct Instructions {
    std::vector<std::string> added;
    Cooking cooking;
    std::vector<std::string> steps;
    friend bool operator==(const Instructions&, const Instructions&) = default;
};

/// A text that is none of ours says what no other does.
Instructions instructions_in(const std::string& text, bool with_steps) {
    const auto read = parse(text);
    if (!read) {
        return {{text}, {}, {}};
    }
    Instructions found{mapped(read.value().additions, &Addition::what), read.value().cooking, {}};
    if (with_steps) {
        found.steps = read.value().steps;
    }
    return found;
}

} // namespace

std::vector<std::size_t> shortest_with_instructions(const std::vector<std::string>& texts) {
    std::vector<std::size_t> places;
    for (const bool with_steps : {true, false}) {
        const auto says_less = [&](const std::string& text) {
            return instructions_in(text, with_steps) != instructions_in(texts.front(), with_steps);
        };
        const auto end = std::ranges::find_if(texts, says_less);
        const auto last = static_cast<std::size_t>(end - texts.begin()) - 1;
        if (end != texts.begin() && !contains(places, last)) {
            places.push_back(last);
        }
    }
    return places;
}

} // namespace thawslip::code
