// What comes with the program is read once.

#include "desk/shelf.h"
#include "unit/service/surroundings.h"

#include <doctest/doctest.h>
#include <map>

namespace shelf_test {

using namespace thawslip;

namespace {

/// The surroundings of the tests, that count how often each thing of them is read.
service::Surroundings counted(std::map<std::string, int>& count) {
    auto around = test_support::surroundings();
    around.stock = [&count, stock = std::move(around.stock)](const std::string& name) {
        ++count["stock " + name];
        return stock(name);
    };
    around.stocks = [&count, stocks = std::move(around.stocks)] {
        ++count["stocks"];
        return stocks();
    };
    around.layouts = [&count,
                      layouts = std::move(around.layouts)](const std::set<wording::Kind>& kinds) {
        ++count["layouts of " + std::to_string(kinds.size())];
        return layouts(kinds);
    };
    around.fonts = [&count, fonts = std::move(around.fonts)] {
        ++count["fonts"];
        return fonts();
    };
    return around;
}

} // namespace

TEST_CASE("stocks, layouts and faces are read once, for every request") {
    std::map<std::string, int> count;
    desk::Shelf shelf;
    for (int request = 0; request < 3; ++request) {
        const auto around = shelf.with(counted(count));
        CHECK(around.stock("roll")->stock.has_value());
        CHECK_FALSE(around.stock("none of ours").has_value());
        CHECK(around.stocks().stocks.size() == 1);
        const auto wide = around.layouts({wording::Kind::BagLabel});
        REQUIRE(wide.size() == 1);
        CHECK(wide.front().layout != nullptr);
        CHECK(around.layouts({wording::Kind::BagLabel, wording::Kind::DoorList}).size() == 1);
        around.fonts();
    }
    CHECK(count == std::map<std::string, int>{{"stock roll", 1},
                                              {"stock none of ours", 1},
                                              {"stocks", 1},
                                              {"layouts of 1", 1},
                                              {"layouts of 2", 1},
                                              {"fonts", 1}});
}

TEST_CASE("a page that asks for more names than there are stocks fills no memory") {
    std::map<std::string, int> count;
    desk::Shelf shelf;
    const auto around = shelf.with(counted(count));
    for (int i = 0; i < 300; ++i) {
        around.stock("name " + std::to_string(i));
    }
    around.stock("name 299");
    CHECK(count["stock name 299"] == 1);
    around.stock("name 0"); // was forgotten with the first 257
    CHECK(count["stock name 0"] == 2);
}

} // namespace shelf_test
