#include "base/number_list.h"

#include <doctest/doctest.h>

using thawslip::read_number_list;
using Numbers = std::vector<int>;

TEST_CASE("numbers are read as people list them, sorted and each once") {
    CHECK(read_number_list("3,4", 100).value() == Numbers{3, 4});
    CHECK(read_number_list("3-5", 100).value() == Numbers{3, 4, 5});
    CHECK(read_number_list("3 4", 100).value() == Numbers{3, 4});
    CHECK(read_number_list(" 9; 3 - 5 ,4 ", 100).value() == Numbers{3, 4, 5, 9});
    CHECK(read_number_list("7–8", 100).value() == Numbers{7, 8});
    CHECK(read_number_list("100", 100).value() == Numbers{100});
}

TEST_CASE("what is no list of numbers is named") {
    CHECK(read_number_list("3-x", 100).fault() == "\"3-x\" is no number and no range such as 3-5");
    CHECK(read_number_list("5-3", 100).fault() == "5-3 runs backwards: expected 3-5");
    CHECK(read_number_list("0", 100).fault() == "0 is not within 1 to 100");
    CHECK(read_number_list("2-101", 100).fault() == "2-101 is not within 1 to 100");
    CHECK(read_number_list("99999999999999999999", 100).fault() ==
          "\"99999999999999999999\" is no number and no range such as 3-5");
    CHECK(read_number_list("-", 100).fault() == "\"-\" is no number and no range such as 3-5");
    CHECK(read_number_list("1-2-3", 100).fault() ==
          "\"1-2-3\" is no number and no range such as 3-5");
    CHECK(read_number_list(" , ", 100).fault() == "expected numbers such as 3-5,9");
}
