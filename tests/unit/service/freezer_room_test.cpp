// What a freezer has to take: what is packed, and what the archive knows to be in it.
// How much may go in at once: USDA, "Canning, Freezing, Storing Garden Produce" (Agriculture
// Information Bulletin 410, 1977, from memory): 2 to 3 lb per cubic foot of capacity in 24 h.

#include "service/day/day_cautions.h"
#include "service/day/freezer_load.h"
#include "service/day/in_freezer.h"
#include "service/record/day_record.h"
#include "support/command.h"

#include <doctest/doctest.h>

namespace freezer_room_test {

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

std::string dish(const std::string& name, const std::string& weight, int bags = 1) {
    return "[[package]]\ndish = \"" + name + "\"\nservings = 4\nbags = " + std::to_string(bags) +
           "\nuse_by = 2026-12-10\ncontains = []\nfood = \"soup or stew\"\nthaw.method = "
           "\"refrigerator\"\n" +
           (weight.empty() ? "" : "weight = \"" + weight + "\"\n");
}

service::Days planned(const std::vector<std::string>& texts,
                      service::Ids ids = service::Ids::Final) {
    std::vector<service::DayText> files;
    for (const auto& text : texts) {
        const auto name = "day-" + std::to_string(files.size() + 1) + ".toml";
        files.push_back({name, text, {}, "/" + name});
    }
    auto days = service::plan_days(files, service::Settings{}, ids);
    for (const auto& fault : days.diagnostics) {
        CAPTURE(to_text(fault));
        CHECK(fault.severity != Severity::Error);
    }
    REQUIRE(days.plans.size() == texts.size());
    return days;
}

std::string day(const std::string& made, const std::string& packages,
                const std::string& more = {}) {
    return "[day]\nmade = " + made + "\n" + more + packages;
}

wording::Style style() {
    return message_style(service::Settings{});
}

bool says(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

/// An archive in which days were printed.
struct Printed {
    ScratchFolder folder;
    archive::Archive archive =
        std::move(archive::Archive::open(folder / "archive.db", archive::Mode::Write)).value();

    void print(const std::string& text) {
        const auto days = planned({text});
        archive.record(
            {"2026-10-10T14:05:00", {"labels", "roll", "", "", ""}, {service::record_of(days, 0)}});
    }
    kitchen::FreezerHolds held_beside(service::Days& days) {
        note_in_freezer(days, archive);
        REQUIRE(days.plans[0].holds);
        return *days.plans[0].holds;
    }
};

} // namespace

TEST_CASE_FIXTURE(Printed,
                  "what is frozen beside the day's own bags is counted, by dish and by room") {
    print(day("2026-10-10", dish("Barley stews", "1 kg", 2) + dish("Plum compote", "")));
    auto days = planned({day("2026-10-17", dish("Barley stew", "1 kg", 3))});
    const auto holds = held_beside(days);
    CHECK(holds.bags == 3);
    CHECK(holds.unweighed == 1);
    CHECK(holds.litres == doctest::Approx(2 * kitchen::frozen_litres(kitchen::Mass{1000.0},
                                                                     kitchen::Wetness::Either)));
    CHECK(days.plans[0].packages[0].in_freezer == 2); // one or several, it is the same dish
    // Its own bags do not lie beside themselves, nor does what is out.
    print(day("2026-10-17", dish("Barley stew", "1 kg", 3)));
    const auto out = archive.find("plum", archive::Which::InFreezer);
    archive.set_state(std::vector{out.at(0).id}, archive::State::Out, "2026-10-18T08:00:00");
    CHECK(held_beside(days).bags == 2);
}

TEST_CASE_FIXTURE(Printed,
                  "another kitchen's bags lie in another freezer, unless one has no name") {
    print(day("2026-10-10", dish("Barley stew", "1 kg"), "kitchen = \"Pear barn\"\n"));
    const auto beside = [this](const std::string& kitchen) {
        auto days = planned({day("2026-10-17", dish("Plum compote", "1 kg"), kitchen)});
        return held_beside(days).bags;
    };
    CHECK(beside("kitchen = \"pear BARNS\"\n") == 1);
    CHECK(beside("kitchen = \"Plum barn\"\n") == 0);
    CHECK(beside("") == 1);
    print(day("2026-10-11", dish("Medlar paste", "1 kg")));
    CHECK(beside("kitchen = \"Plum barn\"\n") == 1);
}

TEST_CASE_FIXTURE(Printed,
                  "bags that have no room beside what is frozen are told, with both figures") {
    const auto troubles = [](const service::Days& days) {
        return service::room_troubles(days.plans[0], style());
    };
    const auto text = day("2026-10-17", dish("Barley stew", "2 kg", 4), "freezer = \"10 l\"\n");
    auto days = planned({text});
    CHECK(troubles(days).empty()); // tight, and no more
    print(day("2026-10-10", dish("Plum compote", "2 kg", 2)));
    note_in_freezer(days, archive);
    REQUIRE(troubles(days).size() == 1);
    CHECK(says(troubles(days)[0], "the day's bags take 8."));
    CHECK(says(troubles(days)[0], " beside 4."));
    CHECK(says(troubles(days)[0], "and it holds 10 l"));
    auto small =
        planned({day("2026-10-17", dish("Barley stew", "2 kg", 4), "freezer = \"5 l\"\n")});
    REQUIRE(troubles(small).size() == 1);
    CHECK_FALSE(says(troubles(small)[0], "beside"));
    auto unknown = planned({day("2026-10-17", dish("Barley stew", "20 kg", 9))});
    CHECK(troubles(unknown).empty()); // nobody said how large it is
}

TEST_CASE("two days of one kitchen that freeze on one date together are told, two kitchens not") {
    // 100 l are 3.53 cu ft: 10.6 lb, or 4.8 kg, in 24 h at most.
    const auto told = [](const std::string& first, const std::string& second) {
        const auto days = planned({first, second});
        return service::shared_freezer_troubles(days.plans, style().units);
    };
    const auto barn = [](const std::string& made, const std::string& name,
                         const std::string& litres, const std::string& weight,
                         const std::string& kitchen = "barn") {
        return day(made, dish(name, weight),
                   "kitchen = \"" + kitchen + "\"\nfreezer = \"" + litres + "\"\n");
    };
    const auto one = barn("2026-10-17", "Barley stew", "100 l", "3 kg");
    const auto both = told(one, barn("2026-10-17", "Plum compote", "100 l", "3 kg"));
    REQUIRE(both.size() == 1);
    CHECK(says(both[0], "6 kg"));
    CHECK(says(both[0], " of 2 descriptions go in on 2026-10-17, and the limit in 24 h is 4.8"));
    CHECK(told(one, barn("2026-10-17", "Plum compote", "100 l", "1.5 kg")).empty());
    CHECK(told(one, barn("2026-10-18", "Plum compote", "100 l", "3 kg")).empty());
    CHECK(told(one, barn("2026-10-17", "Plum compote", "100 l", "3 kg", "shed")).empty());
    // Where two sizes are said, the smaller one counts, in either order.
    const auto large = barn("2026-10-17", "Plum compote", "200 l", "3 kg");
    CHECK(told(one, large).size() == 1);
    CHECK(told(large, one).size() == 1);
    CHECK(told(one, day("2026-10-17", dish("Plum compote", "3 kg"), "kitchen = \"barn\"\n"))
              .empty()); // no plan of its own
}

TEST_CASE("bags are told by their dishes, and what is too heavy or not weighed by its ids") {
    const auto days = planned({day("2026-10-17",
                                   dish("Barley stew", "1 kg", 2) + dish("Plum compote", "6 kg") +
                                       dish("Pear butter", ""),
                                   "freezer = \"100 l\"\n")});
    const auto& plan = days.plans[0];
    const auto& bags = plan.packages[0].bags;
    CHECK(service::bags_text(plan, {bags[0].id, bags[1].id, plan.packages[2].bags[0].id}) ==
          "Barley stew (" + bags[0].id + ", " + bags[1].id + "); Pear butter (" +
              plan.packages[2].bags[0].id + ")");
    const auto troubles = service::load_troubles(plan, style().units);
    REQUIRE(troubles.size() == 2);
    CHECK(troubles[0] == "too heavy for the freezer, each by itself; make it smaller: Plum compote "
                         "(" +
                             plan.packages[1].bags[0].id + ")");
    CHECK(troubles[1] == "without a weight, so not counted; weigh it: Pear butter (" +
                             plan.packages[2].bags[0].id + ")");
    const auto said = to_text(cautions_of(days, {}));
    CHECK(says(said, "caution: the freezer: too heavy for the freezer"));
    CHECK(says(said, "caution: the freezer: without a weight"));
    CHECK(service::load_troubles(planned({day("2026-10-17", dish("Pear butter", ""))}).plans[0],
                                 style().units)
              .empty());
}

} // namespace freezer_room_test
