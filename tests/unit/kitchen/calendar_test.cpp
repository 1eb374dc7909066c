#include "base/utf8.h"
#include "kitchen/timeline/calendar.h"
#include "kitchen/timeline/icalendar_lines.h"

#include <doctest/doctest.h>
#include <set>
#include <sstream>

using namespace thawslip;
using namespace thawslip::kitchen;
using namespace std::chrono;
using namespace std::chrono_literals;

namespace {

const sys_seconds stamp = sys_days{2026y / November / 30} + 7h + 5min + 9s;

TimelineDish compote() {
    TimelineDish dish;
    dish.package.dish = "Plum and ginger compote";
    dish.package.weight = Mass{900};
    dish.package.thickness = Length::millimetres(20);
    dish.package.placing = Placing::Rack;
    dish.bags = {"PG-1"};
    return dish;
}

Timeline line_for(const std::vector<TimelineDish>& dishes, Instant eat) {
    return timeline({.dishes = dishes,
                     .eat = LocalMinute{eat.time_since_epoch()},
                     .now = eat - days{9},
                     .clock = {}});
}

const Instant supper = sys_days{2026y / December / 3} + 17h + 30min;

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::string::size_type start = 0;
    for (auto end = text.find("\r\n"); end != std::string::npos; end = text.find("\r\n", start)) {
        lines.push_back(text.substr(start, end - start));
        start = end + 2;
    }
    CHECK(start == text.size());
    return lines;
}

std::string unfolded(std::string text) {
    for (auto fold = text.find("\r\n "); fold != std::string::npos; fold = text.find("\r\n "))
        text.erase(fold, 3);
    return text;
}

std::set<std::string> uids_of(const std::string& calendar) {
    std::set<std::string> uids;
    for (const auto& line : lines_of(calendar)) {
        if (line.starts_with("UID:"))
            uids.insert(line);
    }
    return uids;
}

std::string written(const std::string& text) {
    ICalendarLines lines;
    lines.add_text("SUMMARY", text);
    return std::move(lines).take();
}

} // namespace

TEST_CASE("a thaw and a meal become two events with alarms") {
    const std::vector<TimelineDish> dishes{compote()};
    const auto line = line_for(dishes, supper);
    const std::vector<EventWords> words{{"Move the compote, 1 bag", "Bag PG-1"}, {"Supper", ""}};
    const auto text = calendar_text(line, dishes, words, {.stamp = stamp, .alarm_before = 10min});
    const auto lines = lines_of(text);
    const std::vector<std::string> expected{
        "BEGIN:VCALENDAR",
        "VERSION:2.0",
        "PRODID:-//Thawslip//Cook-day timeline//EN",
        "BEGIN:VEVENT",
        lines.at(4), // the UID: see below
        "DTSTAMP:20261130T070509Z",
        "DTSTART:20261202T173000Z",
        "DURATION:PT15M",
        "SUMMARY:Move the compote\\, 1 bag",
        "DESCRIPTION:Bag PG-1",
        "TRANSP:TRANSPARENT",
        "BEGIN:VALARM",
        "ACTION:DISPLAY",
        "DESCRIPTION:Move the compote\\, 1 bag",
        "TRIGGER:-PT10M",
        "END:VALARM",
        "END:VEVENT",
        "BEGIN:VEVENT",
        lines.at(18),
        "DTSTAMP:20261130T070509Z",
        "DTSTART:20261203T173000Z",
        "DURATION:PT15M",
        "SUMMARY:Supper",
        "TRANSP:TRANSPARENT",
        "BEGIN:VALARM",
        "ACTION:DISPLAY",
        "DESCRIPTION:Supper",
        "TRIGGER:-PT10M",
        "END:VALARM",
        "END:VEVENT",
        "END:VCALENDAR",
    };
    CHECK(lines == expected);
    CHECK(lines.at(4).starts_with("UID:"));
    CHECK(calendar_text(line, dishes, words, {.stamp = stamp, .alarm_before = 10min}) == text);
}

TEST_CASE(
    "what is past or can no longer be done is in no calendar, and no alarm rings in the past") {
    const std::vector<TimelineDish> dishes{compote()};
    const auto line = line_for(dishes, supper);
    const std::vector<EventWords> words{{"Move the compote", ""}, {"Supper", ""}};
    const auto thaw = line.events.at(0).at;
    const auto later = calendar_text(line, dishes, words, {.stamp = thaw + 1min});
    CHECK(later.find("Move the compote") == std::string::npos);
    CHECK(later.find("Supper") != std::string::npos);
    const auto at_once =
        calendar_text(line, dishes, words, {.stamp = thaw - 5min, .alarm_before = 10min});
    CHECK(at_once.find("TRIGGER:PT0S") < at_once.find("TRIGGER:-PT10M"));
    auto late = line;
    late.dishes.at(0).outlook = Outlook::OnlyIfThawed;
    CHECK(calendar_text(late, dishes, words, {.stamp = stamp}).empty());
}

TEST_CASE("a UID stays when the meal moves, and tells dishes, bags and steps apart") {
    const std::vector<EventWords> two(2);
    const std::vector<EventWords> four(4);
    const std::vector<TimelineDish> one{compote()};
    const auto today = uids_of(calendar_text(line_for(one, supper), one, two, {stamp}));
    const auto later = uids_of(calendar_text(line_for(one, supper + days{5}), one, two, {stamp}));
    CHECK(today.size() == 2);
    CHECK(today == later);

    auto other = one;
    other[0].bags = {"PG-2"};
    for (const auto& uid : uids_of(calendar_text(line_for(other, supper), other, two, {stamp})))
        CHECK_FALSE(today.contains(uid));

    const std::vector<TimelineDish> twins{compote(), compote()};
    CHECK(uids_of(calendar_text(line_for(twins, supper), twins, four, {stamp})).size() == 4);
}

TEST_CASE("a UUID of a name has version 8 and the variant of RFC 9562") {
    const auto uuid = uuid_of("thaw");
    REQUIRE(uuid.size() == 36);
    CHECK(uuid[8] == '-');
    CHECK(uuid[13] == '-');
    CHECK(uuid[14] == '8');
    CHECK(uuid[18] == '-');
    CHECK(std::string{"89ab"}.find(uuid[19]) != std::string::npos);
    CHECK(uuid[23] == '-');
    CHECK(uuid == uuid_of("thaw"));
    CHECK(uuid != uuid_of("thay"));
}

TEST_CASE("lines are folded at 75 octets and never inside a character") {
    for (const char* piece : {"a", "ä", "–", "\xF0\x9F\x8D\x90" /* pear */, "ab–c½"}) {
        std::string text;
        for (int i = 0; i < 120; ++i)
            text += piece;
        const auto folded = written(text);
        for (const auto& line : lines_of(folded)) {
            CHECK(line.size() <= 75);
            CHECK(line.size() > 70 - (line == lines_of(folded).back() ? 70 : 0));
            CHECK_FALSE(first_invalid_utf8(line).has_value());
        }
        CHECK(unfolded(folded) == "SUMMARY:" + text + "\r\n");
    }
}

TEST_CASE("a line of exactly 75 octets is not folded, one of 76 is") {
    const std::string fits(75 - std::string{"SUMMARY:"}.size(), 'x');
    CHECK(written(fits) == "SUMMARY:" + fits + "\r\n");
    CHECK(written(fits + "y") == "SUMMARY:" + fits + "\r\n y\r\n");
}

TEST_CASE("text is escaped, and what a calendar may not hold is left out") {
    struct Case {
        std::string text;
        std::string value;
    };
    const Case cases[] = {
        {"salt, pepper; 1\\2", "salt\\, pepper\\; 1\\\\2"},
        {"first\nsecond\r\nthird", "first\\nsecond\\nthird"},
        {"tab\tstays", "tab\tstays"},
        {std::string{"bell\a nul"} + '\0' + "\x1B[31m\x7F", "bell nul[31m"},
        {"cut \xE2\x80", "cut "},
        {"bad \xFF byte", "bad  byte"},
        {"BEGIN:VEVENT", "BEGIN:VEVENT"},
        {"", ""},
    };
    for (const auto& c : cases)
        CHECK(written(c.text) == "SUMMARY:" + c.value + "\r\n");
}

TEST_CASE("a timeline without events has no calendar") {
    CHECK(calendar_text({}, {}, {}, {stamp}).empty());
}
