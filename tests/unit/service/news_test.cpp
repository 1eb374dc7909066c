// What is said after a print has been recorded.

#include "kitchen/bag_id.h"
#include "records.h"
#include "service/record/made_otherwise.h"
#include "service/record/print_record.h"
#include "support/command.h"

#include <doctest/doctest.h>

namespace news_test {

using namespace thawslip;
using namespace thawslip::test_support;
using archive::Recorded;

namespace {

archive::PrintRecord print_of(const std::vector<archive::DayRecord>& days,
                              const std::string& at = "2026-10-17T14:05:00") {
    archive::PrintRecord print;
    print.at = at;
    print.setup.what = "labels";
    print.days = days;
    return print;
}

archive::DayRecord day(kitchen::Date made, const std::string& file,
                       const std::vector<archive::PackageRecord>& packages) {
    return {made, "", file, "# " + kitchen::to_iso(made) + file, packages};
}

std::string told(const Recorded& recorded, const service::Chosen& chosen = {}) {
    const auto print = print_of({day(october(17), "", {package("stew", october(17), 2)}),
                                 day(october(17), "", {package("soup", october(17), 1)})});
    return to_text(service::news_of(recorded, print, chosen));
}

bool says(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

const std::string second_bag = kitchen::bag_id({"stew", october(17), 2});
const std::string soup = kitchen::bag_id({"soup", october(17), 1});

/// An archive in which one file was printed.
struct Kept {
    ScratchFolder folder;
    archive::Archive archive =
        std::move(archive::Archive::open(folder / "archive.db", archive::Mode::Write)).value();

    std::string record_then_tell(const archive::DayRecord& first,
                                 const archive::DayRecord& second) {
        archive.record(print_of({first}));
        const auto print = print_of({second}, "2026-10-17T14:10:00");
        const auto recorded = archive.record(print);
        return to_text(service::made_otherwise(archive, print, recorded));
    }
};

} // namespace

TEST_CASE("what the first print means is said once, with a bag that was printed") {
    Recorded first;
    first.is_first_print = true;
    CHECK(says(told(first),
               "thawslip freezer never-filled " + kitchen::bag_id({"stew", october(17), 1}) + "."));
    CHECK(says(told(first, {.bags = std::set{second_bag}}), "never-filled " + second_bag + "."));
    CHECK(says(told(first, {.bags = std::set{soup}}), "never-filled " + soup + "."));
    CHECK(told(first, {.bags = std::set<std::string>{}}) == "");
    CHECK(told({}) == "");
}

TEST_CASE("bags that were renamed, dropped or labelled otherwise are named") {
    Recorded recorded;
    recorded.renamed = {{"AAA", "BBB"}};
    CHECK(says(told(recorded), "note: bag AAA is BBB now: "));
    recorded = {};
    recorded.dropped = {"CCC"};
    CHECK(says(told(recorded), "note: bag CCC was printed before and is no longer described; if "
                               "there is no such bag: thawslip freezer never-filled CCC; if its "
                               "dish has another name now: thawslip freezer renamed CCC "));
    recorded = {};
    recorded.relabelled = {second_bag};
    CHECK(says(told(recorded), "caution: bag " + second_bag + " was printed before with other "));
    CHECK_FALSE(says(told(recorded), "hint: its new one is not among these"));
    CHECK_FALSE(says(told(recorded, {.bags = std::set{second_bag}}), "hint: "));
    CHECK(says(told(recorded, {.bags = std::set{soup}}),
               "hint: its new one is not among these: --bag " + second_bag + ", or --only-new"));
}

TEST_CASE_FIXTURE(Kept,
                  "a date that was put right within a week leaves bags behind, which is said") {
    const auto said =
        record_then_tell(day(october(17), "/day.toml", {package("stew", october(17), 2)}),
                         day(october(24), "/day.toml", {package("stew", october(24), 2)}));
    CHECK(says(said, "caution: /day.toml was printed with made = 2026-10-17 before"));
    CHECK(says(said, "thawslip freezer never-filled " + kitchen::bag_id({"stew", october(17), 1}) +
                         " " + second_bag + "\n"));
}

TEST_CASE("another week, another dish, another file or the same date leaves nothing behind") {
    const auto first = day(october(17), "/day.toml", {package("stew", october(17), 2)});
    struct Case {
        const char* what;
        archive::DayRecord second;
    };
    for (const auto& [what, now] :
         {Case{"a week and a day",
               day(october(25), "/day.toml", {package("stew", october(25), 2)})},
          Case{"another dish", day(october(18), "/day.toml", {package("soup", october(18), 2)})},
          Case{"another file", day(october(18), "/two.toml", {package("stew", october(18), 2)})},
          Case{"the same again", first}}) {
        CAPTURE(std::string{what});
        Kept kept;
        CHECK(kept.record_then_tell(first, now) == "");
    }
    Kept backwards;
    CHECK(says(backwards.record_then_tell(
                   first, day(october(10), "/day.toml", {package("stew", october(10), 2)})),
               "made = 2026-10-17 before"));
    Kept nameless;
    CHECK(nameless.record_then_tell(day(october(17), "", {package("stew", october(17), 2)}),
                                    day(october(18), "", {package("stew", october(18), 2)})) == "");
}

} // namespace news_test
