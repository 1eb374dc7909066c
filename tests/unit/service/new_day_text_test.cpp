#include "service/new_day/new_day_text.h"

#include <doctest/doctest.h>
#include <string>
#include <vector>

namespace thawslip::service {
namespace {

/// The remark of a new day that names kinds of food.
std::string remark_of(const std::vector<std::string>& kinds) {
    NewDay day;
    day.dishes.emplace_back();
    const auto text = new_day_text(day, "en", "us", kinds);
    const auto begin = text.rfind('#', text.find(kinds.front()));
    const auto end = text.find(kinds.back()) + kinds.back().size();
    return text.substr(begin, end - begin);
}

} // namespace

TEST_CASE("kinds of food stand in a new day's remarks, in lines of up to a hundred columns") {
    const auto word = [](char letter, std::size_t length) { return std::string(length, letter); };
    const auto first = word('x', 50);
    CHECK(remark_of({first, word('z', 46)}) == "# " + first + ", " + word('z', 46));
    CHECK(remark_of({first, word('z', 47)}) == "# " + first + ",\n# " + word('z', 47));
    const auto widest = word('x', 97);
    CHECK(remark_of({widest, word('y', 48), word('z', 49)}) ==
          "# " + widest + ",\n# " + word('y', 48) + ",\n# " + word('z', 49));
    CHECK(remark_of({widest, word('y', 48), word('z', 48)}) ==
          "# " + widest + ",\n# " + word('y', 48) + ", " + word('z', 48));
}

} // namespace thawslip::service
