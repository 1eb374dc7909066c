#include "wording/phrases.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::kitchen;
using namespace std::chrono_literals;

namespace {

PlannedPackage thawing(ThawMethod method, std::chrono::minutes lead, MissingSize missing,
                       std::optional<std::chrono::days> keeps = std::nullopt) {
    PlannedPackage planned;
    planned.package.thaw.method = method;
    planned.thaw_lead =
        ThawLead{.method = method, .lead = lead, .soonest = lead * 2 / 3, .missing = missing};
    if (keeps) {
        planned.after_thawing = DaysLeft{*keeps, *keeps + std::chrono::days{1}, {}};
    }
    return planned;
}

} // namespace

TEST_CASE("the thaw line gives the time, how long it keeps, and what must be done") {
    using enum ThawMethod;
    struct Case {
        PlannedPackage planned;
        const char* words;
    };
    using std::chrono::days;
    const Case cases[] = {
        {thawing(Refrigerator, 36h, MissingSize::None, days{3}),
         "in the refrigerator on a tray: look from 24 h, allow 36 h; cook within 3 days of "
         "thawing"},
        {thawing(Refrigerator, 24h, MissingSize::Thickness, days{1}),
         "in the refrigerator on a tray: look from 16 h, allow 24 h; cook within 1 day of thawing"},
        {thawing(Refrigerator, 24h, MissingSize::None, days{0}),
         "in the refrigerator on a tray: look from 16 h, allow 24 h; cook on the day it has "
         "thawed"},
        {thawing(Refrigerator, 24h, MissingSize::Both, days{3}),
         "in the refrigerator: look from 12 h, allow 24 h for every 2 kg, at least 24 h; cook "
         "within "
         "3 days of thawing"},
        {thawing(ColdWater, 150min, MissingSize::None),
         "in cold water, at most 21 °C (70 °F), 2½ h: bag sealed, new water every 30 min. Cook at "
         "once"},
        {thawing(ColdWater, 180min, MissingSize::Both),
         "in cold water, at most 21 °C (70 °F): bag sealed, new water every 30 min. Cook at once"},
        {thawing(Microwave, 20min, MissingSize::None),
         "in the microwave, about 20 min. Cook at once"},
        {thawing(FromFrozen, 0min, MissingSize::None), "cook from frozen. Never in a slow cooker"},
    };
    for (const auto& c : cases) {
        CHECK(say_thaw(c.planned, wording::shipped_language("en")) == c.words);
    }
}

TEST_CASE("what is eaten frozen is not thawed, in every language") {
    auto planned = thawing(ThawMethod::FromFrozen, 0min, MissingSize::None);
    planned.served = Served::Frozen;
    const auto said = [&](const char* language) {
        return say_thaw(planned, wording::shipped_language(language));
    };
    CHECK(said("en") == "eat it frozen");
    CHECK(said("es") == "se come congelado");
    CHECK(said("de") == "gefroren essen");
}

TEST_CASE("where food does not thaw as set, the thaw line falls back to the agencies' rule") {
    auto planned = thawing(ThawMethod::Refrigerator, 24h, MissingSize::None);
    planned.thaw_lead.reset();
    CHECK(say_thaw(planned, wording::shipped_language("en")) ==
          "in the refrigerator: look from 12 h, allow 24 h for every 2 kg, at least 24 h");
}

TEST_CASE("what begins days ahead is said in days too") {
    const auto said = [](std::chrono::minutes lead, const char* language) {
        return wording::say_lead_in_days(lead, wording::shipped_language(language));
    };
    CHECK(said(47h, "en") == "47 h");
    CHECK(said(48h, "en") == "48 h (2 days)");
    CHECK(said(64h, "de") == "64 h (2 Tage 16 h)");
    CHECK(said(73h, "es") == "73 h (3 días 1 h)");
}
