// What is noted of bags, what stands against it, and what there is to eat.

#include "kitchen/bag_id.h"
#include "service/freezer/freezer_list.h"
#include "service/freezer/freezer_state.h"
#include "service/freezer/gone_bags.h"
#include "service/freezer/packages_of_bags.h"
#include "service/record/day_record.h"
#include "support/command.h"

#include <doctest/doctest.h>

namespace freezer_state_test {

using namespace thawslip;
using namespace thawslip::test_support;
using archive::State;

namespace {

/// Two bags of a stew that thaws for hours, one of a compote.
struct Freezer {
    ScratchFolder folder;
    archive::Archive archive =
        std::move(archive::Archive::open(folder / "archive.db", archive::Mode::Write)).value();
    std::string stew;
    std::string second;
    std::string compote;

    Freezer() {
        record("[day]\nmade = 2026-10-17\n[[package]]\ndish = \"Barley stew\"\nservings = 4\nbags "
               "= 2\nfood = \"soup or stew\"\nuse_by = 2026-12-10\nweight = \"1.5 kg\"\nthickness "
               "= \"35 mm\"\nplace = \"barn\"\nthaw.method = \"refrigerator\"\n[[package]]\ndish = "
               "\"Plum compote\"\nservings = 2\nuse_by = 2027-01-10\nthaw.method = \"cold "
               "water\"\n");
        const auto bags = archive.bags(archive::Which::InFreezer);
        REQUIRE(bags.size() == 3);
        stew = bags[0].id;
        second = bags[1].id;
        compote = bags[2].id;
    }
    void record(const std::string& text, const std::string& at = "2026-10-17T14:05:00") {
        const auto days = service::plan_days(
            std::vector<service::DayText>{{"day.toml", text, {}, "/day.toml"}}, {});
        REQUIRE(days.plans.size() == 1);
        archive.record({at, {"labels", "roll", "", "", ""}, {service::record_of(days, 0)}});
    }
    service::Outcome<std::vector<archive::Bag>> note(const std::string& id, State state,
                                                     const std::string& at) {
        return service::note_state(archive, {id}, state, {at, {.name = "here"}});
    }
    service::Outcome<std::vector<kitchen::PlannedPackage>>
    eat(const std::vector<std::string>& typed, int of_each = 1) {
        return service::packages_to_eat(archive, {typed, of_each});
    }
};

bool says(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

} // namespace

TEST_CASE_FIXTURE(Freezer, "a bag that was out longer than its label allows must not be eaten") {
    const auto package = service::known_bag(archive, stew).value->package;
    REQUIRE(note(stew, State::Out, "2026-11-01T08:00:00"));
    const auto soon = note(stew, State::Frozen, "2026-11-02T08:00:00");
    CHECK(says(to_text(soon.messages), stew + " has been out since 2026-11-01 08:00; what was "
                                              "thawed in cold water or in the microwave must be "
                                              "cooked before it is frozen again"));
    REQUIRE(note(stew, State::Out, "2026-11-03T08:00:00"));
    const auto late = note(stew, State::Frozen, "2026-11-30T08:00:00");
    CHECK(says(to_text(late.messages), "longer than its label allows to thaw and keep it"));
    CHECK(says(to_text(late.messages), "thawslip freezer discarded " + stew));
    // In cold water nothing may lie for a day; how long it takes is not known here.
    REQUIRE(note(compote, State::Out, "2026-11-03T08:00:00"));
    CHECK(says(to_text(note(compote, State::Frozen, "2026-11-03T08:01:00").messages),
               "longer than its label allows"));
}

TEST_CASE_FIXTURE(Freezer, "what the label cannot tell any longer is left to the cook") {
    Freezer rotten;
    auto record = archive::PackageRecord{};
    record.dish = record.words = "medlar paste";
    record.made = std::chrono::year{2026} / 10 / 18;
    record.keep_until = std::chrono::year{2027} / 1 / 1;
    record.servings = 1;
    record.bags = {kitchen::bag_id({record.dish, record.made, 1})};
    archive.record({"2026-10-18T14:05:00",
                    {"labels", "roll", "", "", ""},
                    {{record.made, "", "paste.toml", "= none =", {record}}}});
    REQUIRE(note("medlar", State::Out, "2026-11-01T08:00:00"));
    const auto back = note("medlar", State::Frozen, "2026-12-01T08:00:00");
    CHECK(says(to_text(back.messages), "has been out since 2026-11-01 08:00; what was thawed"));
    const auto eaten = eat({"medlar"});
    CHECK_FALSE(eaten);
    CHECK(to_text(eaten.messages) ==
          "error: the description of bag " + record.bags[0] + " cannot be read any longer\n");
}

TEST_CASE_FIXTURE(Freezer, "a print that a later program made leaves all bags on the list") {
    const auto day = archive.day(archive.bag(stew)->day);
    archive.record(
        {"2026-10-18T14:05:00",
         {"labels", "roll", "", "gilded_edges = true\n# settings\n", ""},
         {{day.made, day.kitchen, day.file, day.description, archive.packages(day.key)}}});
    const auto list = service::freezer_list(archive, {}, std::chrono::year{2026} / 11 / 1,
                                            kitchen::allergen_lists().front());
    REQUIRE(list.bags.size() == 3);
    CHECK_FALSE(list.bags[0].allergens); // what it contains is not known
    CHECK(to_text(service::known_bag(archive, stew).messages) ==
          "error: the description of bag " + stew + " cannot be read any longer\n");
}

TEST_CASE_FIXTURE(Freezer, "what is gone is not eaten or taken out, but may come back") {
    REQUIRE(note(stew, State::Discarded, "2026-11-01T08:00:00"));
    for (const auto state : {State::Out, State::Eaten}) {
        const auto refused = note(stew, state, "2026-11-02T08:00:00");
        CHECK_FALSE(refused);
        CHECK(to_text(refused.messages) ==
              "error: " + stew +
                  " Barley stew was discarded on 2026-11-01\n    hint: if that was "
                  "a slip, it is in the freezer again with: thawslip freezer back " +
                  stew + "\n");
    }
    CHECK(note(stew, State::NeverFilled, "2026-11-02T08:00:00"));
    REQUIRE(note(second, State::Eaten, "2026-11-01T08:00:00"));
    CHECK_FALSE(note(second, State::Out, "2026-11-02T08:00:00"));
    CHECK(
        note(second, State::Discarded, "2026-11-02T09:00:00")); // found after all, and thrown away
    const auto back = note(second, State::Frozen, "2026-11-03T08:00:00");
    REQUIRE(back);
    CHECK(to_text(back.messages) == "");
    CHECK(archive.bag(second)->state == State::Frozen);
}

TEST_CASE("from each state a bag comes into those that follow it, the likeliest first") {
    using States = std::vector<State>;
    CHECK(service::states_before(State::Out) == States{State::Frozen});
    CHECK(service::states_before(State::Frozen) ==
          States{State::Out, State::Eaten, State::Discarded, State::NeverFilled});
    CHECK(service::states_before(State::Eaten) == States{State::Out, State::Frozen});
    CHECK(service::states_before(State::Discarded) == States{State::Out, State::Frozen});
    CHECK(service::states_before(State::NeverFilled) == States{State::Frozen, State::Out});
}

TEST_CASE_FIXTURE(Freezer, "an undo that is not the last one any longer is refused") {
    CHECK(says(
        to_text(service::undo_last(archive, {"2026-11-01T09:00:00", {.name = "here"}}, 7).messages),
        "something else was noted or taken back since"));
}

TEST_CASE_FIXTURE(Freezer, "so many bags of each dish are eaten, and those that are named by ids") {
    const auto one = eat({"stew"});
    REQUIRE(one);
    REQUIRE(one.value->size() == 1);
    CHECK(one.value->front().bags.size() == 1);
    CHECK(one.value->front().bags[0].id == stew); // the oldest, and of those the first
    const auto two = eat({"barley", "stew"}, 2);  // one dish in two words
    REQUIRE(two);
    CHECK(two.value->front().bags.size() == 2);
    const auto both = eat({"stew", "compote"}); // two dishes
    REQUIRE(both);
    REQUIRE(both.value->size() == 2);
    CHECK(both.value->back().package.dish == "Plum compote");
    const auto ids = eat({second, stew});
    REQUIRE(ids);
    REQUIRE(ids.value->size() == 1);
    REQUIRE(ids.value->front().bags.size() == 2);
    CHECK(ids.value->front().bags[0].id == second);
    CHECK(eat({stew + ",", "stew"}).value->front().bags.size() == 1); // once
    CHECK_FALSE(eat({"medlar"}));
    CHECK(says(to_text(eat({"stew, medlar"}).messages), "\"medlar\""));
}

TEST_CASE_FIXTURE(Freezer,
                  "so many bags of each size are eaten, and it is said where fewer are there") {
    const auto few = eat({"stew"}, 5);
    REQUIRE(few);
    CHECK(few.value->front().bags.size() == 2);
    CHECK(to_text(few.messages) == "caution: only 2 of 5 bags of \"Barley stew\" are there\n");
    CHECK(eat({stew}, 5).messages.all().empty()); // by its id it is itself alone
    record("[day]\nmade = 2026-10-18\n[[package]]\ndish = \"Leek soup\"\nfood = \"soup or stew\"\n"
           "use_by = 2026-12-10\nthickness = \"30 mm\"\nthaw.method = \"refrigerator\"\n"
           "[[package.size]]\nservings = 6\nweight = \"2 kg\"\n"
           "[[package.size]]\nservings = 2\nbags = 3\nweight = \"700 g\"\n");
    const auto sizes = eat({"leek"}, 2);
    REQUIRE(sizes);
    REQUIRE(sizes.value->size() == 2);
    CHECK(sizes.value->front().bags.size() == 1);
    CHECK(sizes.value->back().bags.size() == 2);
    CHECK(to_text(sizes.messages) ==
          "caution: only 1 of 2 bags of \"Leek soup\" (for 6) is there\n");
}

TEST_CASE_FIXTURE(Freezer, "what is gone is not planned, and what is out is with a caution") {
    REQUIRE(note(stew, State::Out, "2026-11-01T08:05:00"));
    const auto out = eat({stew});
    REQUIRE(out);
    CHECK(to_text(out.messages) == "caution: bag " + stew +
                                       " (Barley stew) is out of the freezer since "
                                       "2026-11-01T08:05\n");
    REQUIRE(note(second, State::Eaten, "2026-11-02T08:05:00"));
    const auto gone = eat({second});
    CHECK_FALSE(gone);
    CHECK(to_text(gone.messages) ==
          "error: bag " + second + " (Barley stew) was eaten on 2026-11-02\n");
}

TEST_CASE_FIXTURE(Freezer, "a list is of words in dishes or places, and of one place where named") {
    const auto listed = [this](const service::FreezerQuestion& question) {
        return service::freezer_list(archive, question, std::chrono::year{2026} / 11 / 1,
                                     kitchen::allergen_lists().front())
            .bags.size();
    };
    CHECK(listed({}) == 3);
    CHECK(listed({.words = {"barn"}}) == 2);
    CHECK(listed({.words = {"plum"}}) == 1);
    CHECK(listed({.words = {"shed"}}) == 0);
    CHECK(listed({.words = {}, .place = "barn"}) == 2);
    CHECK(listed({.words = {}, .place = ""}) == 1); // where it is not known
    CHECK(listed({.words = {}, .place = "bar"}) == 0);
}

TEST_CASE_FIXTURE(Freezer, "totals count what is frozen, by month and by place") {
    REQUIRE(note(second, State::Out, "2026-11-01T08:05:00"));
    const auto list =
        service::freezer_list(archive, {.words = {}, .gone_too = true},
                              std::chrono::year{2026} / 11 / 1, kitchen::allergen_lists().front());
    const auto months = service::totals_by_month(list.bags);
    REQUIRE(months.size() == 2);
    const auto& december = months.at(std::chrono::year{2026} / 12);
    CHECK(december.bags == 1);
    CHECK(december.servings == 4);
    CHECK(december.grams == doctest::Approx(1500));
    CHECK(december.all_weighed);
    const auto& january = months.at(std::chrono::year{2027} / 1);
    CHECK(january.bags == 1);
    CHECK(january.grams == 0.0);
    CHECK_FALSE(january.all_weighed);
    const auto places = service::totals_by_place(archive.bags(archive::Which::All));
    REQUIRE(places.size() == 2);
    CHECK(places.at("barn").bags == 1);
    CHECK(places.at("").servings == 2);
    auto sum = december;
    sum += january;
    CHECK(sum.bags == 2);
    CHECK(sum.servings == 6);
    CHECK(sum.grams == doctest::Approx(1500));
    CHECK_FALSE(sum.all_weighed);
}

TEST_CASE_FIXTURE(Freezer, "a label that was printed after its bag was gone is told of") {
    const auto text = archive.day(archive.bag(stew)->day).description;
    CHECK(service::printed_since_gone(archive, *archive.bag(stew)) == "");
    REQUIRE(note(stew, State::Eaten, "2026-11-01T08:05:00"));
    CHECK(service::printed_since_gone(archive, *archive.bag(stew)) == ""); // before that
    record(text, "2026-11-02T08:05:00");
    CHECK(service::printed_since_gone(archive, *archive.bag(stew)) == "2026-11-02");
    CHECK(service::printed_since_gone(archive, *archive.bag(second)) == ""); // it is there
    const auto gone = std::vector{*archive.bag(stew), *archive.bag(second)};
    const auto said = to_text(service::cautions_of_gone(gone));
    CHECK(said.starts_with("caution: bag " + stew +
                           " of \"Barley stew\" is noted as eaten since "
                           "2026-11-01, and its label is printed again"));
    CHECK_FALSE(says(said, second));
}

} // namespace freezer_state_test
