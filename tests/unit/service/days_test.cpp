// Descriptions of days as values, and what a list of days says of each.

#include "days.h"
#include "service/day/day_summary.h"
#include "service/dish_words.h"

#include <algorithm>
#include <doctest/doctest.h>

namespace days_test {

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

std::string day(const std::string& made, const std::string& packages) {
    return "[day]\nmade = " + made + "\n" + packages;
}

service::Days planned(const std::vector<std::string>& texts, service::Ids ids) {
    std::vector<service::DayText> files;
    for (const auto& text : texts) {
        files.push_back({"day-" + std::to_string(files.size() + 1) + ".toml", text});
    }
    return service::plan_days(files, service::Settings{}, ids);
}

std::vector<std::string> near(const std::string& words, const std::vector<std::string>& dishes) {
    return service::near_dishes(words, dishes);
}

} // namespace

TEST_CASE("two files that would give two bags one id are told, where ids are final") {
    using service::Ids;
    const auto one = day("2026-10-17", stew);
    const auto both = planned({one, day("2026-10-17", gratin + stew)}, Ids::Final);
    REQUIRE(has_errors(both.diagnostics));
    const auto& last = both.diagnostics.back();
    CHECK(last.where.file == "day-2.toml");
    CHECK(last.where.line == 11); // of the stew's name there
    CHECK(last.message == "\"Barley stew\", made the same day, stands in day-1.toml too: its bags "
                          "would have the same ids");
    CHECK_FALSE(has_errors(planned({one, one}, Ids::Planned).diagnostics));
    CHECK_FALSE(has_errors(planned({one, day("2026-10-18", stew)}, Ids::Final).diagnostics));
    CHECK_FALSE(has_errors(planned({one, day("2026-10-17", gratin)}, Ids::Final).diagnostics));
}

TEST_CASE("one file that is named twice is told so, once") {
    const auto text = day("2026-10-17", stew + gratin);
    const auto days = service::plan_days({{"day.toml", text, {}, "/orchard/day.toml"},
                                          {"./day.toml", text, {}, "/orchard/day.toml"}},
                                         service::Settings{}, service::Ids::Final);
    CHECK(std::ranges::count(days.diagnostics, Severity::Error, &Diagnostic::severity) == 1);
    CHECK(to_text(days.diagnostics.back()) ==
          "./day.toml: error: this file is named twice\n    hint: name it once\n");
}

TEST_CASE("packages of all days come in order, each with its first bags") {
    auto text = stew;
    text.insert(text.find("servings"), "bags = 3\n");
    const auto days =
        planned({day("2026-10-17", text), day("2026-10-18", gratin)}, service::Ids::Final);
    REQUIRE_FALSE(has_errors(days.diagnostics));
    const auto all = packages_of(days);
    REQUIRE(all.size() == 2);
    CHECK(all[0].bags.size() == 3);
    CHECK(all[1].package.dish == "Celeriac gratin");
    CHECK(packages_of(days, 3)[0].bags.size() == 3);
    CHECK(packages_of(days, 2)[0].bags.size() == 2);
    CHECK(packages_of(days, 2)[0].bags.back().number == 2);
    CHECK(bag_ids(days).size() == 4);
}

TEST_CASE("a day is told by its text alone, however unfinished that is") {
    const auto whole = service::summary_of(
        day("2026-10-17", "[[package]]\ndish = \"Stew\"\nbags = 3\n[[package]]\ndish = \"Gratin\"\n"
                          "[[package]]\nbags = 0\n"));
    CHECK(whole.is_readable);
    CHECK(whole.is_day);
    CHECK(kitchen::to_iso(*whole.made) == "2026-10-17");
    CHECK(whole.dishes == std::vector<std::string>{"Stew", "Gratin"});
    CHECK(whole.bags == 4); // one where nothing is said
    const auto other = service::summary_of("[labels]\nstock = \"roll\"\n");
    CHECK(other.is_readable);
    CHECK_FALSE(other.is_day);
    CHECK_FALSE(other.made);
    CHECK(other.bags == 0);
    const auto broken = service::summary_of("[day\n");
    CHECK_FALSE(broken.is_readable);
    CHECK(broken.is_day); // it may be one
    CHECK(service::summary_of("[day]\n").is_day);
    CHECK(service::summary_of("[[package]]\n").is_day);
    CHECK_FALSE(service::summary_of("[day]\nmade = \"soon\"\n").made);
}

TEST_CASE("bags of a dish in several sizes are added up, and no number is believed too far") {
    const auto bags = [](const std::string& package) {
        return service::summary_of("[[package]]\n" + package).bags;
    };
    CHECK(bags("[[package.size]]\nbags = 2\n[[package.size]]\nservings = 1\n") == 3);
    CHECK(bags("size = [{bags = 4}, {bags = 5}]\nbags = 100\n") == 9);
    CHECK(bags("bags = -3\n") == 0);
    CHECK(bags("bags = 10000\n") == 10'000);
    CHECK(bags("bags = 999999999999\n") == 10'000);
    CHECK(bags("bags = \"many\"\n") == 1);
}

TEST_CASE("the dish that was meant is named, else the nearest three, the only one or none") {
    const std::vector<std::string> dishes{"Barley stew", "Celeriac gratin", "Plum compote",
                                          "Quince butter"};
    CHECK(near("celeriak", dishes) ==
          std::vector<std::string>{"did you mean \"Celeriac gratin\"?"});
    CHECK(near("BARLEY STEWS", dishes) ==
          std::vector<std::string>{"did you mean \"Barley stew\"?"});
    const auto nearest = near("xyzzyplugh", dishes);
    REQUIRE(nearest.size() == 1);
    CHECK(nearest[0].starts_with("the nearest are "));
    CHECK(std::ranges::count(nearest[0], '"') == 6);
    CHECK(near("xyzzyplugh", {"Barley stew"}) ==
          std::vector<std::string>{"the only dish is \"Barley stew\""});
    CHECK(near("xyzzyplugh", {"Barley stew", "Barley stew"}) ==
          std::vector<std::string>{"the only dish is \"Barley stew\""});
    CHECK(near("barley", {}).empty());
    CHECK(near("\xFF", {"Barley stew"}) ==
          std::vector<std::string>{"the only dish is \"Barley stew\""});
}

TEST_CASE("words are those of a dish where each begins one of its words") {
    CHECK(service::has_words("Squash and red lentil stew", "len squ"));
    CHECK_FALSE(service::has_words("Squash and red lentil stew", "lentil soup"));
    CHECK_FALSE(service::has_words("Squash and red lentil stew", "entil"));
    CHECK_FALSE(service::has_words("Squash and red lentil stew", " , "));
    CHECK(service::has_words("Crème of parsnip", "CREME"));
    CHECK(service::are_all_of("crème OF parsnip", "Creme of Parsnip"));
    CHECK_FALSE(service::are_all_of("creme parsnip", "Creme of Parsnip"));
}

} // namespace days_test
