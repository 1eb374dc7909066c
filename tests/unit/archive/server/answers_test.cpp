// What was asked ahead: when a change makes an answer wrong.

#include "archive/tables/server/answers.h"

#include <doctest/doctest.h>

using namespace thawslip::archive;

TEST_CASE("a question is about a change of a table that it names, by the whole of its name") {
    const std::string insert = "INSERT INTO bag (id) VALUES ($1)";
    CHECK(is_about("SELECT id FROM bag", insert));
    CHECK(is_about("SELECT bag.id FROM day, bag WHERE bag.day = day.id", insert));
    CHECK(is_about("SELECT id FROM bag_id JOIN bag ON bag.id = bag_id.bag", insert));
    CHECK_FALSE(is_about("SELECT id FROM bag_id", insert));
    CHECK_FALSE(is_about("SELECT id FROM handbag", insert));
    CHECK(is_about("SELECT id FROM day", "UPDATE day SET made = $1"));
    CHECK(is_about("SELECT id FROM day", "DELETE FROM day WHERE id = $1"));
    CHECK_FALSE(is_about("SELECT id FROM day", insert));
    CHECK_FALSE(is_about("SELECT id FROM day", "SELECT id FROM day"));
}

TEST_CASE("an answer is good once, and not after a change of what it is about") {
    const Asked bags{"SELECT count(*) FROM bag", {}};
    const Asked days{"SELECT count(*) FROM day WHERE id > $1", {std::int64_t{7}}};
    Answers answers;
    answers.put(bags, {{}, 1, {std::int64_t{3}}});
    answers.put(days, {{}, 1, {std::int64_t{4}}});
    answers.forget_changed("UPDATE bag SET day = 1");
    CHECK_FALSE(answers.has(bags));
    const auto taken = answers.take(days);
    REQUIRE(taken.has_value());
    CHECK(std::get<std::int64_t>(taken->at(0, 0)) == 4);
    CHECK_FALSE(answers.take(days).has_value());
    answers.put(bags, {});
    answers.clear();
    CHECK_FALSE(answers.has(bags));
}
