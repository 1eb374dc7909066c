#include "kitchen/measures/when.h"

#include <doctest/doctest.h>

using namespace thawslip::kitchen;
using std::chrono::minutes;
using Anchor = When::Anchor;

TEST_CASE("when something goes in is read in its five forms and their usual variants") {
    struct Case {
        const char* text;
        When when;
    };
    const Case cases[] = {
        {"at the start", {Anchor::AtStart, minutes{0}}},
        {"At  Start", {Anchor::AtStart, minutes{0}}},
        {"after 4 h", {Anchor::AfterStart, minutes{240}}},
        {"After 1 h 30 min", {Anchor::AfterStart, minutes{90}}},
        {"halfway", {Anchor::Halfway, minutes{0}}},
        {"half-way through", {Anchor::Halfway, minutes{0}}},
        {"last 10 min", {Anchor::BeforeEnd, minutes{10}}},
        {"  last\u00A010\u00A0min ", {Anchor::BeforeEnd, minutes{10}}},
        {"the last 10 min", {Anchor::BeforeEnd, minutes{10}}},
        {"in the last 20 minutes", {Anchor::BeforeEnd, minutes{20}}},
        {"for the last 1½ h", {Anchor::BeforeEnd, minutes{90}}},
        {"AT SERVING", {Anchor::AtServing, minutes{0}}},
        {"to serve", {Anchor::AtServing, minutes{0}}},
        {"on serving", {Anchor::AtServing, minutes{0}}},
        {"10 min before the end", {Anchor::BeforeEnd, minutes{10}}},
        {" 1 h 30 min  Before  The End ", {Anchor::BeforeEnd, minutes{90}}},
        {"am Anfang", {Anchor::AtStart, minutes{0}}},
        {"nach 2 Stunden", {Anchor::AfterStart, minutes{120}}},
        {"zur Hälfte", {Anchor::Halfway, minutes{0}}},
        {"In den letzten 10 Minuten", {Anchor::BeforeEnd, minutes{10}}},
        {"letzte 10 min", {Anchor::BeforeEnd, minutes{10}}},
        {"beim Anrichten", {Anchor::AtServing, minutes{0}}},
        {"al principio", {Anchor::AtStart, minutes{0}}},
        {"después de 1 hora", {Anchor::AfterStart, minutes{60}}},
        {"a la mitad", {Anchor::Halfway, minutes{0}}},
        {"últimos 10 minutos", {Anchor::BeforeEnd, minutes{10}}},
        {"en las últimas 2 horas", {Anchor::BeforeEnd, minutes{120}}},
        {"al servir", {Anchor::AtServing, minutes{0}}},
        {"before serving", {Anchor::AtServing, minutes{0}}},
        {"Just before serving", {Anchor::AtServing, minutes{0}}},
        {"beim Servieren", {Anchor::AtServing, minutes{0}}},
        {"vor dem Servieren", {Anchor::AtServing, minutes{0}}},
        {"antes de servir", {Anchor::AtServing, minutes{0}}},
        {"al emplatar", {Anchor::AtServing, minutes{0}}},
        {"von Anfang an", {Anchor::AtStart, minutes{0}}},
        {"in den letzten zehn Minuten", {Anchor::BeforeEnd, minutes{10}}},
        {"in the last five minutes", {Anchor::BeforeEnd, minutes{5}}},
        {"en los últimos diez minutos", {Anchor::BeforeEnd, minutes{10}}},
        {"10 Minuten vor Ende", {Anchor::BeforeEnd, minutes{10}}},
        {"5 min antes del final", {Anchor::BeforeEnd, minutes{5}}},
        {"after half an hour", {Anchor::AfterStart, minutes{30}}},
    };
    for (const auto& c : cases) {
        CAPTURE(c.text);
        const auto when = parse_when(c.text);
        REQUIRE(when.ok());
        CHECK(when.value() == c.when);
    }
}

TEST_CASE("every form that messages name is taken") {
    for (const auto& form : when_forms()) {
        CAPTURE(form);
        CHECK(parse_when(form).ok());
    }
}

TEST_CASE("what does not say when is refused where it goes wrong") {
    struct Case {
        const char* text;
        std::size_t offset;
        const char* message;
    };
    const char* const forms =
        "expected at the start, after or last with a time, halfway or at serving";
    const char* const unclear = "expected the last minutes, where it still cooks, or at serving";
    const char* const no_time = "expected a time such as \"45 min\" or \"7-9 h\"";
    const Case cases[] = {
        {"", 0, forms},
        {"  later", 2, forms},
        {"at the starting", 0, forms},
        {"afterwards 4 h", 0, forms},
        {"halfway there", 0, forms},
        {"last", 4, no_time},
        {"before the end", 0, forms},
        {" at the end", 1, unclear},
        {"am Ende", 0, unclear},
        {"al final", 0, unclear},
        {"10 min before serving", 0, forms},
        {"shortly before the end", 0, no_time},
        {"5 weeks before the end", 2, "expected h or min after the number"},
        {"last ten min", 5, no_time},
        {"  last   ten min", 9, no_time},
        {"in the last quarter", 12, no_time},
        {"last 10", 7, "expected h or min after the number"},
        {"after 2-3 h", 6, "expected one time here, not a range"},
        {"last 73 h", 5, "a time is above 0 and at most 72 h"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.text);
        const auto when = parse_when(c.text);
        REQUIRE_FALSE(when.ok());
        CHECK(when.fault().offset == c.offset);
        CHECK(when.fault().message == c.message);
    }
}
