#include "days.h"
#include "service/dinner/dinner_plan.h"

#include <algorithm>
#include <doctest/doctest.h>

namespace dinner_plan_test {

using namespace thawslip;
using namespace thawslip::test_support;
using namespace std::chrono_literals;

namespace {

const auto supper = std::chrono::local_days{std::chrono::year{2026} / 12 / 3} + 18h + 30min;

service::Outcome<service::DinnerPlan> plan(const std::string& words,
                                           std::chrono::minutes before_supper) {
    const kitchen::Instant now{supper.time_since_epoch() - before_supper};
    return service::dinner_plan(packages_of(stew + gratin), {words, supper, now, {}, {}},
                                style_of(service::Settings{}));
}

} // namespace

TEST_CASE("all dishes are ready at one time, and each event has its words") {
    const auto planned = plan("", 24h * 5);
    REQUIRE(planned);
    CHECK(planned.messages.all().empty());
    const auto& [dishes, line, words, now] = *planned.value;
    CHECK(dishes.size() == 2);
    CHECK(can_be_done(line));
    REQUIRE(words.size() == line.events.size());
    const auto ready = std::ranges::count(line.events, kitchen::TimelineStep::Ready,
                                          &kitchen::TimelineEvent::what);
    CHECK(ready == 2);
    for (const auto& event : line.events) {
        CHECK(event.at <= line.eat);
        CHECK((event.what == kitchen::TimelineStep::Ready) == (event.at == line.eat));
    }
    CHECK(words.front().summary.find("Barley stew") != std::string::npos);
}

TEST_CASE("words choose a dish by the beginnings of its name's") {
    for (const auto* words : {"gratin", "cel GRA", "Céleriac"}) {
        CAPTURE(words);
        const auto planned = plan(words, 24h * 5);
        REQUIRE(planned);
        REQUIRE(planned.value->dishes.size() == 1);
        CHECK(planned.value->dishes[0].package.dish == "Celeriac gratin");
    }
    const auto none = plan("gratin barley", 24h * 5);
    CHECK_FALSE(none);
    CHECK(to_text(none.messages).starts_with("error: no dish has the words \"gratin barley\"\n"));
    CHECK(to_text(plan("Celeriac gratine", 24h).messages) ==
          "error: no dish has the words \"Celeriac gratine\"\n"
          "    hint: did you mean \"Celeriac gratin\"?\n");
}

TEST_CASE("a comma stands between several dishes") {
    const auto both = plan("gratin, barl", 24h * 5);
    REQUIRE(both);
    CHECK(both.value->dishes.size() == 2);
    CHECK(plan(" gratin , ", 24h * 5).value->dishes.size() == 1);
    CHECK(to_text(plan("gratin, medlar", 24h * 5).messages)
              .starts_with("error: no dish has the words \"medlar\"\n"));
    CHECK(to_text(plan(",", 24h * 5).messages).starts_with("error: no dish has the words \",\"\n"));
}

TEST_CASE("fewer bags than are wanted are planned, and said") {
    const kitchen::Instant now{supper.time_since_epoch() - 24h * 5};
    service::DinnerQuestion question{"barley", supper, now, {}, {}};
    question.of_each = 5;
    const auto few =
        service::dinner_plan(packages_of(stew + gratin), question, style_of(service::Settings{}));
    CHECK(few);
    CHECK(to_text(few.messages) == "caution: only 1 of 5 bags of \"Barley stew\" is there\n");
}

TEST_CASE("a calendar has what can be done, and names the dish that it misses") {
    const auto both = dinner_calendar(*plan("", 24h * 5).value);
    REQUIRE(both);
    CHECK(both.messages.all().empty());
    CHECK(both.value->starts_with("BEGIN:VCALENDAR\r\n"));
    const auto late = plan("", 55min); // too late to thaw the stew, not for 50 minutes in the oven
    REQUIRE(late);
    const auto one = dinner_calendar(*late.value);
    CHECK(one);
    CAPTURE(to_text(one.messages));
    CHECK(to_text(one.messages)
              .find("caution: Barley stew cannot be done and is left "
                    "out of the calendar\n") != std::string::npos);
    const auto none = dinner_calendar(*plan("gratin", 10min).value);
    CHECK_FALSE(none);
    CHECK(to_text(none.messages) == "error: this cannot be done, so no calendar is written\n");
}

} // namespace dinner_plan_test
