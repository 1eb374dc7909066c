#include "kitchen/plan.h"
#include "kitchen/timeline/finish_order.h"

#include <doctest/doctest.h>
#include <set>

namespace plan_test {

using namespace thawslip;
using namespace thawslip::kitchen;
using namespace std::chrono;

namespace {

StorageTable orchard_table() {
    StorageTable table;
    const auto row = [&](const char* food, const char* list, int low, int high) {
        table.rows.push_back({food, list, months{low}, months{high}, food, "a list", "read"});
    };
    row("soup or stew", "us", 2, 3);
    row("soup or stew", "canada", 4, 4);
    row("sausage", "us", 1, 2);
    row("casserole", "us-fsis", 2, 3);
    row("cooked poultry", "us", 2, 6);
    table.unsuitable.push_back({"egg salad", "Salads", "a list, 2020", "read"});
    return table;
}

Package stew() {
    Package package;
    package.dish = "Squash and red lentil stew";
    package.servings = 6;
    package.bags = 3;
    package.food = {"soup or stew"};
    package.where = KeyPath{"package[1]"};
    return package;
}

Day day_of(std::vector<Package> packages) {
    return {2026y / 10 / 17, "Orchard house", std::nullopt, std::move(packages)};
}

Finish finish(const char* item, When::Anchor anchor, int offset = 0) {
    Finish one;
    one.add.item = item;
    one.when = {anchor, minutes{offset}};
    return one;
}

std::vector<std::string> items(const std::vector<Finish>& list) {
    std::vector<std::string> names;
    for (const auto& one : list) {
        names.push_back(one.add.item);
    }
    return names;
}

using Names = std::vector<std::string>;
using enum When::Anchor;

} // namespace

TEST_CASE("the date is made plus the low end of the shortest-lived class") {
    auto package = stew();
    Diagnostics faults;
    CHECK(plan(day_of({package}), orchard_table(), faults).packages[0].keep_until.date ==
          2026y / 12 / 17);
    package.food = {"soup or stew", "sausage"};
    const auto mixed = plan(day_of({package}), orchard_table(), faults).packages[0];
    CHECK(mixed.keep_until.date == 2026y / 11 / 17);
    CHECK(mixed.keep_until.basis == DateBasis::StorageTable);
    CHECK(mixed.keep_until.row->food == "sausage");
    CHECK(faults.empty());
}

TEST_CASE("a package made on another day counts from that day") {
    auto package = stew();
    package.made = 2026y / 8 / 31;
    Diagnostics faults;
    const auto planned = plan(day_of({package}), orchard_table(), faults).packages[0];
    CHECK(planned.made == 2026y / 8 / 31);
    CHECK(planned.keep_until.date == 2026y / 10 / 31);
}

TEST_CASE("a date set by the cook wins, and no row is said to have given it") {
    auto package = stew();
    package.use_by = 2027y / 1 / 17;
    Diagnostics faults;
    const auto keep = plan(day_of({package}), orchard_table(), faults).packages[0].keep_until;
    CHECK(keep.date == 2027y / 1 / 17);
    CHECK(keep.basis == DateBasis::SetByCook);
    CHECK_FALSE(keep.row);
    package.use_by = 2026y / 10 / 17;
    CHECK(plan(day_of({package}), orchard_table(), faults).packages.size() == 1);
    CHECK(faults.empty());
}

TEST_CASE("what no date can be made of is refused, each fault at its key") {
    struct Case {
        std::vector<std::string> food;
        std::optional<Date> use_by;
        const char* key;
        const char* message;
        const char* hint;
    };
    const char* all_named =
        "thawslip foods names them all, and thawslip foods WORD those that come near";
    const Case cases[] = {
        {{"soup or stwe"},
         {},
         "package[1].food",
         "\"soup or stwe\" is not a kind of food known here",
         "did you mean \"soup or stew\"?"},
        {{"sausage", "soop or stew"},
         {},
         "package[1].food[2]",
         "\"soop or stew\" is not a kind of food known here",
         "did you mean \"soup or stew\"?"},
        {{"gravel"},
         {},
         "package[1].food",
         "\"gravel\" is not a kind of food known here",
         all_named},
        {{"gravel"},
         2027y / 1 / 1,
         "package[1].food",
         "\"gravel\" is not a kind of food known here",
         all_named},
        {{"egg salad"},
         {},
         "package[1].food",
         "\"egg salad\" does not freeze well (a list, 2020), so no list says how long it keeps",
         "set use_by yourself, or leave it out of the freezer"},
        {{"sausage"},
         2026y / 10 / 16,
         "package[1].use_by",
         "use_by 2026-10-16 lies before the day it was made, 2026-10-17",
         nullptr},
    };
    for (const auto& c : cases) {
        CAPTURE(c.message);
        auto package = stew();
        package.food = c.food;
        package.use_by = c.use_by;
        Diagnostics faults;
        CHECK(plan(day_of({package}), orchard_table(), faults).packages.empty());
        REQUIRE(faults.size() == 1);
        CHECK(faults[0].key.text() == c.key);
        CHECK(faults[0].message == c.message);
        CHECK(faults[0].where.file.empty());
        CHECK(faults[0].hints == (c.hint ? Names{c.hint} : Names{}));
    }
}

TEST_CASE("a dish that nothing dates is told what its name says it is, or an example") {
    constexpr FoodWord words[] = {{"pork", FoodRole::Base, "meat", "pork", "en"},
                                  {"should", FoodRole::Form, "roast", "shoulder", "en"}};
    auto package = stew();
    package.food.clear();
    auto table = orchard_table();
    table.words = words;
    for (const auto& [dish, food] : {std::pair{"Pork shoulder", "\"raw roasts\""},
                                     std::pair{"Harvest pot", "\"soup or stew\""}}) {
        CAPTURE(dish);
        package.dish = dish;
        Diagnostics faults;
        CHECK(plan(day_of({package}), table, faults).packages.empty());
        REQUIRE(faults.size() == 1);
        CHECK(faults[0].key.text() == "package[1]");
        CHECK(faults[0].message == "neither food nor use_by is given: one of them sets the date");
        CHECK(faults[0].hints == Names{std::string{"write, for example, food = "} + food,
                                       "or, for example, use_by = 2027-01-17"});
    }
}

TEST_CASE("all faults of a day are reported together, and the sound packages stay") {
    auto bad = stew();
    bad.food = {"gravel", "stones"};
    auto worse = stew();
    worse.food = {};
    Diagnostics faults;
    const auto result = plan(day_of({bad, stew(), worse}), orchard_table(), faults);
    CHECK(faults.size() == 3);
    REQUIRE(result.packages.size() == 1);
    CHECK(result.kitchen == "Orchard house");
    CHECK(result.made == 2026y / 10 / 17);
}

TEST_CASE("bags are numbered, and two dishes of one name and day get different ids") {
    Diagnostics faults;
    const auto result = plan(day_of({stew(), stew()}), orchard_table(), faults);
    std::set<std::string> ids;
    for (const auto& package : result.packages) {
        REQUIRE(package.bags.size() == 3);
        for (int i = 0; i < 3; ++i) {
            const auto& bag = package.bags[static_cast<std::size_t>(i)];
            CHECK(bag.number == i + 1);
            CHECK(bag.of == 3);
            ids.insert(bag.id);
        }
    }
    CHECK(ids.size() == 6);
}

TEST_CASE("mending a refused package changes no other package's ids") {
    auto bad = stew();
    bad.food = {"gravel"};
    Diagnostics faults;
    const auto before = plan(day_of({bad, stew()}), orchard_table(), faults).packages.back();
    const auto after = plan(day_of({stew(), stew()}), orchard_table(), faults).packages.back();
    CHECK(before.bags[0].id == after.bags[0].id);
}

TEST_CASE("finishing ingredients are ordered by when they go in") {
    const std::vector<Finish> written = {
        finish("cream", AtServing),    finish("spinach", BeforeEnd, 10),
        finish("rice", BeforeEnd, 30), finish("sage", AfterStart, 240),
        finish("apple", Halfway),      finish("stock", AtStart),
        finish("chestnuts", AtStart),
    };
    SUBCASE("where the cooking time is known, by the clock") {
        // Middle of 7–9 h: 480 min. Halfway is 240, like "after 4 h"; rice at 450, spinach at 470.
        CHECK(items(in_order(written, TimeRange{minutes{420}, minutes{540}})) ==
              Names{"stock", "chestnuts", "sage", "apple", "rice", "spinach", "cream"});
        // 5 h: halfway (150) comes before "after 4 h".
        CHECK(items(in_order(written, TimeRange{minutes{300}, minutes{300}})) ==
              Names{"stock", "chestnuts", "apple", "sage", "rice", "spinach", "cream"});
        // 4 h 20 min: "last 30 min" (230) comes before "after 4 h" (240).
        CHECK(items(in_order(written, TimeRange{minutes{260}, minutes{260}})) ==
              Names{"stock", "chestnuts", "apple", "rice", "sage", "spinach", "cream"});
    }
    SUBCASE("what goes in at the same minute goes in at the same moment") {
        const std::vector<Finish> all = {
            finish("apple", Halfway),       finish("sage", AfterStart, 45),
            finish("rice", BeforeEnd, 45),  finish("stock", AtStart),
            finish("pears", AfterStart, 0), finish("dill", AtServing),
            finish("peas", BeforeEnd, 0)};
        const auto fixed = in_order(all, TimeRange{minutes{90}, minutes{90}});
        REQUIRE(items(fixed) == Names{"stock", "pears", "sage", "apple", "rice", "peas", "dill"});
        const When sage{AfterStart, minutes{45}};
        CHECK(fixed[0].when == When{AtStart, minutes{0}});
        CHECK(fixed[1].when == When{AfterStart, minutes{0}});
        for (std::size_t place = 2; place < 5; ++place) {
            CHECK(fixed[place].when == sage);
        }
        CHECK(fixed[5].when == When{BeforeEnd, minutes{0}});
        CHECK(fixed[6].when == When{AtServing, minutes{0}});
        // As written, they are in the same order by their own words.
        const auto written_so =
            in_order(all, TimeRange{minutes{90}, minutes{90}}, Moments::AsWritten);
        CHECK(items(written_so) == items(fixed));
        CHECK(written_so[4].when == When{BeforeEnd, minutes{45}});
        // Of 80 to 100 min the half is no one minute.
        const auto ranging = in_order(all, TimeRange{minutes{80}, minutes{100}});
        CHECK(ranging[3].when == When{Halfway, minutes{0}});
    }
    SUBCASE("where it is not known, by their kind") {
        CHECK(items(in_order(written, std::nullopt)) ==
              Names{"stock", "chestnuts", "sage", "apple", "rice", "spinach", "cream"});
    }
}

TEST_CASE("what would go in after the dish is done is refused") {
    for (const auto anchor : {AfterStart, BeforeEnd}) {
        auto package = stew();
        package.cook = Cook{};
        package.cook->time = TimeRange{minutes{40}, minutes{50}};
        package.finish = {finish("spinach", anchor, 50)};
        package.finish[0].where = KeyPath{"package[1].finish[1]"};
        Diagnostics faults;
        CHECK(plan(day_of({package}), orchard_table(), faults).packages.size() == 1);
        package.finish[0].when.offset = minutes{51};
        CHECK(plan(day_of({package}), orchard_table(), faults).packages.empty());
        REQUIRE(faults.size() == 1);
        CHECK(faults[0].key.text() == "package[1].finish[1].when");
        CHECK(faults[0].message == "51 minutes is longer than the dish cooks, 50 minutes");
    }
}

TEST_CASE("the same day gives the same plan") {
    Diagnostics faults;
    const auto one = plan(day_of({stew()}), orchard_table(), faults);
    const auto two = plan(day_of({stew()}), orchard_table(), faults);
    CHECK(one.packages[0].bags[2].id == two.packages[0].bags[2].id);
    CHECK(one.packages[0].keep_until.date == two.packages[0].keep_until.date);
}

TEST_CASE("a bag with raw food in it is not filled hot, and what is all raw needs no cooling") {
    auto table = orchard_table();
    table.rows.push_back({"roast", "us", months{4}, months{12}, "roast", "a list", "read"});
    table.classes.resize(2);
    table.classes[0].food = "soup or stew";
    table.classes[0].kind = FoodKind::Leftover;
    table.classes[1].food = "roast";
    table.classes[1].kind = FoodKind::RawCut;
    const auto cooling_of = [&](std::vector<std::string> food) {
        auto package = stew();
        package.food = std::move(food);
        package.thickness = Length::millimetres(30);
        Diagnostics faults;
        const auto planned = plan(day_of({package}), table, faults);
        REQUIRE(planned.packages.size() == 1);
        return planned.packages.front().cooling;
    };
    REQUIRE(cooling_of({"soup or stew"}));
    CHECK(cooling_of({"soup or stew"})->way != CoolingWay::FilledCold);
    REQUIRE(cooling_of({"soup or stew", "roast"}));
    CHECK(cooling_of({"soup or stew", "roast"})->way == CoolingWay::FilledCold);
    CHECK_FALSE(cooling_of({"roast"}));
}

TEST_CASE("a dish of no known kind that is said to be raw is raw") {
    auto table = orchard_table();
    static constexpr FoodWord raw[] = {{"roh", FoodRole::State, "raw", "roh", "de"}};
    table.words = raw;
    auto package = stew();
    package.food.clear();
    package.use_by = 2026y / 12 / 1;
    const auto is_raw = [&](const char* dish) {
        package.dish = dish;
        Diagnostics faults;
        const auto planned = plan(day_of({package}), table, faults);
        REQUIRE(planned.packages.size() == 1);
        return planned.packages.front().raw;
    };
    CHECK(is_raw("Krummbein roh"));
    CHECK_FALSE(is_raw("Krummbein"));
}

TEST_CASE("a day without packages is an empty plan") {
    Diagnostics faults;
    CHECK(plan(day_of({}), orchard_table(), faults).packages.empty());
    CHECK(faults.empty());
}

TEST_CASE("a plan carries how long each package thaws, by the refrigerator that is set") {
    auto package = stew();
    package.weight = Mass{2200};
    package.thickness = Length::millimetres(30);
    Diagnostics faults;
    const auto usual = plan(day_of({package}), orchard_table(), faults);
    REQUIRE(usual.packages[0].thaw_lead.has_value());
    CHECK(usual.packages[0].thaw_lead->lead >= hours{24});
    KitchenSettings cold;
    cold.thaw.refrigerator.celsius = 1.0;
    const auto colder = plan(day_of({package}), orchard_table(), faults, cold);
    CHECK(colder.packages[0].thaw_lead->lead > usual.packages[0].thaw_lead->lead);
    cold.thaw.refrigerator.celsius = -5.0;
    CHECK_FALSE(plan(day_of({package}), orchard_table(), faults, cold).packages[0].thaw_lead);
    CHECK(faults.empty());
}

TEST_CASE("a plan holds all of the day's bags against the freezer, where its capacity is known") {
    auto package = stew();
    package.weight = Mass{2200};
    auto day = day_of({package});
    Diagnostics faults;
    CHECK_FALSE(plan(day, orchard_table(), faults).freezer_load.has_value());
    day.freezer_litres = 100.0;
    const auto planned = plan(day, orchard_table(), faults);
    REQUIRE(planned.freezer_load.has_value());
    CHECK(planned.freezer_load->total.grams == 6600);
    CHECK(planned.freezer_load->verdict == LoadVerdict::Over); // 4.8 kg: 3 lb per cubic foot
    REQUIRE(planned.freezer_load->batches.size() == 2);
    CHECK(planned.freezer_load->batches[0].bags[0] == planned.packages[0].bags[0].id);
}

} // namespace plan_test
