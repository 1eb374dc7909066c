#include "support/command.h"

#include <doctest/doctest.h>
#include <filesystem>

namespace plan_test {

using namespace thawslip::test_support;

namespace {

const std::string day = shell_word(std::string{THAWSLIP_SOURCE_DIR} + "/samples/orchard-day.toml");

/// Plans the sample day; `zone` is a POSIX time zone rule, so that no zone file is needed.
Outcome plan(const std::string& arguments, const std::string& zone = "UTC0") {
    const ScratchFolder none; // no settings but the defaults
    return run("XDG_CONFIG_HOME=" + shell_word(none.path().string()) + " TZ=" + shell_word(zone) +
               " " + THAWSLIP_PROGRAM + " plan " + day + " " + arguments);
}

bool has(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

// Central European Time by its rule: forward on the last Sunday of March, back on that of October
// (Directive 2000/84/EC; the notation: IEEE Std 1003.1-2017, 8.3, TZ).
const std::string central_europe = "CET-1CEST,M3.5.0,M10.5.0/3";

} // namespace

TEST_CASE("a dish is planned backwards from the time to eat") {
    const auto outcome =
        plan("--dish 'lentil stew' --eat '2026-12-03 18:30' --now '2026-11-30 09:00'");
    CHECK(outcome.status == 0);
    CHECK(outcome.err.empty());
    // 8 h, the middle of 7–9 h, before 18:30; thawed for 31 h before that.
    CHECK(has(outcome.out, "10:30  Start cooking 1 bag of Squash and red lentil stew: slow cooker, "
                           "low, 7–9 h"));
    CHECK(has(outcome.out, "From Thu 3 Dec 2026, 09:30; the latest start is Thu 3 Dec 2026, 11:30, "
                           "if the shortest time is enough"));
    CHECK(has(outcome.out, "Move 1 bag of Squash and red lentil stew from the freezer to the "
                           "refrigerator"));
    CHECK(
        has(outcome.out, "10:30  Add 1 l (4¼ cups) vegetable stock to Squash and red lentil stew"));
    CHECK(has(outcome.out, "18:20  Add 200 g (7 oz) baby spinach to Squash and red lentil stew"));
    CHECK(has(outcome.out, "18:30  Squash and red lentil stew: ready"));
    // At the door of the refrigerator (safefood, Ireland: Defrosting food safely, read in a copy).
    CHECK(has(outcome.out, "Thaw it on the lowest shelf, a plate or tray under it"));
    CHECK(has(outcome.out, "Local food-safety rules come first."));
}

TEST_CASE(
    "a file is planned by its ending, or because it is there, and else the archive is asked") {
    const ScratchFolder folder;
    std::filesystem::copy_file(THAWSLIP_SOURCE_DIR "/samples/orchard-day.toml",
                               folder / "saturday");
    const auto asked = [&](const std::string& word) {
        return run("cd " + shell_word(folder.path().string()) + " && XDG_CONFIG_HOME=. " +
                   THAWSLIP_PROGRAM + " --archive none.db plan " + word +
                   " --eat '2026-12-03 18:30' --now '2026-11-20 09:00'");
    };
    CHECK(asked("saturday").status == 0);
    CHECK(has(asked("sunday.toml").err, "sunday.toml: error: there is no such file\n"));
    CHECK(has(asked("sunday").err, "error: there is no file \"sunday\", and nothing has been"));
}

TEST_CASE("all dishes of a table share one plan in order of time") {
    const auto outcome = plan("--eat '2026-12-03 18:30' --now '2026-11-20 09:00'");
    CHECK(outcome.status == 0);
    CHECK(has(outcome.out,
              "caution: From Thu 3 Dec 2026, 17:45 to Thu 3 Dec 2026, 18:30 more than one thing "
              "here needs the same appliance: "));
    const char* in_order[] = {
        "10:30  Start cooking 1 bag of Squash", "Start cooking 1 bag of RAW\u00A0·\u00A0Apple",
        "18:20  Add 200 g (7 oz) baby spinach", "18:30  Plum and ginger compote: ready"};
    std::size_t at = 0;
    for (const char* words : in_order) {
        CAPTURE(words);
        const auto found = outcome.out.find(words);
        REQUIRE(found != std::string::npos);
        CHECK(found > at);
        at = found;
    }
}

TEST_CASE("a thaw that cannot make it is said, with the faster ways, and is status 1") {
    const auto outcome =
        plan("--dish 'apple pork' --eat '2026-12-03 18:30' --now '2026-12-03 08:00'");
    // What can still be done is said first, then what no longer can, then the steps.
    CHECK(outcome.out.starts_with("Too late for Apple and sage pork shoulder as planned. What can "
                                  "still be done, the best first:\n  1. Still possible in cold "
                                  "water"));
    const auto no_longer = outcome.out.find("No longer possible: It had to start thawing by");
    REQUIRE(no_longer != std::string::npos);
    CHECK(no_longer < outcome.out.find("Start cooking"));
    CHECK_FALSE(has(outcome.out, "Tue 1 Dec 2026\n")); // no step of two days ago
    const auto late = plan("--dish 'apple pork' --eat '2026-12-03 18:30' --now '2026-12-03 18:00'");
    CHECK(late.status == 1);
    CHECK(has(late.out, "no safe way is quick enough: eat something else"));
}

TEST_CASE("a time to eat that is past is said, and no calendar is written") {
    const ScratchFolder folder;
    const auto file = folder / "plan.ics";
    const auto outcome =
        plan("--eat '2026-12-03 18:30' --now '2026-12-04 08:00' --calendar " + shell_word(file));
    CHECK(outcome.status == 1);
    CHECK(has(outcome.out, "The time to eat, Thu 3 Dec 2026, 18:30, has already passed."));
    CHECK(has(outcome.err, "no calendar is written"));
    CHECK_FALSE(std::filesystem::exists(file));
}

TEST_CASE("a calendar of our own is replaced, and nobody else's") {
    const ScratchFolder folder;
    const auto file = folder / "plan.ics";
    const auto command =
        "--eat '2026-12-03 18:30' --now '2026-11-28 08:00' --calendar " + shell_word(file);
    REQUIRE(plan(command).status == 0);
    CHECK(plan(command).status == 0);
    const std::string birthdays =
        "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//Family//Birthdays//EN\r\n";
    write_file(file, birthdays);
    const auto refused = plan(command);
    CHECK(refused.status == 1);
    CHECK(has(refused.err, "is a calendar that thawslip did not write; nothing written"));
    CHECK(read_file(file) == birthdays);
}

TEST_CASE("the calendar of a late plan holds what can still be done, with its cautions") {
    const ScratchFolder folder;
    const auto file = folder / "plan.ics";
    const auto late =
        "--eat '2026-12-03 18:30' --now '2026-12-03 11:00' --calendar " + shell_word(file);
    const auto outcome = plan(late);
    CHECK(outcome.status == 1); // the stew can no longer be
    CHECK(has(outcome.err, "Squash and red lentil stew cannot be done"));
    const auto calendar = read_file(file);
    CHECK_FALSE(has(calendar, "lentil"));
    CHECK(has(calendar, "Apple and sage pork shoulder"));
    CHECK(has(calendar, "Cook at once"));
    CHECK_FALSE(has(calendar, "DTSTART:20261202")); // nothing of the day before
    const auto json = plan("--dish 'apple pork' --eat '2026-12-03 18:30' --now '2026-12-03 08:00' "
                           "--json");
    CHECK(
        has(json.out, R"("ways":[{"dish":"Apple and sage pork shoulder","method":"cold water",)"));
    CHECK(has(json.out, R"("cautions":[")"));
}

TEST_CASE("clock changes come from TZ: forward, back, skipped and repeated") {
    struct Case {
        const char* eat;
        const char* words;
    };
    const Case cases[] = {
        {"2027-03-28 12:00", "At Sun 28 Mar 2027, 03:00 the clock will have gone forward by 1 h"},
        {"2026-10-25 12:00", "At Sun 25 Oct 2026, 02:00 the clock will have gone back by 1 h"},
        {"2027-03-28 02:30", "it is taken as Sun 28 Mar 2027, 03:30"},
        {"2026-10-25 02:30", "The clock shows the time to eat twice that day"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.eat);
        const auto outcome =
            plan("--dish stew --eat '" + std::string{c.eat} + "' --now '2026-10-18 08:00'",
                 central_europe);
        CHECK(has(outcome.out, c.words));
    }
    // Spans are real time: eight hours before noon of the short day is 03:00 of winter time.
    const auto spring = plan("--dish stew --eat '2027-03-28 12:00' --now '2027-03-20 08:00' --json",
                             central_europe);
    CHECK(has(spring.out, R"("at":"2027-03-28T04:00","what":"start")"));
    const auto long_night = plan(
        "--dish stew --eat '2027-03-28 10:00' --now '2027-03-20 08:00' --json", central_europe);
    CHECK(has(long_night.out, R"("at":"2027-03-28T01:00","what":"start")"));
}

TEST_CASE("JSON has local times, the step, the dish, its bags and words") {
    const auto outcome =
        plan("--dish stew --bags 2 --eat 2026-12-03T18:30 --now '2026-11-30 09:00' --json");
    CHECK(outcome.status == 0);
    CHECK(has(outcome.out, R"({"eat":"2026-12-03T18:30","ways":[],"events":[{"at":"2026-12-0)"));
    CHECK(has(outcome.out, R"("what":"thaw","dish":"Squash and red lentil stew","bags":[")"));
    CHECK(has(outcome.out, R"("at":"2026-12-03T18:20","what":"add")"));
    CHECK(has(outcome.out, R"("at":"2026-12-03T18:30","what":"ready")"));
    CHECK(run("printf %s " + shell_word(outcome.out) + " | python3 -m json.tool").status == 0);
}

TEST_CASE("the calendar has an event with an alarm for each step, and the same bytes each time") {
    const ScratchFolder folder;
    const auto file = folder / "plan.ics";
    const auto arguments =
        "--dish stew --eat '2026-12-03 18:30' --now '2026-11-30 09:00' --calendar " +
        shell_word(file);
    CHECK(plan(arguments, central_europe).status == 0);
    const auto first = read_file(file);
    CHECK(first.starts_with("BEGIN:VCALENDAR\r\n"));
    CHECK(has(first, "DTSTART:20261203T093000Z")); // 10:30 in Central Europe
    CHECK(has(first, "BEGIN:VALARM"));
    CHECK(plan(arguments, central_europe).status == 0);
    CHECK(read_file(file) == first);
}

TEST_CASE("a wrong time is status 2, an unknown dish status 1 with the nearest") {
    for (const char* wrong : {"tomorrow", "2026-02-30 12:00", "2026-12-03", "2026-12-03 25:00",
                              "2026-12-03 18:3", "2026-12-03  18:30"}) {
        CAPTURE(wrong);
        const auto outcome = plan("--eat '" + std::string{wrong} + "'");
        CHECK(outcome.status == 2);
        CHECK(has(outcome.err, "is not a date and time; expected one such as"));
    }
    const auto outcome = plan("--eat '2026-12-03 18:30' --dish 'Plum and ginger kompote'");
    CHECK(outcome.status == 1);
    CHECK(has(outcome.err, "did you mean \"Plum and ginger compote\"?"));
}

TEST_CASE("check holds the day against the freezer and names each batch") {
    const ScratchFolder none;
    const auto outcome = run("XDG_CONFIG_HOME=" + shell_word(none.path().string()) + " " +
                             THAWSLIP_PROGRAM + " check --why " + day);
    CHECK(outcome.status == 0);
    // 3 × 2.2 + 2 × 2.6 + 4 × 1.4 + 3 × 2 + 2 × 1.2 = 25.8 kg. 180 l are 6.36 cubic feet: 2 lb
    // each are 5.77 kg, 3 lb 8.65 kg (USDA, Canning, Freezing, Storing Garden Produce).
    CHECK(has(outcome.out, "the freezer: 25.8 kg (56 lb 14 oz) in one day; the limit in 24 h is "
                           "5.77 kg (12 lb 11 oz) to 8.65 kg (19 lb 1 oz): over the limit"));
    CHECK(has(outcome.out, "batches, a day apart"));
    CHECK(has(outcome.out, "    batch 1, "));
    CHECK(has(outcome.out, "thaw: 46 h, by heat transfer through its thickness"));
    CHECK(
        has(outcome.out, "a soup's 88 % water, on a rack, air on both faces; looked at from 30 h"));
    CHECK(has(outcome.out, "thaw: cooked from frozen"));
}

} // namespace plan_test
