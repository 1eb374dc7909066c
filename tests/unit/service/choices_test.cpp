// Which stock and which layout a print is made with.

#include "base/system_failure.h"
#include "service/print/choices.h"
#include "surroundings.h"

#include <doctest/doctest.h>

namespace choices_test {

using namespace thawslip;
using namespace thawslip::literals;
using test_support::surroundings;
using wording::Kind;

namespace {

layout::Stock cells_of(Length width, Length height) {
    layout::Stock stock;
    stock.cell = stock.sheet = {width, height};
    return stock;
}

/// Drawn for cells from one to twice as wide as high, from 40 mm of height to less than 60.
layout::Layout drawn_for(Kind kind) {
    layout::Layout layout;
    layout.name = "drawn";
    layout.kind = kind;
    layout.narrowest = 1.0;
    layout.widest = 2.0;
    layout.lowest = 40_mm;
    layout.highest = 60_mm;
    return layout;
}

bool serves(Length width, Length height) {
    const std::vector layouts{drawn_for(Kind::BagLabel)};
    return service::layout_for(Kind::BagLabel, cells_of(width, height), layouts) != nullptr;
}

} // namespace

TEST_CASE("a layout serves cells of its shapes and heights, with their edges but the highest") {
    CHECK(serves(75_mm, 50_mm));
    CHECK(serves(50_mm, 50_mm)); // the narrowest
    CHECK_FALSE(serves(49_mm, 50_mm));
    CHECK(serves(100_mm, 50_mm)); // the widest
    CHECK_FALSE(serves(101_mm, 50_mm));
    CHECK(serves(60_mm, 40_mm)); // the lowest
    CHECK_FALSE(serves(60_mm, 39.9_mm));
    CHECK(serves(80_mm, 59.9_mm));
    CHECK_FALSE(serves(80_mm, 60_mm)); // where the next one begins
}

TEST_CASE("of several layouts the first of the kind is taken, and of another kind none") {
    auto first = drawn_for(Kind::CookDayCard);
    auto second = drawn_for(Kind::BagLabel);
    auto third = second;
    second.name = "second";
    third.name = "third";
    const std::vector layouts{first, second, third};
    const auto stock = cells_of(75_mm, 50_mm);
    CHECK(service::layout_for(Kind::BagLabel, stock, layouts)->name == "second");
    CHECK(service::layout_for(Kind::DoorList, stock, layouts) == nullptr);
}

TEST_CASE("finishing cards are drawn for half a cell, where a stock is cut so") {
    auto stock = cells_of(75_mm, 100_mm);
    const std::vector layouts{drawn_for(Kind::FinishingCard)};
    CHECK(service::layout_for(Kind::FinishingCard, stock, layouts) == nullptr);
    stock.halves = true;
    CHECK(service::layout_for(Kind::FinishingCard, stock, layouts) != nullptr);
}

TEST_CASE("a name with a folder or the ending of a text is a file's, any other one is shipped") {
    CHECK(service::is_file_name("./wide"));
    CHECK(service::is_file_name("wide.toml"));
    CHECK_FALSE(service::is_file_name("wide"));
    CHECK_FALSE(service::is_file_name("wide.toml.bak"));
    CHECK(service::name_in("/orchard/wide.toml") == "wide");
    CHECK(service::name_in("wide.toml") == "wide");
    CHECK(service::name_in("/orchard/wide") == "wide");
    CHECK(service::name_in("/orchard.d/wide") == "wide");
    CHECK(service::name_in("/orchard/a.b.toml") == "a.b");
    CHECK(service::name_in("/orchard/.toml") == ".toml");
}

TEST_CASE("a file of the cook's own is read once, and what was kept of a print not at all") {
    auto around = surroundings();
    int times = 0;
    around.own_file = [&times](const std::string&) -> Result<std::string, Diagnostic> {
        ++times;
        return std::string{"cell = [\"90 mm\", \"60 mm\"]\nroll = true\n"};
    };
    service::OwnFiles own;
    const auto chosen = service::choose_stock("./mine.toml", around, own);
    REQUIRE(chosen);
    CHECK(chosen.value->stock->name == "mine");
    CHECK(service::choose_stock("./mine.toml", around, own));
    CHECK(times == 1);
    REQUIRE(own.all().size() == 1);
    CHECK(own.all().front().name == "./mine.toml");
    CHECK(own.known("./other.toml") == nullptr);
    service::OwnFiles kept{{{"mine.toml", "cell = [\"80 mm\", \"50 mm\"]\nroll = true\n"}}};
    CHECK(service::choose_stock("mine.toml", around, kept).value->stock->cell.width == 80_mm);
    CHECK(times == 1);
}

TEST_CASE("a file that is no stock or no layout is refused at its place") {
    auto around = surroundings();
    around.own_file = [](const std::string&) -> Result<std::string, Diagnostic> {
        return std::string{"cel = 3\n"};
    };
    service::OwnFiles own;
    const auto stock = service::choose_stock("mine.toml", around, own);
    CHECK_FALSE(stock);
    CHECK(to_text(stock.messages).find("mine.toml:1:1: error: ") != std::string::npos);
    const auto layout = service::choose_layout("mine.toml", {}, around, own);
    CHECK_FALSE(layout);
    CHECK(to_text(layout.messages).find("mine.toml:1:1: error: ") != std::string::npos);
}

TEST_CASE("a layout is chosen by its name, and one that is not there is named with the nearest") {
    const auto texts = surroundings().layouts({Kind::BagLabel});
    const auto layouts = service::shipped_layouts(texts);
    REQUIRE(layouts.size() == 1);
    service::OwnFiles own;
    CHECK(service::choose_layout("wide", layouts, surroundings(), own).value->name == "wide");
    const auto none = service::choose_layout("wid", layouts, surroundings(), own);
    CHECK_FALSE(none);
    CHECK(to_text(none.messages) ==
          "error: there is no layout called \"wid\"\n    hint: did you mean \"wide\"?\n");
    const auto gone = service::choose_layout("gone.toml", layouts, surroundings(), own);
    CHECK_FALSE(gone);
    CHECK(to_text(gone.messages) == "gone.toml: error: there is no such file\n");
}

TEST_CASE("a layout that was read before is taken as it is") {
    const auto read = std::make_shared<layout::Layout>(drawn_for(Kind::BagLabel));
    const auto layouts = service::shipped_layouts({{"drawn", "drawn.toml", "no text", read}});
    REQUIRE(layouts.size() == 1);
    CHECK(layouts.front().widest == 2.0);
}

TEST_CASE("what comes with the program and is broken is no fault of the cook's") {
    auto around = surroundings();
    around.stocks = [] {
        return layout::StockShelf{{},
                                  {{Severity::Error, {"roll.toml"}, {}, "this is no stock", {}}}};
    };
    CHECK_THROWS_WITH_AS(service::shipped_stocks(around), "roll.toml: error: this is no stock\n",
                         SystemFailure);
    CHECK_THROWS_AS(service::shipped_layouts({{"wide", "wide.toml", "cel = 3\n"}}), SystemFailure);
    CHECK(service::shipped_stocks(surroundings()).size() == 1);
}

} // namespace choices_test
