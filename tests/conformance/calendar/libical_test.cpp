// What we write as RFC 5545 text, an independent reader (libical) must read without a fault and
// find as it was meant.

#include "kitchen/timeline/calendar.h"

#include <doctest/doctest.h>
#include <libical/ical.h>
#include <memory>

using namespace thawslip;
using namespace thawslip::kitchen;
using namespace std::chrono;
using namespace std::chrono_literals;

namespace {

struct FreeComponent {
    void operator()(icalcomponent* component) const { icalcomponent_free(component); }
};
using Component = std::unique_ptr<icalcomponent, FreeComponent>;

Finish added(const char* item, When when) {
    Finish finish;
    finish.add.item = item;
    finish.when = when;
    return finish;
}

std::vector<TimelineDish> supper_dishes() {
    TimelineDish stew;
    stew.package.dish = "Squash and red lentil stew";
    stew.package.weight = Mass{2200};
    stew.package.thickness = Length::millimetres(30);
    stew.package.finish = {added("stock", {When::Anchor::AtStart, 0min}),
                           added("spinach", {When::Anchor::BeforeEnd, 10min})};
    stew.package.cook = Cook{};
    stew.package.cook->time = TimeRange{7h, 9h};
    stew.bags = {"QS-1", "QS-2"};
    TimelineDish compote;
    compote.package.dish = "Plum and ginger compote";
    compote.package.weight = Mass{900};
    return {stew, compote};
}

Timeline supper(const std::vector<TimelineDish>& dishes, LocalMinute eat) {
    return timeline({.dishes = dishes,
                     .eat = eat,
                     .now = sys_days{2026y / October / 17},
                     .clock = {120min, {{sys_days{2026y / October / 25} + 1h, 60min}}}});
}

/// Hard words: escapes, two scripts' worth of octets, a line break, and long enough to be folded.
EventWords words_of(std::size_t event) {
    return {.summary = "Schritt " + std::to_string(event) +
                       ": Kürbis–Linsen-Eintopf; 2 bags, ½ l Brühe \\ \xF0\x9F\x8D\x90 " +
                       std::string(90, 'x'),
            .description = "first line\nsecond line, with; all\\of it"};
}

time_t seconds_of(Instant when) {
    return static_cast<time_t>(duration_cast<seconds>(when.time_since_epoch()).count());
}

} // namespace

TEST_CASE("libical reads every event back at its time, with its words and its alarm") {
    const auto dishes = supper_dishes();
    // Over the autumn change, so that UTC and the clock differ by two offsets.
    const auto line = supper(dishes, local_days{2026y / October / 25} + 18h + 30min);
    std::vector<EventWords> words;
    for (std::size_t i = 0; i < line.events.size(); ++i)
        words.push_back(words_of(i));
    const auto text = calendar_text(
        line, dishes, words, {.stamp = sys_days{2026y / October / 17} + 9h, .alarm_before = 5min});

    const Component calendar{icalparser_parse_string(text.c_str())};
    REQUIRE(calendar != nullptr);
    CHECK(icalcomponent_isa(calendar.get()) == ICAL_VCALENDAR_COMPONENT);
    CHECK(icalcomponent_count_errors(calendar.get()) == 0);
    CHECK(icalrestriction_check(calendar.get()) == 1);
    CHECK(icalcomponent_count_errors(calendar.get()) == 0);
    REQUIRE(icalcomponent_count_components(calendar.get(), ICAL_VEVENT_COMPONENT) ==
            static_cast<int>(line.events.size()));

    std::size_t i = 0;
    for (auto* event = icalcomponent_get_first_component(calendar.get(), ICAL_VEVENT_COMPONENT);
         event != nullptr;
         ++i, event = icalcomponent_get_next_component(calendar.get(), ICAL_VEVENT_COMPONENT)) {
        CAPTURE(i);
        const auto start = icalcomponent_get_dtstart(event);
        CHECK(icaltime_is_utc(start));
        CHECK(icaltime_as_timet(start) == seconds_of(line.events[i].at));
        CHECK(icaldurationtype_as_int(icalcomponent_get_duration(event)) == 15 * 60);
        CHECK(icalcomponent_get_summary(event) == words[i].summary);
        CHECK(icalcomponent_get_description(event) == words[i].description);
        CHECK(icalcomponent_count_properties(event, ICAL_UID_PROPERTY) == 1);
        CHECK(std::string{icalcomponent_get_uid(event)}.size() == 36);
        CHECK(icalcomponent_count_properties(event, ICAL_DTSTAMP_PROPERTY) == 1);
        CHECK(icaltime_as_timet(icalcomponent_get_dtstamp(event)) ==
              seconds_of(sys_days{2026y / October / 17} + 9h));

        auto* alarm = icalcomponent_get_first_component(event, ICAL_VALARM_COMPONENT);
        REQUIRE(alarm != nullptr);
        auto* action = icalcomponent_get_first_property(alarm, ICAL_ACTION_PROPERTY);
        CHECK(icalproperty_get_action(action) == ICAL_ACTION_DISPLAY);
        auto* trigger = icalcomponent_get_first_property(alarm, ICAL_TRIGGER_PROPERTY);
        CHECK(icaldurationtype_as_int(icalproperty_get_trigger(trigger).duration) == -5 * 60);
    }
    CHECK(i == line.events.size());
}

TEST_CASE("libical finds the fault in a calendar that is not as RFC 5545 wants it") {
    // That the checks above can fail.
    struct Case {
        const char* name;
        std::string find;
        std::string put;
    };
    const Case cases[] = {
        {"no version", "VERSION:2.0\r\n", ""},
        {"two UIDs", "UID:", "UID:x\r\nUID:"},
        {"a stamp that is no time", "DTSTAMP:", "DTSTAMP:x"},
        {"a fold without its blank", "SUMMARY:", "SUMMARY:x\r\nfold"},
    };
    const auto dishes = supper_dishes();
    const auto line = supper(dishes, local_days{2026y / October / 20} + 18h);
    for (const auto& c : cases) {
        CAPTURE(c.name);
        auto text = calendar_text(line, dishes, std::vector<EventWords>(line.events.size()),
                                  {.stamp = sys_days{2026y / October / 17}});
        text.replace(text.find(c.find), c.find.size(), c.put);
        const Component calendar{icalparser_parse_string(text.c_str())};
        REQUIRE(calendar != nullptr);
        icalrestriction_check(calendar.get());
        CHECK(icalcomponent_count_errors(calendar.get()) > 0);
    }
}
