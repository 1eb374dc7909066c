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

    void print_labels(const std::string& text, const std::string& at) {
        service::Look look;
        look.stock = "roll";
        look.first_cell = 1;
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
