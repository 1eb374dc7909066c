// What comes in from elsewhere and cannot be: each part is refused by name, and what is at its
// bound is not.

#include "archive/contents.h"
#include "archive/limits.h"
#include "samples.h"
#include "schema_2.h"

#include <doctest/doctest.h>
#include <functional>
#include <limits>

namespace contents_test {

using namespace thawslip;
using namespace thawslip::test_support;
using namespace std::chrono_literals;

namespace {

Contents sound() {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    archive.record(print({day({package("Stew", 2), package("Chutney", 1)})}));
    return archive.contents();
}

PackageRecord& stew(Contents& contents) {
    return contents.days.front().record.packages.front();
}

Contents::Bag& bag(Contents& contents) {
    return contents.bags.front();
}

BagEvent& event(Contents& contents) {
    return bag(contents).events.front();
}

using Change = std::function<void(Contents&)>;

std::string fault_after(const Change& change) {
    auto contents = sound();
    change(contents);
    return fault_in(contents).value_or("");
}

std::string letters(std::size_t count) {
    return std::string(count, 'a');
}

struct Case {
    const char* name;
    Change wrong;
    std::string said; ///< how it begins
    Change right;     ///< as far as it may go; empty where there is no bound
};

void check(const std::vector<Case>& cases) {
    for (const auto& c : cases) {
        CAPTURE(c.name);
        CHECK(fault_after(c.wrong).substr(0, c.said.size()) == c.said);
        if (c.right) {
            CHECK(fault_after(c.right) == "");
        }
    }
}

} // namespace

TEST_CASE("what an archive holds has no fault") {
    CHECK(fault_after([](Contents&) {}) == "");
    CHECK(fault_in(Contents{}) == std::nullopt);
}

TEST_CASE("a package that cannot be is refused under its dish, up to its bounds not") {
    const std::string of_stew = "\"Stew\" of description 1 ";
    check({
        {"no dish",
         [](Contents& c) { stew(c).dish = ""; },
         "\"\" of description 1 has a name that cannot be",
         {}},
        {"a long dish", [](Contents& c) { stew(c).dish = letters(81); },
         "\"" + letters(81) + "\" of description 1 has a name that cannot be",
         [](Contents& c) { stew(c).dish = letters(80); }},
        {"words of a control character",
         [](Contents& c) { stew(c).words = "ste\x01w"; },
         of_stew + "has a name that cannot be",
         {}},
        {"too many words", [](Contents& c) { stew(c).words = letters(1001); },
         of_stew + "has a name that cannot be", [](Contents& c) { stew(c).words = letters(1000); }},
        {"an allergen of two lines",
         [](Contents& c) {
             stew(c).food = FoodRecord{};
             stew(c).food->allergens = {"milk", "wheat\nand more"};
         },
         of_stew + "has an allergen or a kind of food that cannot be",
         [](Contents& c) {
             stew(c).food = FoodRecord{};
             stew(c).food->allergens = {"milk", letters(200)};
         }},
        {"a kind of food too long",
         [](Contents& c) {
             stew(c).food = FoodRecord{};
             stew(c).food->classes = {letters(201)};
         },
         of_stew + "has an allergen or a kind of food that cannot be",
         {}},
        {"a long place", [](Contents& c) { stew(c).place = letters(201); },
         of_stew + "has a place that cannot be", [](Contents& c) { stew(c).place = letters(200); }},
        {"made before there were such days",
         [](Contents& c) { stew(c).made = std::chrono::year{1989} / 12 / 31; },
         of_stew + "has a date that cannot be",
         [](Contents& c) { stew(c).made = std::chrono::year{1990} / 1 / 1; }},
        {"kept for ever", [](Contents& c) { stew(c).keep_until = std::chrono::year{2301} / 1 / 1; },
         of_stew + "has a date that cannot be",
         [](Contents& c) { stew(c).keep_until = std::chrono::year{2300} / 12 / 31; }},
        {"no such day",
         [](Contents& c) { stew(c).made = std::chrono::year{2026} / 2 / 30; },
         of_stew + "has a date that cannot be",
         {}},
        {"serves nobody", [](Contents& c) { stew(c).servings = 0; },
         of_stew + "serves 0, expected 1 to 100", [](Contents& c) { stew(c).servings = 1; }},
        {"serves a town", [](Contents& c) { stew(c).servings = 101; },
         of_stew + "serves 101, expected 1 to 100", [](Contents& c) { stew(c).servings = 100; }},
        {"weighs nothing", [](Contents& c) { stew(c).weight = kitchen::Mass{0}; },
         of_stew + "has a weight that cannot be, expected at most 20 kg",
         [](Contents& c) { stew(c).weight = kitchen::Mass{0.5}; }},
        {"weighs more than is carried", [](Contents& c) { stew(c).weight = kitchen::Mass{20'001}; },
         of_stew + "has a weight", [](Contents& c) { stew(c).weight = kitchen::Mass{20'000}; }},
        {"weighs what is no number",
         [](Contents& c) {
             stew(c).weight = kitchen::Mass{std::numeric_limits<double>::quiet_NaN()};
         },
         of_stew + "has a weight",
         {}},
        {"weighs without end",
         [](Contents& c) {
             stew(c).weight = kitchen::Mass{std::numeric_limits<double>::infinity()};
         },
         of_stew + "has a weight", [](Contents& c) { stew(c).weight.reset(); }},
        {"thaws before it is taken out",
         [](Contents& c) {
             stew(c).thaw = ThawRecord{kitchen::ThawMethod::ColdWater, -1min};
         },
         of_stew + "thaws for a time that cannot be, expected at most 60 days",
         [](Contents& c) {
             stew(c).thaw = ThawRecord{kitchen::ThawMethod::ColdWater, 0min};
         }},
        {"thaws for a season",
         [](Contents& c) {
             stew(c).thaw = ThawRecord{kitchen::ThawMethod::Refrigerator, 24h * 60 + 1min};
         },
         of_stew + "thaws for a time",
         [](Contents& c) {
             stew(c).thaw = ThawRecord{kitchen::ThawMethod::Refrigerator, 24h * 60};
         }},
        {"thaws by no time that is known",
         [](Contents& c) {
             stew(c).thaw = ThawRecord{kitchen::ThawMethod::FromFrozen, -1min};
         },
         of_stew + "thaws for a time",
         [](Contents& c) {
             stew(c).thaw = ThawRecord{kitchen::ThawMethod::FromFrozen, std::nullopt};
         }},
        {"a batch of no number", [](Contents& c) { stew(c).batch.number = 0; },
         of_stew + "is of a batch that cannot be", [](Contents& c) { stew(c).batch.number = 2; }},
        {"a size below none", [](Contents& c) { stew(c).batch.size = -1; },
         of_stew + "is of a batch", [](Contents& c) { stew(c).batch.size = 1; }},
        {"a kitchen of no number",
         [](Contents& c) { stew(c).batch.kitchen_number = -1; },
         of_stew + "is of a batch",
         {}},
        {"a kitchen's number too high",
         [](Contents& c) { stew(c).batch.kitchen_number = kitchen::highest_kitchen_number + 1; },
         of_stew + "is of a batch",
         [](Contents& c) { stew(c).batch.kitchen_number = kitchen::highest_kitchen_number; }},
        {"a size too large", [](Contents& c) { stew(c).batch.size = 20'001; },
         of_stew + "is of a batch", [](Contents& c) { stew(c).batch.size = 20'000; }},
        {"an origin of two lines",
         [](Contents& c) { stew(c).origin = "a\nb"; },
         of_stew + "is of a batch",
         {}},
    });
    // Of no package has a bag to be left, nor more than there are ids for.
    PackageRecord empty = package("Stew", 1);
    empty.bags.clear();
    CHECK(fault_in(empty) == "has a number of bags that cannot be, expected 1 to 200");
    empty.bags.assign(200, "A");
    CHECK_FALSE(fault_in(empty).has_value());
    empty.bags.emplace_back("A");
    CHECK(fault_in(empty).has_value());
}

TEST_CASE("a description that cannot be is refused under its number") {
    const auto first = [](Contents& c) -> Contents::Day& { return c.days.front(); };
    check({
        {"no number",
         [&](Contents& c) { first(c).lineage = 0; },
         "revision 1 of description 0 is there twice, or cannot be",
         {}},
        {"no revision",
         [&](Contents& c) { first(c).revision = 0; },
         "revision 0 of description 1 is there twice, or cannot be",
         {}},
        {"twice", [&](Contents& c) { c.days.push_back(first(c)); },
         "revision 1 of description 1 is there twice, or cannot be",
         [&](Contents& c) {
             c.days.push_back(first(c));
             c.days.back().revision = 2;
         }},
        {"no day", [&](Contents& c) { first(c).record.made = {}; }, "description 1 has no day", {}},
        {"a long kitchen", [&](Contents& c) { first(c).record.kitchen = letters(201); },
         "description 1 has a kitchen's name that cannot be",
         [&](Contents& c) { first(c).record.kitchen = letters(200); }},
        {"too many dishes", [&](Contents& c) { first(c).record.packages.resize(101, stew(c)); },
         "description 1 is larger than a description can be: 101 dishes, ",
         [&](Contents& c) { first(c).record.packages.resize(100, stew(c)); }},
        {"too long", [&](Contents& c) { first(c).record.description = letters((1U << 20U) + 1); },
         "description 1 is larger than a description can be: 2 dishes, 1048577 bytes",
         [&](Contents& c) { first(c).record.description = letters(1U << 20U); }},
        {"recorded at two lines",
         [&](Contents& c) { first(c).recorded = "2026\n"; },
         "description 1 was recorded at a time that cannot be",
         {}},
        {"ordered before time began", [&](Contents& c) { first(c).ordered = -1; },
         "description 1 was recorded at a time", [&](Contents& c) { first(c).ordered = 0; }},
        {"ordered after its end", [&](Contents& c) { first(c).ordered = Most::ordered + 1; },
         "description 1 was recorded at a time",
         [&](Contents& c) { first(c).ordered = Most::ordered; }},
    });
}

TEST_CASE("a bag that cannot be is refused under its id") {
    const auto id = sound().bags.front().ids.front();
    const auto other = sound().bags.back().ids.front();
    const auto no_time = "bag " + id + " has a state or a time that cannot be";
    const auto no_package = "bag " + id + " belongs to a package that is not there";
    check({
        {"no id", [](Contents& c) { bag(c).ids.clear(); }, "a bag has no id", {}},
        {"what is no id",
         [](Contents& c) { bag(c).ids = {"0"}; },
         "a bag has the id \"0\", which cannot be one",
         {}},
        {"another bag's id",
         [&](Contents& c) { bag(c).ids = {other}; },
         "the id " + other + " is there twice",
         {}},
        {"no event", [](Contents& c) { bag(c).events.clear(); }, no_time, {}},
        {"nothing but another name",
         [](Contents& c) {
             event(c).state = State::Renamed;
             event(c).joined = "S";
         },
         no_time,
         {}},
        {"a name for what is frozen", [](Contents& c) { event(c).joined = "S"; }, no_time, {}},
        {"a moment of two lines", [](Contents& c) { event(c).at = "a\nb"; }, no_time, {}},
        {"a month too many", [](Contents& c) { event(c).at = "2026-13-17T15:00:00"; }, no_time, {}},
        {"a day too many", [](Contents& c) { event(c).at = "2026-09-31T15:00:00"; }, no_time,
         [](Contents& c) { event(c).at = "2026-09-30T15:00:00"; }},
        {"an hour too many", [](Contents& c) { event(c).at = "2026-09-30T24:00:00"; }, no_time,
         [](Contents& c) { event(c).at = "2026-09-30T23:59:59"; }},
        {"a minute too many", [](Contents& c) { event(c).at = "2026-09-30T23:60:00"; }, no_time,
         [](Contents& c) { event(c).at = "2026-09-30T23:59:00"; }},
        // ISO 8601 counts a leap second as the sixtieth.
        {"a second too many", [](Contents& c) { event(c).at = "2026-09-30T23:59:61"; }, no_time,
         [](Contents& c) { event(c).at = "2026-09-30T23:59:60"; }},
        {"a fraction of letters", [](Contents& c) { event(c).at = "2026-09-30T12:00:00.5s"; },
         no_time, [](Contents& c) { event(c).at = "2026-09-30T12:00:00.05"; }},
        {"more behind the seconds",
         [](Contents& c) { event(c).at = "2026-09-30T12:00:005"; },
         no_time,
         {}},
        {"a space before the hour",
         [](Contents& c) { event(c).at = "2026-09-30 12:00:00"; },
         no_time,
         {}},
        {"a year before there were such days",
         [](Contents& c) { event(c).at = "1989-12-31T12:00:00"; }, no_time,
         [](Contents& c) { event(c).at = "1990-01-01T12:00:00"; }},
        {"a moment of more letters than a name has",
         [](Contents& c) { event(c).at = "2026-09-30T12:00:00." + std::string(181, '0'); }, no_time,
         [](Contents& c) { event(c).at = "2026-09-30T12:00:00." + std::string(180, '0'); }},
        {"a moment without an hour", [](Contents& c) { event(c).at = "2026-09-30"; }, no_time, {}},
        {"a station of two lines", [](Contents& c) { event(c).station = "a\nb"; }, no_time, {}},
        {"a start of two lines", [](Contents& c) { event(c).boot = "a\nb"; }, no_time, {}},
        {"a place of two lines", [](Contents& c) { event(c).place = "a\nb"; }, no_time, {}},
        {"an order below none", [](Contents& c) { event(c).ordered = -1; }, no_time, {}},
        {"an order after the last", [](Contents& c) { event(c).ordered = Most::ordered + 1; },
         no_time, [](Contents& c) { event(c).ordered = Most::ordered; }},
        {"a command below none", [](Contents& c) { event(c).seq = -1; }, no_time, {}},
        {"a command after the last", [](Contents& c) { event(c).seq = Most::seq + 1; }, no_time,
         [](Contents& c) { event(c).seq = Most::seq; }},
        {"a clock after the last", [](Contents& c) { event(c).clock = Most::clock + 1; }, no_time,
         [](Contents& c) { event(c).clock = Most::clock; }},
        {"up since before", [](Contents& c) { event(c).uptime = -1; }, no_time,
         [](Contents& c) { event(c).uptime = Most::clock; }},
        {"too far off", [](Contents& c) { event(c).offset = Most::clock + 1; }, no_time,
         [](Contents& c) { event(c).offset = Most::clock; }},
        {"too far off below", [](Contents& c) { event(c).offset = -Most::clock - 1; }, no_time,
         [](Contents& c) { event(c).offset = -Most::clock; }},
        {"takes back what cannot be", [](Contents& c) { event(c).undoes = Most::seq + 1; }, no_time,
         [](Contents& c) { event(c).undoes = Most::seq; }},
        {"a thousand and one events",
         [](Contents& c) { bag(c).events.resize(Most::events + 1, event(c)); },
         "bag " + id + " changed its state or its name more often than can be",
         [](Contents& c) { bag(c).events.resize(Most::events, event(c)); }},
        {"a hundred and one ids",
         [&](Contents& c) { bag(c).ids.resize(Most::ids + 1, id); },
         "bag " + id + " changed its state or its name more often than can be",
         {}},
        {"of a day that is not there", [](Contents& c) { bag(c).day = 1; }, no_package, {}},
        {"before the first dish", [](Contents& c) { bag(c).position = 0; }, no_package, {}},
        {"behind the last dish", [](Contents& c) { bag(c).position = 3; }, no_package, {}},
        {"before the first bag", [](Contents& c) { bag(c).number = 0; }, no_package, {}},
        {"a number that no dish has",
         [](Contents& c) { bag(c).number = Most::bags + 1; },
         no_package,
         {}},
        {"behind its dish's last", [](Contents& c) { bag(c).number = 3; },
         "bag " + id + " is beyond the number of bags of its dish",
         [](Contents& c) { std::swap(bag(c).number, c.bags[1].number); }},
        {"the number of another bag",
         [](Contents& c) { c.bags[1].number = 1; },
         "bag " + sound().bags[1].ids.front() + " has the number of another bag of its dish",
         {}},
    });
}

TEST_CASE("a print that cannot be is refused under its time") {
    const auto first = [](Contents& c) -> Contents::Print& { return c.prints.front(); };
    const auto at = sound().prints.front().first_at;
    const auto the_print = "the print of " + at + " ";
    REQUIRE_FALSE(sound().prints.front().keys.empty());
    check({
        {"first made at two lines",
         [&](Contents& c) { first(c).first_at = "a\nb"; },
         "a print has a time that cannot be",
         {}},
        {"last made at two lines",
         [&](Contents& c) { first(c).last_at = "a\nb"; },
         "a print has a time that cannot be",
         {}},
        {"a key of two lines",
         [&](Contents& c) { first(c).keys.front().key = "a\nb"; },
         "a print has a time that cannot be",
         {}},
        {"a key's moment of two lines",
         [&](Contents& c) { first(c).keys.front().at = "a\nb"; },
         "a print has a time that cannot be",
         {}},
        {"a key's station of two lines",
         [&](Contents& c) { first(c).keys.front().station = "a\nb"; },
         "a print has a time that cannot be",
         {}},
        {"made too often",
         [&](Contents& c) { first(c).keys.resize(Most::keys + 1, first(c).keys.front()); },
         the_print + "was made more often than can be",
         [&](Contents& c) { first(c).keys.resize(Most::keys, first(c).keys.front()); }},
        {"of a day that is not there",
         [&](Contents& c) { first(c).days.push_back(c.days.size()); },
         the_print + "is of a day that is not there",
         {}},
        {"a file twice",
         [&](Contents& c) {
             first(c).setup.files = {{"mine.toml", "a"}, {"mine.toml", "b"}};
         },
         the_print + "has the file mine.toml twice",
         [&](Contents& c) {
             first(c).setup.files = {{"mine.toml", "a"}, {"yours.toml", "b"}};
         }},
        {"a file too large",
         [&](Contents& c) {
             first(c).setup.files = {{"mine.toml", letters(Most::file + 1)}};
         },
         the_print + "has a file that is too large",
         [&](Contents& c) {
             first(c).setup.files = {{"mine.toml", letters(Most::file)}};
         }},
    });
}

TEST_CASE("what the first folders did not keep is made from what they did, the same each time") {
    auto contents = sound();
    const auto text = contents.days[0].record.description;
    contents.days[0].recorded = "2026-10-17T14:05:00";
    for (const int revision : {3, 2}) { // in whatever order they stand
        contents.days.push_back(contents.days[0]);
        contents.days.back().revision = revision;
        contents.days.back().record.description = text + (revision == 2 ? "# two\n" : "# three\n");
        contents.days.back().recorded = "2026-10-18T09:00:00"; // of one second
    }
    contents.days.push_back(contents.days[0]);
    contents.days.back().lineage = 2;
    contents.days.back().recorded = "2026-10-20T09:00:00";
    for (auto& day : contents.days) {
        day.ordered = 0;
        for (auto& package : day.record.packages) {
            package.origin.clear();
        }
    }
    auto& print = contents.prints.front();
    print.first_at = "2026-10-17T14:05:00";
    print.last_at = "2026-10-19T10:00:00";
    print.keys.clear();
    auto other = print; // of another stock, in the same second
    other.last_at = other.first_at;
    contents.prints.push_back(other);
    std::vector<BagState> states;
    for (auto& bag : contents.bags) {
        bag.events.clear();
        states.push_back({State::Frozen, "2026-10-17T14:05:00"});
    }
    states.back() = {State::Eaten, "2026-11-01T18:30:00"};
    complete(contents, states);
    CHECK(fault_in(contents) == std::nullopt);
    // 2026-10-17T14:05:00 is 1792245900 seconds after 1970 (date -u -d, GNU coreutils).
    CHECK(contents.days[0].ordered == 1'792'245'900'000);
    CHECK(contents.days[2].ordered == 1'792'314'000'000);
    CHECK(contents.days[1].ordered == 1'792'314'000'001); // the third revision, after the second
    CHECK(contents.days[3].ordered == 1'792'486'800'000);
    const auto origin = [&](std::size_t day) {
        return contents.days[day].record.packages[0].origin;
    };
    CHECK_FALSE(origin(0).empty());
    CHECK(origin(1) == origin(0)); // of one description
    CHECK(origin(2) == origin(0));
    CHECK(origin(3) != origin(0));
    const auto keys = [&](std::size_t which) {
        std::vector<std::string> said;
        for (const auto& one : contents.prints[which].keys) {
            said.push_back(one.key + " at " + one.at + " by " + one.station);
        }
        return said;
    };
    CHECK(keys(0) ==
          std::vector<std::string>{"2026-10-17T14:05:00 labels at 2026-10-17T14:05:00 by ",
                                   "2026-10-19T10:00:00 labels at 2026-10-19T10:00:00 by "});
    CHECK(keys(1).empty()); // no key is of two prints
    REQUIRE(contents.bags.back().events.size() == 1);
    const auto& eaten = contents.bags.back().events.front();
    CHECK(eaten.state == State::Eaten);
    CHECK(eaten.at == "2026-11-01T18:30:00");
    CHECK(eaten.clock == 1'793'557'800);
    CHECK(eaten.ordered == 1'793'557'800'000);
    CHECK(contents.bags.front().events.front().state == State::Frozen);
}

TEST_CASE("a folder of the first format comes to what the archive it was made of is led to") {
    const Scratch scratch;
    write_file(scratch.folder / "old.sql", std::string{schema_2_archive});
    const auto old = scratch.folder / "old.db";
    REQUIRE(run("sqlite3 " + shell_word(old) + " < " + shell_word(scratch.folder / "old.sql"))
                .err.empty());
    const auto led = opened(old).contents();
    auto contents = led;
    REQUIRE(contents.days.size() > 2);
    REQUIRE(contents.prints.size() > 2);
    for (auto& day : contents.days) {
        day.ordered = 0;
        for (auto& package : day.record.packages) {
            package.origin.clear();
        }
    }
    std::vector<BagState> states;
    for (auto& bag : contents.bags) {
        REQUIRE(bag.events.size() == 1);
        states.push_back({bag.events[0].state.value_or(State::Renamed), bag.events[0].at});
        bag.events.clear();
    }
    for (auto& print : contents.prints) {
        print.keys.clear();
    }
    complete(contents, states);
    CHECK(contents.days == led.days);
    CHECK(contents.bags == led.bags);
    CHECK(contents.prints == led.prints);
}

TEST_CASE("a stranger's name is shown cut, at a whole letter") {
    CHECK(named(letters(200)) == letters(200));
    CHECK(named(letters(201)) == letters(80) + "…");
    CHECK(named("ä" + letters(200)) == "ä" + letters(78) + "…");
    CHECK(named(letters(79) + "ä" + letters(200)) == letters(79) + "…");
}

} // namespace contents_test
