// What a code says of several ways to thaw: grammar 3.

#include "code/grammars.h"
#include "code/message.h"
#include "unit/code/samples.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::code;
using thawslip::test_support::squash_stew;
using namespace std::chrono_literals;

namespace {

Message with_choice() {
    auto message = squash_stew();
    message.other_thaws = {{kitchen::ThawMethod::ColdWater, kitchen::TimeRange{3h, 3h}, {}, {}},
                           {kitchen::ThawMethod::FromFrozen, {}, {}, {}}};
    return message;
}

bool has(const std::string& text, std::string_view part) {
    return text.find(part) != std::string::npos;
}

} // namespace

TEST_CASE("each other way to thaw has a line of its own, below the first") {
    const auto text = write(with_choice());
    CHECK(has(text,
              "\nTHAW IN REFRIGERATOR ON A TRAY * LOOK FROM 31 H * ALLOW 46 H * COOK WITHIN 3 "
              "DAYS\nOR THAW IN COLD WATER MAX 21 C / 70 F * ALLOW 3 H * COOK AT ONCE\nOR "
              "COOK FROM FROZEN\n"));
    CHECK(has(text, "\nEND 3"));
    const auto read = parse(text);
    REQUIRE(read.ok());
    CHECK(read.value() == folded(with_choice()));
}

TEST_CASE(
    "from frozen, a cooking time of thawed food has its own beside it, or that it is longer") {
    auto message = with_choice();
    message.cooking.time = kitchen::TimeRange{2h, 2h};
    auto& frozen = message.other_thaws.back();
    frozen.cook_time = kitchen::TimeRange{3h, 3h};
    CHECK(has(write(message), "\nOR COOK FROM FROZEN * FOR 3 H\n"));
    CHECK(parse(write(message)).value() == folded(message));
    frozen.cook_time.reset();
    frozen.cooks_longer = true;
    CHECK(has(write(message), "\nOR COOK FROM FROZEN * FOR LONGER\n"));
    CHECK(parse(write(message)).value() == folded(message));
    // Nothing of it where the time holds for that way, or none is said.
    message.cooking.time.reset();
    CHECK(has(write(message), "\nOR COOK FROM FROZEN\n"));
    message.cooking.time = kitchen::TimeRange{2h, 2h};
    frozen.thaw = kitchen::ThawMethod::Microwave;
    CHECK_FALSE(has(write(message), "LONGER"));
}

TEST_CASE("a text with one way to thaw is written as it always was") {
    CHECK(has(write(squash_stew()), "\nEND 2"));
    CHECK(write(squash_stew()) == write(squash_stew(), grammar_2));
}

TEST_CASE("where there is a choice nothing says that it must not thaw") {
    auto message = with_choice();
    message.thaw = kitchen::ThawMethod::FromFrozen;
    message.thaw_note = "turn it over";
    message.other_thaws = {
        {kitchen::ThawMethod::Microwave, kitchen::TimeRange{30min, 30min}, {}, {}}};
    const auto text = write(message);
    CHECK_FALSE(has(text, "DO NOT THAW"));
    CHECK(has(text, "\nCOOK FROM FROZEN * NOTE TURN IT OVER\nOR THAW IN MICROWAVE * ALLOW 30 MIN * "
                    "COOK AT ONCE\n"));
    const auto read = parse(text);
    REQUIRE(read.ok());
    CHECK(read.value() == folded(message));
}

TEST_CASE("a dish whose name begins as another way does is a dish all the same") {
    auto message = with_choice();
    message.dish = "Or thaw in cold water";
    message.cooking = {};
    message.cooking.in = "frozen pan";
    const auto read = parse(write(message));
    REQUIRE(read.ok());
    CHECK(read.value() == folded(message));
}

TEST_CASE("the shorter forms leave out the other ways and keep the first") {
    const auto forms = texts(with_choice());
    CHECK(has(forms.front(), "\nOR THAW IN COLD WATER"));
    CHECK_FALSE(has(forms[forms.size() - 2], "\nOR "));
    CHECK(has(forms[forms.size() - 3], "THAW IN REFRIGERATOR"));
    for (const auto& form : forms) {
        CHECK(parse(form).ok());
    }
}
