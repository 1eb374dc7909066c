#include "wording/day_sheet.h"
#include "wording/door_list.h"
#include "wording/phrases.h"
#include "wording/room.h"
#include "wording/shopping_sheet.h"

#include <algorithm>
#include <doctest/doctest.h>

namespace lists_test {

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

/// The words of a paragraph, its label before them, its boxes in brackets and what stands below
/// behind strokes; the cells of a row with bars between.
std::string text_of(const Paragraph& paragraph) {
    std::string text = paragraph.label.empty() ? "" : paragraph.label + ": ";
    for (const auto& span : paragraph.spans) {
        text += span.text;
    }
    for (const auto& words : paragraph.boxes) {
        text += "[" + words + "]";
    }
    for (const auto& below : paragraph.below) {
        text += "/" + text_of(below);
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
    planned.package.ingredients = {
        {quantity("3 kg squash"), kitchen::IngredientDay::PackingDay, {}},
        {quantity("6 onions"), kitchen::IngredientDay::PackingDay, {}},
        {quantity("2 lemons"), kitchen::IngredientDay::CookDay, {}}};
    kitchen::Finish stock;
    stock.add = quantity("1 l vegetable stock");
    planned.package.finish = planned.finish = {stock};
    planned.number = 1;
    return planned;
}

kitchen::PlannedPackage compote() {
    kitchen::PlannedPackage planned;
    planned.package.dish = "Plum and ginger compote";
    planned.package.servings = 8;
    planned.number = 2;
    planned.keep_until = {2027y / 2 / 28, DateBasis::SetByCook, {}};
    planned.bags = {{"J11-0Q0-87J", 1, 1}};
    planned.package.ingredients = {{quantity("2 onions"), kitchen::IngredientDay::PackingDay, {}}};
    return planned;
}

Print one_day_sheet(const kitchen::Plan& plan) {
    const auto sheets = day_sheets(plan, SheetPer::Day, english());
    REQUIRE(sheets.size() == 1);
    return sheets.front();
}

Print shopping_of(const kitchen::Plan& plan, const Style& style) {
    return shopping_sheet(std::span{&plan, 1}, shipped_goods(), style);
}

kitchen::Plan orchard_day() {
    kitchen::Plan plan;
    plan.made = 2026y / 10 / 17;
    plan.kitchen = "Orchard house";
    plan.packages = {stew(), compote()};
    return plan;
}

} // namespace

namespace {

DoorRow door_row(kitchen::Date date, DateBasis basis, const std::string& dish,
                 std::vector<DoorBag> bags) {
    DoorRow row;
    row.keep_until = date;
    row.basis = basis;
    row.dish = dish;
    row.servings = 6;
    row.bags = std::move(bags);
    row.allergens = DoorAllergens{};
    return row;
}

std::vector<kitchen::DeclaredAllergen> declared(const std::vector<std::string>& names) {
    return kitchen::read_allergens(names);
}

} // namespace

TEST_CASE("the door list has a row for a dish and a date below its month, a box for every bag") {
    auto pork = door_row(2027y / 2 / 28, DateBasis::SetByCook, "Apple and sage pork",
                         {{"DM3", 2}, {"DM1", 1}});
    pork.raw = true;
    pork.thaw = ThawMethod::Refrigerator;
    pork.thaw_lead = 46h;
    pork.allergens->contains = declared({"mustard"});
    pork.allergens->may_contain = declared({"milk"});
    auto stew = door_row(2026y / 12 / 17, DateBasis::StorageTable, "Squash stew", {{"7C5", 1}});
    stew.thaw = ThawMethod::FromFrozen;
    stew.thaw_lead = 0min;
    auto bake = door_row(2026y / 11 / 17, DateBasis::StorageTable, "Bean bake", {{"ZPQ", 3}});
    bake.thaw = ThawMethod::ColdWater;
    auto pot = door_row(2026y / 11 / 17, DateBasis::StorageTable, "Barley pot", {{"FFW", 1}});
    pot.allergens.reset();
    const auto list = door_list(std::vector{pork, stew, bake, pot}, english(), 2026y / 10 / 20);
    CHECK(list.kind == Kind::DoorList);
    const std::vector<std::string> expected = {
        "November 2026",
        "17 Nov/Best by|Barley pot/Serves 6. Contains see the label|[1]",
        "17 Nov/Best by|Bean bake/Serves 6/Thaw: in cold water, at most 21 °C|[3]",
        "December 2026",
        "17 Dec/Best by|Squash stew/Serves 6/Do not thaw:: cook from frozen|[1]",
        "February 2027",
        "28 Feb/Use by|RAW · Apple and sage pork/Serves 6. Contains mustard. May contain milk"
        "/Thaw: in the refrigerator, 46 h|[1][2]",
    };
    CHECK(lines_of(list, "rows") == expected);
    const auto& lines = list.field("rows")->paragraphs;
    CHECK(lines[0].role == Role::Heading);
    CHECK(lines[1].role == Role::Text);
    CHECK(lines_of(list, "printed-on") == std::vector<std::string>{"Printed 20 Oct 2026"});
    CHECK(lines_of(list, "summary").front().starts_with("Bags: 5,"));
    CHECK(list.field("local-rules") != nullptr);
    CHECK(lines_of(list, "allergens-note").front().starts_with("Allergens as declared"));
}

TEST_CASE("the door list says of what is eaten frozen that it is not thawed") {
    auto row = door_row(2026y / 12 / 1, DateBasis::StorageTable, "Quince sorbet", {{"A", 1}});
    row.eaten_frozen = true;
    row.thaw = kitchen::ThawMethod::FromFrozen;
    const std::vector<std::string> expected = {
        "December 2026", "1 Dec/Best by|Quince sorbet/Serves 6/Do not thaw:: eat it frozen|[1]"};
    CHECK(lines_of(door_list(std::vector{row}, english()), "rows") == expected);
}

TEST_CASE("of a dish in very many bags the door list has several rows, each with its date") {
    auto row = door_row(2026y / 12 / 17, DateBasis::StorageTable, "Squash stew", {});
    for (int number = 1; number <= 170; ++number) {
        row.bags.push_back({"ID" + std::to_string(number), number});
    }
    const auto list = door_list(std::vector{row}, english());
    const auto& paragraphs = list.field("rows")->paragraphs;
    REQUIRE(paragraphs.size() == 1 + 6); // below the month
    CHECK(paragraphs[1].cells[2].boxes.size() == 30);
    CHECK(paragraphs[6].cells[2].boxes.front() == "151");
    CHECK(paragraphs[6].cells[2].boxes.back() == "170");
    CHECK(text_of(paragraphs[6].cells[0]) == text_of(paragraphs[1].cells[0]));
}

TEST_CASE("a month is said again for each year, and a day of no date says nothing") {
    const auto list = door_list(
        std::vector{door_row(2026y / 12 / 1, DateBasis::StorageTable, "Stew", {{"A", 1}}),
                    door_row(2027y / 12 / 1, DateBasis::StorageTable, "Soup", {{"B", 1}})},
        english());
    const auto lines = lines_of(list, "rows");
    CHECK(has(lines, "December 2026"));
    CHECK(has(lines, "December 2027"));
    CHECK(list.field("printed-on")->paragraphs.empty());
}

TEST_CASE("bags of two rows that say the same dish and date are told by their ids") {
    const auto one = door_row(2026y / 12 / 17, DateBasis::StorageTable, "Stew", {{"7C5-8FW", 1}});
    const auto other = door_row(2026y / 12 / 17, DateBasis::StorageTable, "Stew", {{"J11-0Q0", 1}});
    const auto later = door_row(2026y / 12 / 18, DateBasis::StorageTable, "Stew", {{"ZPQ", 1}});
    const auto lines = lines_of(door_list(std::vector{one, other, later}, english()), "rows");
    CHECK(has(lines, "17 Dec/Best by|Stew/Serves 6|[7C5-8FW]"));
    CHECK(has(lines, "17 Dec/Best by|Stew/Serves 6|[J11-0Q0]"));
    CHECK(has(lines, "18 Dec/Best by|Stew/Serves 6|[1]"));
    // Also where sizes of two pots stand in turn.
    auto small = door_row(2026y / 12 / 17, DateBasis::StorageTable, "Stew", {{"S1", 1}});
    auto small_too = door_row(2026y / 12 / 17, DateBasis::StorageTable, "Stew", {{"S2", 1}});
    small.servings = small_too.servings = 2;
    const auto sizes =
        lines_of(door_list(std::vector{small, one, small_too, other}, english()), "rows");
    CHECK(has(sizes, "17 Dec/Best by|Stew/Serves 2|[S1]"));
    CHECK(has(sizes, "17 Dec/Best by|Stew/Serves 2|[S2]"));
    CHECK(has(sizes, "17 Dec/Best by|Stew/Serves 6|[7C5-8FW]"));
    CHECK(has(sizes, "17 Dec/Best by|Stew/Serves 6|[J11-0Q0]"));
}

// USDA FSIS, Freezing and Food Safety: at 0 °F (−18 °C) always safe. FDA Food Code 3-501.13 (B):
// running water at 21 °C (70 °F) or below.
TEST_CASE("the door list says temperatures in the units and the order that are set") {
    auto row = door_row(2026y / 11 / 17, DateBasis::StorageTable, "Bean bake", {{"ZPQ", 1}});
    row.thaw = ThawMethod::ColdWater;
    const std::vector rows{row};
    const auto frozen_safe = [&](kitchen::Units units) {
        return lines_of(door_list(rows, english(units)), "frozen-safe").front();
    };
    CHECK(frozen_safe(kitchen::Units::Metric).starts_with("Kept at −18 °C it"));
    CHECK(frozen_safe(kitchen::Units::Us).starts_with("Kept at 0 °F it"));
    CHECK(frozen_safe(kitchen::Units::Both).starts_with("Kept at 0 °F (−18 °C) it"));
    const auto line = lines_of(door_list(rows, english(kitchen::Units::Both)), "rows").back();
    CHECK(line.find("at most 70 °F (21 °C)") != std::string::npos);
}

// That 0 °F is always safe is said of quality dates: USDA FSIS, Freezing and Food Safety.
TEST_CASE("below a date that a cook set, no list says that it is about quality") {
    const auto best = door_row(2026y / 11 / 17, DateBasis::StorageTable, "Bean bake", {{"ZPQ", 1}});
    const auto use = door_row(2026y / 12 / 17, DateBasis::SetByCook, "Fish pie", {{"7C5", 1}});
    const auto note = [](const std::vector<DoorRow>& rows) {
        return lines_of(door_list(rows, english()), "frozen-safe");
    };
    CHECK(note({best}).front().find("the date is about quality") != std::string::npos);
    CHECK(note({use}).empty());
    CHECK(note({best, use}).front() == "Best by: about quality; kept at −18 °C it stays safe for "
                                       "longer. Use by: do not eat it after that day.");
}

TEST_CASE("numbers of bags are said as a range from three on") {
    const auto& words = shipped_language("en");
    CHECK(say_numbers({3, 1, 2}, words) == "1–3");
    CHECK(say_numbers({1, 2}, words) == "1, 2");
    CHECK(say_numbers({1, 3, 4, 5, 9}, words) == "1, 3–5, 9");
    CHECK(say_numbers({4}, words) == "4");
}

TEST_CASE(
    "the day sheet says for each dish what goes into the bags, what stays out, and its bags") {
    const auto print = one_day_sheet(orchard_day());
    const auto lines = lines_of(print, "dishes");
    const std::vector<std::string> expected = {
        "1 · Squash and red lentil stew",
        "3 bags, each serves 6 · 2.2 kg",
        "Lying flat, frozen through in 15 h · Best if used by 17 Dec 2026",
        "Into the bags|Left out, per bag|Labelled and filled",
        "3 kg squash|At the start: 1 l vegetable stock|[1][2][3]",
        "6 onions|On cook day, for all bags: 2 lemons|",
        "2 · Plum and ginger compote",
        "1 bag, each serves 8",
        "Use by 28 Feb 2027",
        "Into the bags||Labelled and filled",
        "2 onions||[1]",
    };
    CHECK(lines == expected);
    for (const auto& paragraph : print.field("dishes")->paragraphs) {
        CHECK((!paragraph.cells.empty() || paragraph.marker == Marker::None));
    }
}

TEST_CASE("what is to be minded while a dish is packed stands on the day sheet") {
    auto plan = orchard_day();
    kitchen::Caution rice;
    // University of Saskatchewan, food safety of rice (Bacillus cereus): no reheating undoes it.
    rice.id = "rice-cool-fast";
    rice.level = kitchen::CautionLevel::Check;
    plan.packages[0].cautions = {rice};
    const auto lines = lines_of(one_day_sheet(plan), "dishes");
    const std::string said = "Cooked rice must be cold within two hours: heating it again does not "
                             "destroy the toxin that forms in warm rice.";
    CHECK(std::ranges::count(lines, said) == 1);
}

TEST_CASE("a dish that lists nothing has its bags alone") {
    auto plan = orchard_day();
    plan.packages[1].package.ingredients.clear();
    const auto lines = lines_of(one_day_sheet(plan), "dishes");
    REQUIRE(lines.size() > 2);
    CHECK(lines[lines.size() - 2] == "Labelled and filled");
    CHECK(lines.back() == "[1]");
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
    const auto lines = lines_of(one_day_sheet(plan), "freezing");
    CHECK(has(lines, "6.6 kg to freeze; this freezer freezes 3 kg to 4.5 kg in 24 h. Too much for "
                     "one day: 2 batches, a day apart; what goes in later waits in the "
                     "refrigerator, and those days are counted."));
    CHECK(has(lines, "Batch 1, 17 Oct 2026/4.4 kg|Squash and red lentil stew|bags 1, 2"));
    CHECK(has(lines, "Batch 2, 18 Oct 2026/2.2 kg|Squash and red lentil stew|bag 3"));
    CHECK(has(lines, "Without a weight, not counted: Plum and ginger compote (bag 1)"));
}

TEST_CASE("the day sheet says what must go elsewhere today, and prints no batch for it") {
    auto plan = orchard_day();
    kitchen::FreezerLoad load;
    load.verdict = kitchen::LoadVerdict::Over;
    load.batches = {{{"7C5-8FW-87D"}, kitchen::Mass{2200}}};
    load.elsewhere = {"3TX-SZC-87V", "0E2-7BR-87R"};
    load.elsewhere_weight = kitchen::Mass{4400};
    plan.freezer_load = load;
    const auto lines = lines_of(one_day_sheet(plan), "freezing");
    CHECK(has(lines, "Batch 1, 17 Oct 2026/2.2 kg|Squash and red lentil stew|bag 1"));
    CHECK(has(lines, "Elsewhere, today/4.4 kg|Squash and red lentil stew|bags 2, 3"));
    CHECK(std::ranges::none_of(
        lines, [](const std::string& line) { return line.find("Batch 2") != std::string::npos; }));
}

TEST_CASE("in the freezing table each row has its box, and rules for the day have none") {
    auto plan = orchard_day();
    kitchen::FreezerLoad load;
    load.batches = {{{"7C5-8FW-87D", "J11-0Q0-87J"}, kitchen::Mass{4400}}};
    plan.freezer_load = load;
    plan.cautions = {{"freeze-in-one-layer", kitchen::CautionLevel::Check, {}, {}, {}}};
    int rows = 0;
    const auto print = one_day_sheet(plan);
    for (const auto& paragraph : print.field("freezing")->paragraphs) {
        CHECK(paragraph.marker == Marker::None);
        if (!paragraph.cells.empty()) {
            ++rows;
            CHECK(paragraph.cells[1].marker == Marker::TickBox);
        }
    }
    CHECK(rows == 2); // two dishes of one batch
}

TEST_CASE("where the freezer's size is not known, the day sheet gives the rule") {
    const auto lines = lines_of(one_day_sheet(orchard_day()), "freezing");
    CHECK(has(lines, "Put in no more in 24 h than 32–48 g for each litre of the freezer (2–3 lb "
                     "per cubic foot)."));
}

TEST_CASE("the shopping list adds up across dishes, apart for the day and for cook day") {
    const auto lines = lines_of(shopping_of(orchard_day(), english()), "shopping");
    const std::vector<std::string> expected = {
        "For packing day",
        "Vegetables and fruit",
        "squash|3 kg|no. 1",
        "onions|8|no. 1, 2",
        "For cook day, for all bags",
        "Vegetables and fruit",
        "lemons|2|no. 1",
        "Tins and jars",
        "vegetable stock|3 l|no. 1", // one litre for each of three bags
    };
    CHECK(lines == expected);
    const std::vector<std::string> numbers = {"Dishes", "Squash and red lentil stew",
                                              "Plum and ginger compote"};
    const auto print = shopping_of(orchard_day(), english());
    CHECK(lines_of(print, "dish-numbers") == numbers);
    CHECK(print.field("dish-numbers")->paragraphs[2].number == 2);
}

TEST_CASE("many numbers of dishes stand below what is bought, not in a column that they fill") {
    auto plan = orchard_day();
    for (const int number : {4, 7, 8, 10, 12}) {
        plan.packages.push_back(compote());
        plan.packages.back().package.dish += std::to_string(number);
        plan.packages.back().number = number;
    }
    const auto print = shopping_of(plan, english());
    const auto& rows = print.field("shopping")->paragraphs;
    const auto onions = std::ranges::find_if(rows, [](const Paragraph& row) {
        return !row.cells.empty() && row.cells.front().spans.front().text == "onions";
    });
    REQUIRE(onions != rows.end());
    REQUIRE(onions->below.size() == 1);
    CHECK(onions->below.front().spans.front().text == "no. 1, 2, 4, 7, 8, 10, 12");
    CHECK(onions->cells.at(2).spans.empty());
    const auto few = shopping_of(orchard_day(), english());
    CHECK(std::ranges::all_of(few.field("shopping")->paragraphs,
                              [](const Paragraph& row) { return row.below.empty(); }));
}

TEST_CASE("of packs to be bought, how much is in each stands with how many") {
    auto plan = orchard_day();
    plan.packages[0].package.ingredients = {
        {quantity("6 x 400 g tins white beans"), kitchen::IngredientDay::PackingDay, {}},
        {quantity("2 bunches sage"), kitchen::IngredientDay::PackingDay, {}}};
    const auto metric = lines_of(shopping_of(plan, english()), "shopping");
    CHECK(has(metric, "white beans (tins)|6 × 400 g|no. 1"));
    CHECK(has(metric, "sage|2 bunches|no. 1"));
    const auto both = lines_of(shopping_of(plan, english(kitchen::Units::Both)), "shopping");
    CHECK(has(both, "white beans (tins)|6 × 400 g (14 oz)|no. 1"));
}

TEST_CASE("a day without ingredients has nothing to shop for") {
    kitchen::Plan plan;
    plan.made = 2026y / 10 / 17;
    auto planned = compote();
    planned.package.ingredients.clear();
    plan.packages = {planned};
    CHECK(shopping_of(plan, english()).field("shopping")->paragraphs.empty());
}

namespace {

/// Prepared a day before: squash and stock for the stew; the compote is cooked then.
kitchen::Plan in_two_days() {
    auto plan = orchard_day();
    plan.prepared = 2026y / 10 / 16;
    auto& stew = plan.packages[0].package;
    stew.ingredients[0].day = kitchen::IngredientDay::DayBefore;
    stew.ingredients.push_back(
        {quantity("2 l vegetable stock"), kitchen::IngredientDay::DayBefore, {}});
    stew.ingredients.push_back({quantity("1 l water"), kitchen::IngredientDay::PackingDay, {}});
    plan.packages[1].package.made = plan.prepared;
    return plan;
}

} // namespace

TEST_CASE("what is made ready on the day before has a sheet of its own, before packing day") {
    const auto sheets = day_sheets(in_two_days(), SheetPer::Day, english());
    REQUIRE(sheets.size() == 2);
    CHECK(sheets[0].dish == "The day before");
    CHECK(lines_of(sheets[0], "date").front() == "Fri 16 Oct 2026");
    const std::vector<std::string> before = {
        "1 · Squash and red lentil stew",
        "Prepare and chill||",
        "3 kg squash|2 l vegetable stock|",
        "2 · Plum and ginger compote",
        "Cook all of it today, and chill it until it is packed.",
        "Prepare and chill||",
        "2 onions||",
    };
    CHECK(lines_of(sheets[0], "dishes") == before);
    CHECK(sheets[0].field("local-rules") != nullptr);
    const auto packing = lines_of(sheets[1], "dishes");
    CHECK(has(packing, "Prepared: 3 kg squash|At the start: 1 l vegetable stock|[1][2][3]"));
    CHECK(has(packing, "Cooked Fri 16 Oct 2026||[1]"));
}

TEST_CASE("two days before is said as that, and no day before where nothing is prepared") {
    auto plan = in_two_days();
    plan.prepared = 2026y / 10 / 15;
    CHECK(day_sheets(plan, SheetPer::Day, english()).front().dish == "2 days before");
    plan.packages[0].package.ingredients.clear();
    plan.packages[1].package.made.reset();
    CHECK(day_sheets(plan, SheetPer::Day, english()).size() == 1);
}

TEST_CASE("stations have pages of their own, and a dish without one is a station") {
    auto plan = orchard_day();
    auto third = compote();
    third.package.dish = "Chestnut soup";
    third.number = 3;
    plan.packages.push_back(third);
    plan.packages[0].package.station = plan.packages[2].package.station = "Stove";
    const auto sheets = day_sheets(plan, SheetPer::Station, english());
    REQUIRE(sheets.size() == 3);
    CHECK(sheets[0].dish == "Stove");
    CHECK(lines_of(sheets[0], "date").front() == "Packing day · Sat 17 Oct 2026");
    CHECK(has(lines_of(sheets[0], "dishes"), "1 · Squash and red lentil stew"));
    CHECK(has(lines_of(sheets[0], "dishes"), "3 · Chestnut soup"));
    CHECK(sheets[1].dish == "Packing day");
    CHECK(has(lines_of(sheets[1], "dishes"), "2 · Plum and ginger compote"));
    // The freezer is everybody's: on a page of its own.
    CHECK(lines_of(sheets[2], "dishes").empty());
    CHECK(has(lines_of(sheets[2], "freezing"), "Room in the freezer") == (plan.room.bags > 0));
    for (const auto& sheet : sheets) {
        CHECK(sheet.field("local-rules") != nullptr);
    }
}

TEST_CASE("the shopping list keeps the days apart, and buys no water") {
    const auto lines = lines_of(shopping_of(in_two_days(), english()), "shopping");
    const std::vector<std::string> expected = {
        "The day before, Fri 16 Oct 2026",
        "Vegetables and fruit",
        "squash|3 kg|no. 1",
        "onions|2|no. 2",
        "Tins and jars",
        "vegetable stock|2 l|no. 1",
        "For packing day",
        "Vegetables and fruit",
        "onions|6|no. 1",
        "For cook day, for all bags",
        "Vegetables and fruit",
        "lemons|2|no. 1",
        "Tins and jars",
        "vegetable stock|3 l|no. 1",
    };
    CHECK(lines == expected);
}

TEST_CASE("several days are shopped for together, each with a letter") {
    auto later = orchard_day();
    later.made = 2026y / 10 / 24;
    later.packages[1].in_freezer = 4;
    const std::vector<kitchen::Plan> plans{orchard_day(), later};
    const auto print = shopping_sheet(plans, shipped_goods(), english());
    const auto lines = lines_of(print, "shopping");
    CHECK(has(lines, "squash|6 kg|A1; B1"));
    CHECK(has(lines, "onions|16|A1, 2; B1, 2"));
    const std::vector<std::string> dishes = {
        "Dishes",
        "A · Sat 17 Oct 2026",
        "Squash and red lentil stew",
        "Plum and ginger compote",
        "B · Sat 24 Oct 2026",
        "Squash and red lentil stew",
        "Plum and ginger compote/4 bags of this are in the freezer",
    };
    CHECK(lines_of(print, "dish-numbers") == dishes);
    CHECK(lines_of(print, "date").front() == "Sat 17 Oct 2026, Sat 24 Oct 2026");
    CHECK(lines_of(print, "kitchen").at(0).find("Orchard house") != std::string::npos);
    later.kitchen = "Plum barn"; // a list for two kitchens is called after neither
    CHECK(lines_of(shopping_sheet(std::vector{orchard_day(), later}, shipped_goods(), english()),
                   "kitchen")
              .empty());
}

TEST_CASE("a sum is called as many, and what was written stays as it is") {
    auto plan = orchard_day();
    plan.packages[0].package.ingredients = {
        {quantity("1 lemon"), kitchen::IngredientDay::PackingDay, {}}};
    kitchen::Finish orange;
    orange.add = quantity("1 orange");
    plan.packages[0].package.finish = {orange}; // for each of three bags
    const auto lines = lines_of(shopping_of(plan, english()), "shopping");
    CHECK(has(lines, "lemon|1|no. 1"));
    CHECK(has(lines, "oranges|3|no. 1"));
}

TEST_CASE("what is counted is bought whole, and a list has the thing without its joining word") {
    auto plan = orchard_day();
    plan.packages[0].package.ingredients.clear();
    for (const char* written : {"200 g de arroz", "2 l de agua", "½ cabbage", "3 EL Rapsöl"}) {
        plan.packages[0].package.ingredients.push_back(
            {quantity(written), kitchen::IngredientDay::PackingDay, {}});
    }
    kitchen::Finish quarter;
    quarter.add = quantity("½ cabbage, shredded"); // for each of three bags
    plan.packages[0].package.finish = {quarter};
    const auto lines = lines_of(shopping_of(plan, english()), "shopping");
    CHECK(has(lines, "arroz|200 g|no. 1"));
    CHECK(has(lines, "Rapsöl|3 EL|no. 1"));
    CHECK(has(lines, "cabbage|½|no. 1"));
    CHECK(has(lines, "cabbages, shredded|2|no. 1"));
    CHECK_FALSE(has(lines, "agua|2 l|no. 1"));
}

TEST_CASE(
    "a sum short of a measure by a hair, or over it, is that measure, and converted as it is") {
    auto plan = orchard_day();
    plan.packages[0].package.finish.clear();
    plan.packages[0].package.ingredients.clear();
    for (const char* written : {"½ cup cream", "120 ml cream", "⅓ cup milk", "60 ml milk"}) {
        plan.packages[0].package.ingredients.push_back(
            {quantity(written), kitchen::IngredientDay::PackingDay, {}});
    }
    const auto lines = lines_of(shopping_of(plan, english(kitchen::Units::Both)), "shopping");
    CHECK(has(lines, "cream|1 cup (240 ml)|no. 1")); // 1.007
    CHECK(has(lines, "milk|⅝ cup (140 ml)|no. 1"));  // 0.587 cup, 139 ml
}

TEST_CASE("a sum of several units is said in what a kitchen measures, and is never too little") {
    auto plan = orchard_day();
    plan.packages[0].package.finish.clear();
    plan.packages[0].package.ingredients.clear();
    for (const char* written : {"⅓ cup cream", "¼ cup cream", "1 lb carrots", "728 g carrots",
                                "50 fl oz stock", "218 ml stock", "⅔ cup oats", "⅔ cup oats",
                                "1.25 kg flour", "1 kg flour", "⅛ tsp mace", "¼ tsp mace"}) {
        plan.packages[0].package.ingredients.push_back(
            {quantity(written), kitchen::IngredientDay::PackingDay, {}});
    }
    const auto lines = lines_of(shopping_of(plan, english(kitchen::Units::Written)), "shopping");
    CHECK(has(lines, "cream|⅝ cup|no. 1"));        // 7/12
    CHECK(has(lines, "carrots|2 lb 10 oz|no. 1")); // 2.605 lb
    CHECK(has(lines, "stock|58 fl oz|no. 1"));     // 57.37 fl oz
    CHECK(has(lines, "oats|1⅓ cups|no. 1"));
    CHECK(has(lines, "flour|2.25 kg|no. 1"));
    CHECK(has(lines, "mace|⅜ tsp|no. 1"));
}

TEST_CASE("litres that come to no tenth of a cubic foot are said in litres alone") {
    auto style = style_for(shipped_language("de"), {});
    style.units.units = kitchen::Units::Both;
    CHECK(say_litres(60, style) == "60 l (2,1 Kubikfuß)");
    CHECK(say_litres(1.5, style) == "1,5 l (0,1 Kubikfuß)");
    CHECK(say_litres(1.2, style) == "1,2 l");
    style.units.units = kitchen::Units::Us;
    CHECK(say_litres(1.2, style) == "1,2 l");
    CHECK(say_litres(60, style) == "2,1 Kubikfuß");
}

TEST_CASE("the day sheet says how much room the bags need, beside what the freezer holds") {
    auto plan = orchard_day();
    plan.room = {.bags = 4,
                 .litres = 8.96,
                 .unweighed = 1,
                 .stack = Length::millimetres(120),
                 .unmeasured = 1,
                 .largest_face = 749};
    plan.freezer_litres = 30;
    plan.holds = kitchen::FreezerHolds{6, 12.2, 0};
    const auto lines = lines_of(one_day_sheet(plan), "freezing");
    CHECK(has(lines, "Room in the freezer"));
    CHECK(has(lines, "4 bags: 9 l"));
    CHECK(has(lines, "In one flat stack: 12 cm high, on 28 × 28 cm"));
    CHECK(has(lines, "Without a weight, not counted: 1 bag"));
    CHECK(has(lines, "In the freezer already: 6 bags, 12 l"));
    CHECK(has(lines, "Together: 21 l of its 30 l. There is room for what has a weight; weigh the "
                     "others."));
    plan.holds->unweighed = 2;
    const auto less_known = lines_of(one_day_sheet(plan), "freezing");
    CHECK(has(less_known,
              "In the freezer already: 6 bags, 12 l; without a weight, not counted: 2 bags"));
    plan.holds = kitchen::FreezerHolds{6, 0, 6};
    CHECK(has(lines_of(one_day_sheet(plan), "freezing"),
              "In the freezer already: 6 bags; without a weight, not counted: 6 bags"));
    plan.holds = kitchen::FreezerHolds{6, 12.2, 0};
    plan.freezer_litres = 20;
    CHECK(has(lines_of(one_day_sheet(plan), "freezing"),
              "Together: 21 l of its 20 l. Too much: make room first, or pack less."));
    plan.holds = kitchen::FreezerHolds{};
    plan.freezer_litres = 12;
    const auto alone = lines_of(one_day_sheet(plan), "freezing");
    CHECK(has(alone, "In the freezer already: nothing else, as far as is known"));
    CHECK(has(alone, "Together: 9 l of its 12 l. There is room for what has a weight; weigh the "
                     "others."));
    plan.room.unweighed = 0;
    CHECK(has(lines_of(one_day_sheet(plan), "freezing"),
              "Together: 9 l of its 12 l. There is room."));
    const auto says_together = [&plan] {
        return std::ranges::any_of(lines_of(one_day_sheet(plan), "freezing"),
                                   [](const auto& line) { return line.starts_with("Together"); });
    };
    CHECK(says_together());
    plan.freezer_litres = {};
    CHECK_FALSE(says_together()); // of how much is not known
    plan.freezer_litres = 12;
    plan.room.litres = 0;
    CHECK_FALSE(says_together()); // nothing was weighed
}

} // namespace lists_test
