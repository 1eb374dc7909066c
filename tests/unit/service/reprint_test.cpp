#include "service/print/printing.h"
#include "service/record/print_record.h"
#include "service/reprint/reprint.h"
#include "support/command.h"
#include "surroundings.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::test_support;
using service::ReprintKind;
using service::What;

namespace {

const std::string day = R"([day]
made = 2026-10-17

[[package]]
dish = "Quince and barley stew"
servings = 4
bags = 3
use_by = 2026-12-17

[[package]]
dish = "Plum compote"
servings = 2
use_by = 2027-03-17
)";

/// An archive that has the labels of a day, printed on a roll.
struct Printed {
    ScratchFolder folder;
    archive::Archive archive =
        std::move(archive::Archive::open(folder / "archive.db", archive::Mode::Write)).value();

    Printed() { print_labels(day, "2026-10-17T14:05:00"); }

    void print_labels(const std::string& text, const std::string& at,
                      const service::Part& part = {}, const std::string& stock = "roll") {
        service::Look look;
        look.stock = stock;
        look.first_cell = 1;
        look.part = part;
        auto around = surroundings();
        around.ids.archive = [this] {
            return std::optional{
                archive::Archive::open(folder / "archive.db", archive::Mode::Read).value()};
        };
        const auto printing = print({{{"day.toml", text, {}, "/orchard/day.toml"}}, {}},
                                    What::Labels, look, service::Settings{}, around);
        REQUIRE_MESSAGE(printing, to_text(printing.messages));
        archive.record(print_record(*printing.value, service::Settings{}, {}, {"here"}, at));
    }
    service::Outcome<std::vector<service::WantedPrint>>
    find(const std::vector<std::string>& bags, const std::string& printed = {},
         ReprintKind kind = ReprintKind::Labels) {
        return service::find_prints(archive, {bags, printed, kind});
    }
    service::Outcome<std::vector<service::WantedPrint>>
    find_part(const service::Part& part, const std::string& printed = {},
              ReprintKind kind = ReprintKind::Labels) {
        return service::find_prints(archive, {{}, printed, kind, part});
    }
    /// How many labels come out when they are printed again.
    std::size_t again_of(const service::Outcome<std::vector<service::WantedPrint>>& found,
                         const service::ReprintLook& look = {}) {
        REQUIRE_MESSAGE(found, to_text(found.messages));
        const auto printed = again(*found.value, look);
        REQUIRE_MESSAGE(printed, to_text(printed.messages));
        CHECK(printed.value->prints == printed.value->laid_out.fitting.prints.size());
        return printed.value->prints;
    }
    service::Outcome<service::Reprint> again(const std::vector<service::WantedPrint>& prints,
                                             const service::ReprintLook& look = {}) {
        return service::reprint(archive, prints, look, surroundings(),
                                [](const auto&) { return std::vector<std::string>{}; });
    }
};

} // namespace

TEST_CASE_FIXTURE(Printed, "a dish's words, a bag's id and a date find their print") {
    const auto by_words = find({"quince"});
    REQUIRE(by_words);
    REQUIRE(by_words.value->size() == 1);
    CHECK(by_words.value->front().bags.size() == 3);
    CHECK_FALSE(by_words.value->front().whole);
    const auto id = *by_words.value->front().bags.begin();
    CHECK(find({id}).value->front().bags == std::set{id});
    const auto by_date = find({}, "2026-10-17");
    REQUIRE(by_date);
    REQUIRE(by_date.value->size() == 1);
    CHECK(by_date.value->front().whole);
}

TEST_CASE_FIXTURE(Printed, "what was never printed is refused") {
    CHECK(to_text(find({"pear"}).messages)
              .starts_with("error: no bag in the freezer is called \"pear\"\n"));
    CHECK(to_text(find({}, "2026-10-18").messages) ==
          "error: no labels were printed on 2026-10-18\n    hint: labels were printed on "
          "2026-10-17\n");
    CHECK(to_text(find({}, "2026-10-17", ReprintKind::Cards).messages) ==
          "error: no cards were printed on 2026-10-17\n    hint: no cards were ever printed into "
          "this archive\n");
    CHECK(to_text(find({}, "tomorrow").messages) ==
          "error: \"tomorrow\" is no date; expected one like 2026-10-17\n");
}

TEST_CASE_FIXTURE(Printed,
                  "cards of bags whose labels alone were printed are made on the usual stock") {
    const auto cards = find({"quince"}, {}, ReprintKind::Cards);
    REQUIRE(cards);
    CHECK(cards.value->front().print.setup.what == "cards");
    CHECK(cards.value->front().print.setup.stock.empty());
}

TEST_CASE_FIXTURE(Printed, "only the bags that are meant are laid out again, where they were") {
    const auto dish = find({"quince"});
    CHECK(again(*dish.value).value->laid_out.fitting.prints.size() == 3);
    const auto id = *dish.value->front().bags.begin();
    const auto one = again(*find({id}).value);
    REQUIRE_MESSAGE(one, to_text(one.messages));
    CHECK(one.value->laid_out.fitting.prints.size() == 1);
    CHECK(one.value->laid_out.setup.medium.stock.name == "roll");
    CHECK(one.messages.all().empty());
    const auto whole = again(*find({}, "2026-10-17").value);
    CHECK(whole.value->laid_out.fitting.prints.size() == 4);
}

TEST_CASE_FIXTURE(
    Printed, "a label of a bag that is gone, or described otherwise by now, is cautioned about") {
    const auto id = *find({"quince"}).value->front().bags.begin();
    archive.set_state(std::vector{id}, archive::State::Eaten, "2026-11-01T18:00:00", {"here"});
    CHECK(to_text(again(*find({id}).value).messages)
              .starts_with("caution: bag " + id + " of \"Quince and barley stew\" is noted as "));
    auto edited = day;
    edited.replace(edited.find("servings = 4"), 12, "servings = 5");
    print_labels(edited, "2026-11-02T09:00:00");
    const auto before = again(*find({}, "2026-10-17").value);
    CHECK(to_text(before.messages).find("was edited and printed again on 2026-11-02") !=
          std::string::npos);
    CHECK(to_text(again(*find({"plum"}).value).messages).find("was edited") == std::string::npos);
}

TEST_CASE_FIXTURE(Printed, "a part is taken of a dish, of named bags or of a print, or of all") {
    const auto stew = *find({"quince"}).value->front().bags.begin();
    CHECK(again_of(find_part({.dishes = "quince"})) == 3);
    CHECK(again_of(find_part({.dishes = "quince", .bags = "2-3"})) == 2);
    CHECK(again_of(find_part({.dishes = "quince, plum"})) == 4);
    CHECK(again_of(find_part({.dishes = "quince", .from = "3"})) == 1);
    CHECK(again_of(find_part({.bags = stew})) == 1);
    CHECK(again_of(find_part({.bags = "4"}, "2026-10-17")) == 1);
    CHECK(again_of(find_part({.bags = "2-4"}, "2026-10-17")) == 3);
    CHECK(again_of(find_part({.from = archive.bags_of(archive.bag(stew)->day)[1].id})) == 3);
    CHECK(again_of(find_part({.dishes = "plum"}, "2026-10-17")) == 1);
    const auto no_dish = find_part({.bags = "2"});
    CHECK_FALSE(no_dish);
    CHECK(to_text(no_dish.messages)
              .starts_with("error: a number says which bag of a dish, and no dish is named\n"));
    CHECK_FALSE(find_part({.from = "2"}));
    const auto no_such = find_part({.dishes = "medlar"});
    CHECK_FALSE(no_such);
    CHECK(to_text(no_such.messages).find("no dish has the words \"medlar\"") != std::string::npos);
}

TEST_CASE_FIXTURE(Printed, "only new ones are the bags in the freezer whose prints are missing") {
    const auto none = find_part({.only_new = true});
    REQUIRE(none);
    CHECK(none.value->empty()); // each has its label
    const auto cards = find_part({.only_new = true}, {}, ReprintKind::Cards);
    REQUIRE(cards);
    REQUIRE(cards.value->size() == 1);
    CHECK(cards.value->front().bags.size() == 4);
}

TEST_CASE_FIXTURE(Printed, "copies and cells are those of the print, or else those asked for") {
    print_labels(day, "2026-10-18T14:05:00", {.bags = "1", .copies = 3});
    const auto as_it_was = find({}, "2026-10-18");
    CHECK(again_of(as_it_was) == 3);
    CHECK(again_of(as_it_was, {.stock = "", .first_cell = {}, .skip = {}, .copies = 2}) == 2);
    CHECK(again_of(find_part({.bags = "1"}, "2026-10-18")) == 1); // a part of it, once
    CHECK(again_of(find({"plum"}), {.stock = "", .first_cell = {}, .skip = {}, .copies = 2}) == 2);
}

TEST_CASE_FIXTURE(Printed, "a part that the print of a day has not is refused") {
    print_labels(day, "2026-10-18T14:05:00", {.bags = "1"});
    const auto outside = find_part({.dishes = "plum"}, "2026-10-18");
    REQUIRE(outside);
    const auto printed = again(*outside.value);
    CHECK_FALSE(printed);
    CHECK(to_text(printed.messages).find("no dish has the words \"plum\"") != std::string::npos);
    const auto each_has = find_part({.only_new = true}, "2026-10-18");
    REQUIRE(each_has);
    const auto nothing = again(*each_has.value);
    CHECK_FALSE(nothing);
    CHECK(to_text(nothing.messages) == "error: there is nothing to print for these bags\n");
}

TEST_CASE_FIXTURE(Printed, "prints on two stocks do not share a sheet, unless one is named") {
    auto other = day;
    other.replace(other.find("2026-10-17"), 10, "2026-10-18");
    print_labels(other, "2026-10-17T15:05:00", {}, "mine.toml");
    const auto both = find({}, "2026-10-17");
    REQUIRE(both);
    REQUIRE(both.value->size() == 2);
    const auto refused = again(*both.value);
    CHECK_FALSE(refused);
    const auto said = to_text(refused.messages);
    CHECK(said.find("error: these were printed on different stocks or with different layouts "
                    "(roll and mine); nothing written\n") != std::string::npos);
    CHECK(again_of(both, {.stock = "roll", .first_cell = {}, .skip = {}}) == 8);
}

TEST_CASE_FIXTURE(Printed,
                  "what was printed again on another stock replaces what was printed first") {
    print_labels(day, "2026-10-17T15:05:00", {}, "mine.toml");
    const auto both = find({}, "2026-10-17");
    REQUIRE(both);
    REQUIRE(both.value->size() == 2);
    const auto made = again(*both.value);
    REQUIRE_MESSAGE(made, to_text(made.messages));
    CHECK(made.value->laid_out.setup.medium.stock.name == "mine");
    CHECK(to_text(made.messages)
              .find("note: what was printed on roll at 14:05 was printed again "
                    "on mine: that is made again\n") != std::string::npos);
}

TEST_CASE_FIXTURE(Printed,
                  "at most three days are named on which something was printed, the nearest") {
    for (const std::string date : {"10", "13", "16", "20"}) {
        auto other = day;
        other.replace(other.find("2026-10-17"), 10, "2026-11-" + date);
        print_labels(other, "2026-11-" + date + "T15:05:00");
    }
    CHECK(to_text(find({}, "2026-11-14").messages)
              .find("labels were printed on 2026-11-10, 2026-11-13, 2026-11-16\n") !=
          std::string::npos);
    CHECK(to_text(find({}, "2026-10-18").messages)
              .find("labels were printed on 2026-10-17, 2026-11-10, 2026-11-13\n") !=
          std::string::npos);
}
