// A dinner's plan in words.

#include "days.h"
#include "service/dinner/dinner_plan.h"
#include "service/dinner/plan_text.h"

#include <doctest/doctest.h>

namespace plan_text_test {

using namespace thawslip;
using namespace thawslip::test_support;
using namespace std::chrono_literals;

namespace {

const auto supper = std::chrono::local_days{std::chrono::year{2026} / 12 / 3} + 18h + 30min;

std::string text_of(const std::string& packages, std::chrono::minutes before_supper) {
    const kitchen::Instant now{supper.time_since_epoch() - before_supper};
    const auto style = style_of(service::Settings{});
    const auto plan = service::dinner_plan(packages_of(packages), {"", supper, now, {}, {}}, style);
    REQUIRE(plan);
    return service::plan_text(*plan.value, style);
}

bool says(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

std::size_t count(const std::string& text, const std::string& words) {
    std::size_t times = 0;
    for (auto at = text.find(words); at != std::string::npos; at = text.find(words, at + 1)) {
        ++times;
    }
    return times;
}

} // namespace

TEST_CASE("each day stands once above what is done on it, with a line between two days") {
    const auto text = text_of(stew + gratin, 24h * 5);
    CAPTURE(text);
    CHECK(
        text.starts_with("Mon 30 Nov 2026\n  07:00  Move 1 bag of Barley stew from the freezer to "
                         "the refrigerator\n         No earlier than "));
    CHECK(count(text, "Thu 3 Dec 2026\n") == 1);
    CHECK(says(text, "\n\nThu 3 Dec 2026\n  "));
    CHECK(says(text, "\n  18:30  "));
    CHECK_FALSE(says(text, "\n\n\n"));
    CHECK(text.ends_with("Local food-safety rules come first.\n"));
    CHECK_FALSE(says(text, "cannot be done"));
}

TEST_CASE("what cannot be ready comes first, with numbered ways, and the rest is planned") {
    const auto text = text_of(stew + gratin, 6h);
    CAPTURE(text);
    CHECK(text.starts_with(
        "Too late for Barley stew as planned. What can still be done, the best "
        "first:\n  1. Still possible in cold water: in by Thu 3 Dec 2026, 14:30, "));
    CHECK(says(text, "\n  2. Still possible in the microwave: in by Thu 3 Dec 2026, 17:25, "));
    CHECK(says(text, "\n  If it has thawed already, start cooking it at Thu 3 Dec 2026, 18:00.\n"));
    CHECK(
        says(text, "do not hurry it on the counter or in hot water.\n\nThu 3 Dec 2026\n  14:30  "));
    CHECK(says(text,
               "\n  17:40  Start cooking 1 bag of Celeriac gratin from frozen: oven, 50 min\n"));
    const auto in_time = text_of(stew + gratin, 24h * 5);
    CHECK_FALSE(says(in_time, "  1. "));
}

TEST_CASE("how much a remark matters is a word of its own") {
    CHECK(service::weight_word(kitchen::RemarkWeight::Note) == "note");
    CHECK(service::weight_word(kitchen::RemarkWeight::Caution) == "caution");
    CHECK(service::weight_word(kitchen::RemarkWeight::CannotBeDone) == "cannot be done");
}

} // namespace plan_text_test
