// The bounds of what a code says, each just within and just beyond; and what of a plan it says.

#include "code/message.h"
#include "kitchen/cautions/cautions.h"
#include "unit/code/samples.h"

#include <algorithm>
#include <chrono>
#include <doctest/doctest.h>
#include <string>
#include <vector>

namespace message_bounds_test {

using namespace thawslip;
using namespace thawslip::code;
using namespace std::chrono_literals;
using test_support::squash_stew;

namespace {

bool says(const Message& message, std::string_view words) {
    return write(message).find(words) != std::string::npos;
}

kitchen::Date date(int year, unsigned month, unsigned day) {
    return std::chrono::year{year} / static_cast<int>(month) / static_cast<int>(day);
}

kitchen::PlannedPackage oat_bread() {
    kitchen::PlannedPackage planned;
    planned.package.dish = "Oat bread";
    planned.package.thaw.method = kitchen::ThawMethod::ColdWater;
    planned.made = date(2026, 10, 17);
    planned.keep_until.date = date(2027, 1, 17);
    return planned;
}

const kitchen::Bag bag{"K7Q-2M4-9XC", 1, 1};

/// A rule whose caution a code says, in words without a figure.
const kitchen::CautionRule& rule_in_code() {
    const auto& rules = kitchen::caution_rules();
    const auto found = std::ranges::find_if(rules, [](const auto& rule) {
        return !std::string_view{rule.in_code}.empty() &&
               std::string_view{rule.in_code}.find('{') == std::string_view::npos;
    });
    REQUIRE(found != rules.end());
    return *found;
}

kitchen::Caution caution(kitchen::CautionLevel level, std::vector<kitchen::ThawMethod> thawed_by) {
    kitchen::Caution made;
    made.id = rule_in_code().id;
    made.level = level;
    made.thawed_by = std::move(thawed_by);
    return made;
}

} // namespace

TEST_CASE("numbers beyond what a code says are left out, or brought to its bounds") {
    auto message = squash_stew();
    for (const auto& [servings, said] :
         {std::pair{0, false}, {1, true}, {9999, true}, {10000, false}, {-1, false}}) {
        message.servings = servings;
        CHECK(says(message, "SERVES ") == said);
    }
    for (const auto& [days, said] :
         {std::pair{0, false}, {1, true}, {2, true}, {99, true}, {100, false}}) {
        message.cook_within_days = days;
        CHECK(says(message, "COOK WITHIN ") == said);
        CHECK(says(message, "COOK WITHIN " + std::to_string(days) +
                                (days == 1 ? " DAY\n" : " DAYS\n")) == said);
    }
    const auto until = [&message](int tenths) {
        message.cooking.until = Target{tenths, {}};
        return folded(message).cooking.until->tenths;
    };
    CHECK(until(9999) == 9999);
    CHECK(until(10000) == 9999);
    CHECK(until(-9999) == -9999);
    CHECK(until(-10000) == -9999);
    const auto time = [&message](std::chrono::minutes low, std::chrono::minutes high) {
        message.cooking.time = kitchen::TimeRange{low, high};
        return folded(message).cooking.time;
    };
    CHECK(time(24h * 30, 24h * 30) == kitchen::TimeRange{24h * 30, 24h * 30});
    CHECK(time(1min, 24h * 30 + 1min) == kitchen::TimeRange{1min, 24h * 30});
    CHECK(time(-1min, 5min) == kitchen::TimeRange{0min, 5min});
    CHECK(time(9h, 7h) == kitchen::TimeRange{7h, 9h});
    message.additions = {{{kitchen::When::Anchor::AfterStart, 24h * 31}, "salt", ""},
                         {{kitchen::When::Anchor::BeforeEnd, -5min}, "(!)", ""},
                         {{kitchen::When::Anchor::Halfway, 7min}, "kale", ""}};
    const auto additions = folded(message).additions;
    REQUIRE(additions.size() == 2); // what folds away is nothing to add
    CHECK(additions[0].when.offset == 24h * 30);
    CHECK(additions[1].when.offset == 0min);
}

TEST_CASE("dates have years of four digits, and days that there are") {
    const struct {
        kitchen::Date date;
        std::string_view said;
    } cases[] = {{date(1000, 1, 1), "1 JAN 1000"},
                 {date(999, 12, 31), ""},
                 {date(9999, 12, 31), "31 DEC 9999"},
                 {date(10000, 1, 1), ""},
                 {date(2027, 2, 29), ""}};
    for (const auto& [day, said] : cases) {
        CAPTURE(said);
        auto message = squash_stew();
        message.made = day;
        message.keep_until->date = day;
        CHECK(folded(message).made.has_value() == !said.empty());
        CHECK(folded(message).keep_until.has_value() == !said.empty());
        CHECK(says(message, "MADE " + std::string{said}) == !said.empty());
        CHECK(says(message, "BEST BY " + std::string{said}) == !said.empty());
        CHECK(parse(write(message)).value() == folded(message));
    }
}

TEST_CASE("what belongs to a way of thawing does not stand without it") {
    using kitchen::ThawMethod;
    for (const auto method : {ThawMethod::Refrigerator, ThawMethod::ColdWater,
                              ThawMethod::Microwave, ThawMethod::FromFrozen}) {
        auto message = squash_stew();
        message.thaw = method;
        message.thaw_note = "turn it";
        const bool cold = method == ThawMethod::Refrigerator;
        const auto kept = folded(message);
        CHECK(kept.thaw_time.has_value() == (method != ThawMethod::FromFrozen));
        CHECK(kept.placing.has_value() == cold);
        CHECK(kept.cook_within_days.has_value() == cold);
        CHECK(kept.thaw_note == "TURN IT");
        CHECK(parse(write(message)).value() == kept);
        // Without a time nothing is said of how it lies; with one, it lies on a tray.
        message.placing.reset();
        CHECK(folded(message).placing.has_value() == cold);
        message.thaw_time.reset();
        message.placing = kitchen::Placing::Rack;
        CHECK_FALSE(folded(message).placing.has_value());
    }
    auto message = squash_stew();
    message.thaw.reset();
    message.thaw_note = "turn it";
    message.other_thaws = {{ThawMethod::ColdWater, {}, {}, {}}};
    const auto bare = folded(message);
    CHECK(bare.thaw_note.empty());
    CHECK(bare.other_thaws.empty());
    CHECK_FALSE(bare.thaw_time.has_value());
}

TEST_CASE("a code says of a plan that it is raw, and how hot in the cook's own degrees") {
    auto planned = oat_bread();
    CHECK_FALSE(message_for(planned, bag).raw);
    planned.raw = true;
    CHECK(message_for(planned, bag).raw);
    planned.package.cook = kitchen::Cook{};
    planned.package.cook->steps = {"Slice it."};
    planned.package.note = "Good with plum jam";
    planned.package.thaw.note = "in its bag";
    const auto until = [&planned](double celsius, kitchen::TemperatureScale scale) {
        planned.package.cook->until = kitchen::Temperature{celsius, scale};
        return *message_for(planned, bag).cooking.until;
    };
    using enum kitchen::TemperatureScale;
    CHECK(until(74.0, Celsius) == Target{740, Celsius});
    CHECK(until(73.96, Celsius) == Target{740, Celsius});
    CHECK(until(73.94, Celsius) == Target{739, Celsius});
    CHECK(until(-18.0, Celsius) == Target{-180, Celsius});
    CHECK(until(100.0, Fahrenheit) == Target{2120, Fahrenheit}); // water boils
    CHECK(until(-40.0, Fahrenheit) == Target{-400, Fahrenheit}); // where both scales meet
    CHECK(until(1e6, Celsius) == Target{9999, Celsius});
    CHECK(until(-1e6, Fahrenheit) == Target{-9999, Fahrenheit});
    const auto message = message_for(planned, bag);
    CHECK(message.steps == std::vector<std::string>{"SLICE IT"});
    CHECK(message.note == "GOOD WITH PLUM JAM");
    CHECK(message.thaw_note == "IN ITS BAG");
}

TEST_CASE("a code warns of what stops harm, once, and says by which way of thawing") {
    using kitchen::CautionLevel;
    using kitchen::ThawMethod;
    const auto words = kitchen::words_in_code(caution(CautionLevel::Card, {}));
    REQUIRE_FALSE(words.empty());
    const auto warnings = [](std::vector<kitchen::Caution> cautions) {
        auto planned = oat_bread();
        planned.cautions = std::move(cautions);
        return message_for(planned, bag).cautions;
    };
    using Words = std::vector<std::string>;
    CHECK(warnings({caution(CautionLevel::Check, {})}).empty());
    CHECK(warnings({caution(CautionLevel::Card, {})}) == Words{words});
    CHECK(warnings({caution(CautionLevel::Card, {}), caution(CautionLevel::Card, {})}) ==
          Words{words});
    const struct {
        std::vector<ThawMethod> thawed_by;
        std::string when;
    } cases[] = {
        {{ThawMethod::Refrigerator}, "IF FROM REFRIGERATOR - "},
        {{ThawMethod::ColdWater}, "IF FROM COLD WATER - "},
        {{ThawMethod::Microwave}, "IF FROM MICROWAVE - "},
        {{ThawMethod::FromFrozen}, "IF FROZEN - "},
        {{ThawMethod::Microwave, ThawMethod::FromFrozen}, "IF FROM MICROWAVE OR FROZEN - "}};
    for (const auto& [thawed_by, when] : cases) {
        CHECK(warnings({caution(CautionLevel::Card, thawed_by)}) == Words{when + words});
    }
}

TEST_CASE("a scanner's mark is taken off where there is one, and nothing else is") {
    const auto text = write(squash_stew());
    for (const std::string& typed :
         {"]Q1" + text, "]Q3" + text, "]q1" + text, "]Q" + text, "]Q1]Q1" + text}) {
        CAPTURE(typed);
        CHECK(parse(typed).ok() == (typed.starts_with("]Q1S") || typed.starts_with("]Q3S")));
    }
    CHECK_FALSE(parse("]Q1").ok());
    CHECK_FALSE(parse("]Q").ok());
}

} // namespace message_bounds_test
