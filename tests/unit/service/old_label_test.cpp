// A label's code held against what the archive has of its bag by now.

#include "code/message.h"
#include "service/read/old_label.h"
#include "service/read/read_bags.h"
#include "service/record/day_record.h"
#include "service/settings.h"
#include "support/command.h"

#include <doctest/doctest.h>

namespace old_label_test {

using namespace thawslip;
using namespace thawslip::test_support;
using archive::State;

namespace {

const std::string stew =
    "[[package]]\ndish = \"Barley stew\"\nservings = 4\nfood = \"soup or stew\"\nuse_by = "
    "2026-12-10\ncontains = [\"celery\"]\nmay_contain = [\"walnut\"]\nthaw.method = "
    "\"refrigerator\"\ncook = {in = \"pot\", time = \"30 min\", until = \"74 °C\"}\n"
    "[[package.finish]]\nadd = \"200 ml cream\"\nwhen = \"at the start\"\n";

struct Kept {
    ScratchFolder folder;
    archive::Archive archive =
        std::move(archive::Archive::open(folder / "archive.db", archive::Mode::Write)).value();
    service::Days days;
    archive::Bag bag;

    explicit Kept(const std::string& package = stew, const std::string& description = {}) {
        const std::string text = "[day]\nmade = 2026-10-17\n" + package;
        days = service::plan_days(
            std::vector<service::DayText>{{"day.toml", text, {}, "/day.toml"}}, {});
        CAPTURE(to_text(days.diagnostics.empty() ? Diagnostic{} : days.diagnostics.front()));
        REQUIRE(days.plans.size() == 1);
        auto record = service::record_of(days, 0);
        record.description = description.empty() ? record.description : description;
        archive.record({"2026-10-17T14:05:00", {"labels", "roll", "", "", ""}, {record}});
        bag = archive.bags(archive::Which::InFreezer).front();
    }
    /// What the code of its label says.
    code::Message label() const {
        const auto& package = days.plans[0].packages[0];
        return code::message_for(package, package.bags[0]);
    }
    std::string told(const code::Message& read) {
        service::Messages messages;
        hold_against_archive(read, bag, archive, messages);
        return to_text(messages);
    }
};

bool says(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

} // namespace

TEST_CASE_FIXTURE(Kept, "a label that says what the archive has is not spoken of") {
    CHECK(told(label()) == "");
}

TEST_CASE_FIXTURE(Kept, "another date that the cook set is told, and one that a list gave is not") {
    auto read = label();
    REQUIRE(read.keep_until);
    read.keep_until->date = std::chrono::year{2026} / 12 / 11;
    CHECK(says(told(read), "caution: this is an old label of bag " + bag.id +
                               ": it says use by 2026-12-11, and the archive use by 2026-12-10; "
                               "the archive is the one to go by\n"));
    CHECK(says(told(read), "hint: all that it has: thawslip read " + bag.id));
    read.keep_until->basis = kitchen::DateBasis::StorageTable;
    CHECK(says(told(read), "it says best by 2026-12-11, and the archive use by 2026-12-10"));
    Kept by_list{"[[package]]\ndish = \"Plum compote\"\nservings = 4\nfood = \"fruit\"\n"
                 "contains = []\nthaw.method = \"refrigerator\"\n"};
    auto best = by_list.label();
    REQUIRE(best.keep_until);
    best.keep_until->date = std::chrono::year{2026} / 12 / 11;
    CHECK(by_list.told(best) == "");
    best.keep_until->basis = kitchen::DateBasis::SetByCook;
    CHECK(says(by_list.told(best), "it says use by 2026-12-11, and the archive best by "));
}

TEST_CASE_FIXTURE(Kept,
                  "other allergens are told, with those that are only added or may be there") {
    auto read = label();
    read.allergens = {"MILK"};
    CHECK(says(told(read),
               "its allergens are added milk, may contain tree nuts (walnut), milk, and "
               "those in the archive added milk, celery, may contain tree nuts "
               "(walnut);"));
    read = label();
    read.may_contain.clear();
    CHECK(says(told(read), "its allergens are added milk, celery, and those"));
    read = label();
    read.additions.clear();
    CHECK(says(told(read), "its allergens are celery, may contain tree nuts (walnut), and those"));
    read.extent = code::Extent::SeeCard; // the card says what is added
    CHECK(told(read) == "");
    read.allergens.clear();
    read.may_contain.clear();
    CHECK(says(told(read), "its allergens are none, and those"));
    read.keep_until.reset(); // it says no more than the dish and the bag
    CHECK(told(read) == "");
}

TEST_CASE_FIXTURE(Kept, "raw food under a label that does not say so is told, and the other way") {
    auto read = label();
    read.raw = true;
    CHECK(says(told(read), "it says that the food is raw, and the archive that it is not"));
    Kept raw{"[[package]]\ndish = \"Mince patties\"\nservings = 4\nfood = \"raw ground meat\"\n"
             "contains = []\nthaw.method = \"refrigerator\"\ncook = {in = \"pan\", time = "
             "\"12 min\", until = \"71 °C\"}\n"};
    CHECK(raw.told(raw.label()) == "");
    read = raw.label();
    REQUIRE(read.raw);
    read.raw = false;
    CHECK(says(raw.told(read), "it says that the food is not raw, and the archive that it is raw"));
}

TEST_CASE("where the description cannot be read any longer, that is told") {
    Kept kept{stew, "= no description ="};
    CHECK(says(kept.told(kept.label()), "caution: the description of bag " + kept.bag.id +
                                            " cannot be read any longer, so whether this label is "
                                            "its newest is not known\n"));
}

TEST_CASE_FIXTURE(Kept, "where a bag is by now is told of each that is not in the freezer") {
    const auto text = code::write(label());
    const auto told_as = [&](State state, const std::string& at) {
        archive.set_state(std::vector{bag.id}, state, at);
        return to_text(
            service::read_texts(&archive, std::vector{text}, service::style_of({})).messages);
    };
    CHECK(told_as(State::Frozen, "2026-11-01T08:00:00") == "");
    CHECK(told_as(State::Out, "2026-11-02T08:00:00") ==
          "caution: " + bag.id + ": this bag was taken out of the freezer (2026-11-02)\n");
    CHECK(told_as(State::Eaten, "2026-11-03T08:00:00") ==
          "caution: " + bag.id + ": this bag is known as eaten (2026-11-03)\n");
    CHECK(told_as(State::Discarded, "2026-11-04T08:00:00") ==
          "caution: " + bag.id + ": this bag is known as discarded (2026-11-04)\n");
    CHECK(told_as(State::NeverFilled, "2026-11-05T08:00:00") ==
          "caution: " + bag.id + ": this bag is known as never filled (2026-11-05)\n");
}

TEST_CASE_FIXTURE(Kept, "a bag is read in full from the archive, with what its card cautions of") {
    const auto readings = service::read_bag(&archive, bag.id, service::style_of({}));
    REQUIRE(readings.bags.size() == 1);
    const auto& message = std::get<code::Message>(readings.bags.front());
    CHECK(message.dish == "Barley stew"); // in the cook's own letters
    CHECK(message.bag_id == bag.id);
    CHECK(message.servings == 4);
    CHECK(to_text(readings.messages) == "");
    const auto none = service::read_bag(&archive, "medlar", service::style_of({}));
    CHECK(none.bags.empty());
    CHECK(none.messages.have_errors());
}

TEST_CASE("what has several lines, or ends as a code does, is the text of one") {
    code::Message message;
    message.dish = "PLUM COMPOTE";
    const auto text = code::write(message);
    CHECK(service::is_code_text(text));
    CHECK(service::is_code_text(text + "\r\n"));
    CHECK(service::is_code_text("two\nlines"));
    CHECK(service::is_code_text("two\tlines"));
    CHECK_FALSE(service::is_code_text("lentil stew"));
    CHECK_FALSE(service::is_code_text("lentil stew\n"));
    CHECK_FALSE(service::is_code_text(""));
    CHECK_FALSE(service::is_code_text(" \n"));
}

} // namespace old_label_test
