#include "wording/day_sheet.h"
#include "wording/door_list.h"

#include <algorithm>
#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::wording;
using namespace std::chrono_literals;
using kitchen::DateBasis;
using kitchen::ThawMethod;

namespace {

Style english(kitchen::Units units = kitchen::Units::Metric) {
    kitchen::KitchenSettings settings;
    settings.units = units;
    return style_for(shipped_language("en"), settings);
}

kitchen::Quantity quantity(std::string_view text) {
    const auto read = kitchen::parse_quantity(text);
    REQUIRE(read.ok());
    return read.value();
}

/// The words of a paragraph, its label before them; the cells of a row with bars between.
std::string text_of(const Paragraph& paragraph) {
    std::string text = paragraph.label.empty() ? "" : paragraph.label + ": ";
    for (const auto& span : paragraph.spans) {
        text += span.text;
    }
    for (const auto& cell : paragraph.cells) {
        text += (&cell == &paragraph.cells.front() ? "" : "|") + text_of(cell);
    }
    // Joiners and no-break spaces look like nothing and like a space.
    for (const char* joiner : {"\u2060", "\u00A0"}) {
        for (auto at = text.find(joiner); at != std::string::npos; at = text.find(joiner)) {
            text.replace(at, std::string{joiner}.size(),
                         std::string{joiner} == "\u2060" ? "" : " ");
        }
    }
    return text;
}

std::vector<std::string> lines_of(const Print& print, std::string_view field) {
    std::vector<std::string> lines;
    const auto* found = print.field(field);
    REQUIRE(found != nullptr);
    for (const auto& paragraph : found->paragraphs) {
        lines.push_back(text_of(paragraph));
    }
    return lines;
}

bool has(const std::vector<std::string>& lines, const std::string& line) {
    return std::ranges::find(lines, line) != lines.end();
}

kitchen::PlannedPackage stew() {
    kitchen::PlannedPackage planned;
    planned.package.dish = "Squash and red lentil stew";
    planned.package.servings = 6;
    planned.package.bags = 3;
    planned.package.weight = kitchen::Mass{2200};
    planned.freezing = 15h;
    planned.keep_until = {2026y / 12 / 17, DateBasis::StorageTable, {}};
    planned.bags = {{"7C5-8FW-87D", 1, 3}, {"3TX-SZC-87V", 2, 3}, {"0E2-7BR-87R", 3, 3}};
    planned.package.ingredients = {{quantity("3 kg squash"), false, {}},
                                   {quantity("6 onions"), false, {}},
                                   {quantity("2 lemons"), true, {}}};
    kitchen::Finish stock;
    stock.add = quantity("1 l vegetable stock");
    planned.package.finish = planned.finish = {stock};
    return planned;
}

kitchen::PlannedPackage compote() {
    kitchen::PlannedPackage planned;
    planned.package.dish = "Plum and ginger compote";
    planned.package.servings = 8;
    planned.keep_until = {2027y / 2 / 28, DateBasis::SetByCook, {}};
    planned.bags = {{"J11-0Q0-87J", 1, 1}};
    planned.package.ingredients = {{quantity("2 onions"), false, {}}};
    return planned;
}

kitchen::Plan orchard_day() {
    kitchen::Plan plan;
    plan.made = 2026y / 10 / 17;
    plan.kitchen = "Orchard house";
    plan.packages = {stew(), compote()};
    return plan;
}

} // namespace

TEST_CASE("the door list has a box for every bag, the soonest date first") {
    const std::vector<DoorRow> rows = {
        {2027y / 2 / 28,
         DateBasis::SetByCook,
         "Apple and sage pork",
         8,
         {"DM3"},
         ThawMethod::Refrigerator,
         46h},
        {2026y / 12 / 17,
         DateBasis::StorageTable,
         "Squash stew",
         6,
         {"7C5", "3TX"},
         ThawMethod::FromFrozen,
         0min},
        {2026y / 11 / 17,
         DateBasis::StorageTable,
         "Bean bake",
         6,
         {"ZPQ"},
         ThawMethod::ColdWater,
         std::nullopt},
        {2026y / 11 / 17,
         DateBasis::StorageTable,
         "Barley pot",
         4,
         {"FFW"},
         std::nullopt,
         std::nullopt},
    };
    const auto list = door_list(rows, english());
    CHECK(list.kind == Kind::DoorList);
    const std::vector<std::string> expected = {
        "||Dish|Serves|Bag|Thaw",
        "Best by|17 Nov 2026|Barley pot|4|FFW|",
        "Best by|17 Nov 2026|Bean bake|6|ZPQ|cold water, at most 21 °C (70 °F)",
        "Best by|17 Dec 2026|Squash stew|6|7C5|from frozen",
        "Best by|17 Dec 2026|Squash stew|6|3TX|from frozen",
        "Use by|28 Feb 2027|Apple and sage pork|8|DM3|refrigerator, 46 h",
    };
    CHECK(lines_of(list, "rows") == expected);
    const auto& lines = list.field("rows")->paragraphs;
    for (std::size_t i = 1; i < lines.size(); ++i) {
        CHECK(lines[i].cells.front().marker == Marker::TickBox);
    }
    CHECK(list.field("local-rules") != nullptr);
}

TEST_CASE("the day sheet says for each dish what goes into the bags and what stays out") {
    const auto lines = lines_of(day_sheet(orchard_day(), english()), "dishes");
    const std::vector<std::string> expected = {
        "Squash and red lentil stew",
        "3 bags, each serves 6 · 2.2 kg",
        "Freezes flat in 15 h · Best if used by 17 Dec 2026",
        "Into the bags|Stays out, for each bag",
        "3 kg squash|At the start: 1 l vegetable stock",
        "6 onions|On cook day: 2 lemons",
        "Labels on, bags filled: 7C5-8FW-87D, 3TX-SZC-87V, 0E2-7BR-87R",
        "Plum and ginger compote",
        "1 bag, each serves 8",
        "Use by 28 Feb 2027",
        "Into the bags",
        "2 onions",
        "Labels on, bags filled: J11-0Q0-87J",
    };
    CHECK(lines == expected);
}

TEST_CASE("the day sheet names the batches that go into the freezer, with their days") {
    auto plan = orchard_day();
    kitchen::FreezerLoad load;
    load.total = kitchen::Mass{6600};
    load.limit_low = kitchen::Mass{3000};
    load.limit_high = kitchen::Mass{4500};
    load.verdict = kitchen::LoadVerdict::Over;
    load.batches = {{{"7C5-8FW-87D", "3TX-SZC-87V"}, kitchen::Mass{4400}},
                    {{"0E2-7BR-87R"}, kitchen::Mass{2200}}};
    load.without_weight = {"J11-0Q0-87J"};
    plan.freezer_load = load;
    const auto lines = lines_of(day_sheet(plan, english()), "freezing");
    CHECK(has(lines, "6.6 kg to freeze; this freezer freezes 3 kg to 4.5 kg in 24 h. Too much for "
                     "one day: 2 batches, a day apart; what goes in later waits in the "
                     "refrigerator, and those days are counted."));
    CHECK(has(lines, "Batch 1, 17 Oct 2026: 4.4 kg: Squash and red lentil stew (7C5-8FW-87D, "
                     "3TX-SZC-87V)"));
    CHECK(has(lines, "Batch 2, 18 Oct 2026: 2.2 kg: Squash and red lentil stew (0E2-7BR-87R)"));
    CHECK(has(lines, "Without a weight, not counted: Plum and ginger compote (J11-0Q0-87J)"));
}

TEST_CASE("the day sheet says what must go elsewhere today, and prints no batch for it") {
    auto plan = orchard_day();
    kitchen::FreezerLoad load;
    load.verdict = kitchen::LoadVerdict::Over;
    load.batches = {{{"7C5-8FW-87D"}, kitchen::Mass{2200}}};
    load.elsewhere = {"3TX-SZC-87V", "0E2-7BR-87R"};
    load.elsewhere_weight = kitchen::Mass{4400};
    plan.freezer_load = load;
    const auto lines = lines_of(day_sheet(plan, english()), "freezing");
    CHECK(has(lines, "Batch 1, 17 Oct 2026: 2.2 kg: Squash and red lentil stew (7C5-8FW-87D)"));
    CHECK(has(lines, "Elsewhere, today: 4.4 kg: Squash and red lentil stew (3TX-SZC-87V, "
                     "0E2-7BR-87R)"));
    CHECK(std::ranges::none_of(
        lines, [](const std::string& line) { return line.find("Batch 2") != std::string::npos; }));
}

TEST_CASE("where the freezer's size is not known, the day sheet gives the rule") {
    const auto lines = lines_of(day_sheet(orchard_day(), english()), "freezing");
    CHECK(has(lines, "Put in no more in 24 h than 32–48 g for each litre of the freezer (2–3 lb "
                     "per cubic foot)."));
}

TEST_CASE("the shopping list adds up across dishes, apart for the day and for cook day") {
    const auto lines = lines_of(shopping_sheet(orchard_day(), english()), "shopping");
    const std::vector<std::string> expected = {
        "For the day",
        "3 kg|squash|Squash and red lentil stew",
        "8|onions|Squash and red lentil stew, Plum and ginger compote",
        "For cook day",
        "2|lemons|Squash and red lentil stew",
        "3 l|vegetable stock|Squash and red lentil stew", // one litre for each of three bags
    };
    CHECK(lines == expected);
}

TEST_CASE("a day without ingredients has nothing to shop for") {
    kitchen::Plan plan;
    plan.made = 2026y / 10 / 17;
    auto planned = compote();
    planned.package.ingredients.clear();
    plan.packages = {planned};
    CHECK(shopping_sheet(plan, english()).field("shopping")->paragraphs.empty());
}
