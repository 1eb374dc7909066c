#include "orchard.h"

#include <set>
#include <thawslip/bag.h>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

Sheets drawn(Print what, const Look& look = {}, Format format = Format::Pdf,
             const DayText& day = orchard()) {
    auto sheets = draw(kitchen_with(), {day}, what, look, format);
    REQUIRE(sheets);
    return std::move(*sheets.value);
}

} // namespace

TEST_CASE("each kind of print has its number, and a PDF is one file") {
    const auto labels = drawn(Print::Labels);
    CHECK(labels.stock.starts_with("a4-"));
    CHECK(labels.files.size() == 1);
    CHECK(labels.files.front().starts_with("%PDF-"));
    const int bags = labels.prints;
    const int cards = drawn(Print::Cards).prints;
    const int finishing = drawn(Print::FinishingCards).prints;
    const int cook_day = drawn(Print::CookDayCards).prints;
    CHECK(cook_day == 5); // dishes
    CHECK(bags > cook_day);
    CHECK(finishing <= bags);
    CHECK(finishing > 0);
    CHECK(cards == finishing + cook_day);
    const int lists = drawn(Print::Lists).prints;
    const int door = drawn(Print::DoorList).prints;
    const int day_sheets = drawn(Print::DaySheets).prints;
    CHECK(door == 1);
    CHECK(lists == door + day_sheets);
}

TEST_CASE("as SVG every sheet is a file of its own, and no two are alike") {
    const auto cards = drawn(Print::Cards, {.stock = "card-a6"}, Format::Svg);
    CHECK(cards.stock == "card-a6");
    CHECK(cards.sheets > 2);
    CHECK(cards.files.size() == static_cast<std::size_t>(cards.sheets));
    CHECK(std::set<std::string>{cards.files.begin(), cards.files.end()}.size() ==
          cards.files.size());
    for (const auto& file : cards.files) {
        CHECK(file.find("<svg") != std::string::npos);
    }
}

TEST_CASE("what a day does not ask for is no print and no file") {
    const DayText bare{"bare.toml",
                       "[day]\nmade = 2026-10-17\n[[package]]\ndish = \"Quince butter\"\n"
                       "servings = 2\nfood = \"fruit\"\nweight = \"400 g\"\n"};
    const auto none = drawn(Print::FinishingCards, {}, Format::Pdf, bare);
    CHECK(none.prints == 0);
    CHECK(none.sheets == 0);
    CHECK(none.files.empty());
}

TEST_CASE("each choice of a look reaches the sheets") {
    const auto usual = drawn(Print::Labels, {.stock = "a4-2x4-99x68mm"}, Format::Svg);
    const auto differs = [&](Look look) {
        look.stock = "a4-2x4-99x68mm";
        return drawn(Print::Labels, look, Format::Svg).files != usual.files;
    };
    CHECK_FALSE(differs({}));
    CHECK(differs({.first_cell = 3}));
    CHECK(differs({.skip = {2}}));
    CHECK(differs({.large_print = true}));
    CHECK(differs({.trial = true}));
    CHECK(differs({.dots_per_inch = 203.0}));
    const auto other =
        draw(kitchen_with(), {orchard()}, Print::Labels, {.layout = "no-such-layout"});
    CHECK_FALSE(other);
    CHECK(has(other.messages, Message::Kind::Error, "no-such-layout"));
}

TEST_CASE("a day that may be printed is so told, one with a fault is not, and why") {
    const auto kitchen = kitchen_with();
    const auto good = check(kitchen, {orchard()});
    REQUIRE(good.value);
    CHECK(*good.value);
    CHECK_FALSE(has(good.messages, Message::Kind::Error, ""));
    const auto bad = check(kitchen, {orchard("servings", "servngs")});
    REQUIRE(bad.value);
    CHECK_FALSE(*bad.value);
    CHECK(has(bad.messages, Message::Kind::Error, "servngs"));
    CHECK_FALSE(draw(kitchen, {orchard("servings", "servngs")}, Print::Labels));
    const auto& first = bad.messages.front();
    CHECK(first.file == "orchard.toml");
    CHECK(first.line > 1);
    CHECK(first.column > 0);
    CHECK(first.text.find("orchard.toml:" + std::to_string(first.line)) == 0);
}

TEST_CASE("a day that is well but has no sheet to stand on may not be printed") {
    const auto checked = check(kitchen_with(), {orchard()}, {.stock = "no-such-stock"});
    REQUIRE(checked.value);
    CHECK_FALSE(*checked.value);
    CHECK(has(checked.messages, Message::Kind::Error, "no-such-stock"));
}

TEST_CASE("codes say of each label what its bag is, and whether the card says the rest") {
    const auto kitchen = kitchen_with();
    const auto wide = code_texts(kitchen, {orchard()}, {.stock = "a4-2x2-99x139mm"});
    const auto narrow = code_texts(kitchen, {orchard()}, {.stock = "a4-3x8-70x36mm"});
    REQUIRE(wide);
    REQUIRE(narrow);
    CHECK(wide.value->size() == static_cast<std::size_t>(drawn(Print::Labels).prints));
    CHECK(narrow.value->size() == wide.value->size());
    std::set<std::string> ids;
    std::set<bool> see_card;
    for (const auto& texts : {*wide.value, *narrow.value}) {
        for (const auto& text : texts) {
            const auto bag = read_code_text(text);
            REQUIRE(bag);
            CHECK_FALSE(bag.value->dish.empty());
            ids.insert(bag.value->id);
            see_card.insert(bag.value->see_card);
            // Whoever has no room for the steps sends to the card.
            CHECK(bag.value->see_card != (text.find("SEE CARD") == std::string::npos));
        }
    }
    CHECK(ids.size() == wide.value->size());
    CHECK(see_card.size() == 2);
}

TEST_CASE("what is done otherwise than usual is noted, and keeps nothing from being printed") {
    // Half a cell is too small for so much to add.
    std::string much;
    for (int i = 0; i < 6; ++i) {
        much += "[[package.finish]]\nadd = \"" + std::to_string(100 + i) +
                " g of whatever the orchard has left by then\"\nwhen = \"last 10 min\"\n";
    }
    auto day = orchard();
    day.text.insert(day.text.find("[[package.finish]]"), much);
    const auto cards = draw(kitchen_with(), {day}, Print::FinishingCards);
    REQUIRE(cards);
    CHECK(has(cards.messages, Message::Kind::Note,
              "finishing cards are printed as large as the other cards"));
    CHECK_FALSE(has(cards.messages, Message::Kind::Error, ""));
    const auto usual = draw(kitchen_with(), {orchard()}, Print::FinishingCards);
    CHECK_FALSE(has(usual.messages, Message::Kind::Note, "as large as the other cards"));
    CHECK(usual.value->prints == cards.value->prints);
    CHECK(usual.value->sheets < cards.value->sheets);
}
