#include "kitchen/bag_id.h"
#include "service/freezer/bags.h"
#include "service/freezer/freezer_list.h"
#include "service/freezer/freezer_state.h"
#include "support/command.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::test_support;
using archive::State;

namespace {

constexpr kitchen::Date packed = std::chrono::year{2026} / 10 / 17;

archive::PackageRecord package(const std::string& dish, const std::string& words, int bags) {
    archive::PackageRecord record;
    record.dish = dish;
    record.words = words;
    record.made = packed;
    record.keep_until = std::chrono::year{2026} / 12 / 17;
    record.servings = 4;
    record.weight = kitchen::Mass{1500.0};
    for (int n = 1; n <= bags; ++n) {
        record.bags.push_back(kitchen::bag_id({dish, packed, n}));
    }
    return record;
}

/// An archive with two bags of a stew and one of a compote.
struct Stocked {
    ScratchFolder folder;
    archive::Archive archive =
        std::move(archive::Archive::open(folder / "archive.db", archive::Mode::Write)).value();
    std::string stew = kitchen::bag_id({"Barley stew", packed, 1});
    std::string second = kitchen::bag_id({"Barley stew", packed, 2});

    Stocked() {
        auto compote = package("Plum compote", "plum compote", 1);
        compote.keep_until = std::chrono::year{2027} / 3 / 1;
        compote.weight.reset();
        archive.record({"2026-10-17T14:05:00",
                        {"labels", "stock", "", "", ""},
                        {{packed,
                          "",
                          "day.toml",
                          "# day\n",
                          {package("Barley stew", "barley stew", 2), compote}}}});
    }
    service::Outcome<std::vector<archive::Bag>> note(const std::vector<std::string>& typed,
                                                     State state, const std::string& at) {
        return service::note_state(archive, typed, state, {at, {.name = "here"}});
    }
    service::FreezerList list(const service::FreezerQuestion& question,
                              kitchen::Date today = packed) {
        return service::freezer_list(archive, question, today, kitchen::allergen_lists().front());
    }
};

} // namespace

TEST_CASE_FIXTURE(Stocked, "ids are read as people type them, and each bag counts once") {
    auto slipped = stew;
    std::erase(slipped, '-');
    for (auto& c : slipped) {
        c = c == '0' ? 'o' : c == '1' ? 'l' : static_cast<char>(std::tolower(c));
    }
    const auto bags = service::bags_by_id(archive, {stew, slipped, second});
    REQUIRE(bags);
    REQUIRE(bags.value->size() == 2);
    CHECK(bags.value->front().id == stew);
}

TEST_CASE_FIXTURE(Stocked, "every id that is none is said, with the nearest there is") {
    auto near = stew;
    near[0] = near[0] == 'A' ? 'B' : 'A';
    const auto bags = service::bags_by_id(archive, {near, stew, "nothing"});
    CHECK_FALSE(bags);
    REQUIRE(bags.messages.all().size() == 2);
    CHECK(bags.messages.all()[0].what.hints ==
          std::vector<std::string>{"there is " + stew + " (Barley stew)"});
    CHECK(bags.messages.all()[1].what.message.starts_with("\"nothing\" is not a bag id: "));
}

TEST_CASE_FIXTURE(Stocked, "words that are no id mean the bags of a dish") {
    CHECK(service::bags_meant(archive, {"bar", "stew"}).value->size() == 2);
    CHECK(service::bags_meant(archive, {second}).value->size() == 1);
    CHECK(to_text(service::bags_meant(archive, {"green", "soup"}).messages)
              .starts_with("error: no bag in the freezer is called \"green soup\"\n"));
    CHECK(service::bags_meant(archive, {"stew,", "plum"}).value->size() == 3);
    CHECK(to_text(service::bags_meant(archive, {"\xFF"}).messages) ==
          "error: the words are not UTF-8\n");
}

TEST_CASE_FIXTURE(Stocked, "a list has the soonest date first, and what each dish comes to") {
    auto list = this->list({});
    REQUIRE(list.bags.size() == 3);
    CHECK(list.bags.back().bag.dish == "Plum compote");
    CHECK(list.totals.at("Barley stew").bags == 2);
    CHECK(list.totals.at("Barley stew").grams == doctest::Approx(3000));
    CHECK(list.totals.at("Barley stew").all_weighed);
    CHECK_FALSE(list.totals.at("Plum compote").all_weighed);
    CHECK(list.past == 0);
    CHECK(this->list({}, std::chrono::year{2026} / 12 / 17).past == 0);
    CHECK(this->list({}, std::chrono::year{2026} / 12 / 18).past == 2);
    CHECK(this->list({.words = {"PLUM"}}).bags.size() == 1);
}

TEST_CASE_FIXTURE(Stocked, "what is noted holds, and bags that are gone are listed when asked") {
    const auto noted = note({stew}, State::Eaten, "2026-11-01T18:00:00");
    REQUIRE(noted);
    CHECK(noted.value->front().state == State::Frozen); // as it was before
    CHECK(list({}).bags.size() == 2);
    CHECK(list({.words = {}, .gone_too = true}).bags.size() == 3);
    CHECK(list({.words = {}, .gone_too = true}).totals.at("Barley stew").bags == 1);
    CHECK(service::is_gone(*archive.bag(stew)));
    CHECK_FALSE(note({stew + ",", "nothing"}, State::Frozen, "2026-11-02T18:00:00"));
    CHECK(archive.bag(stew)->state == State::Eaten); // all or none
}

TEST_CASE_FIXTURE(Stocked, "what is discarded is gone, and files keep their word for it") {
    REQUIRE(note({stew}, State::Discarded, "2026-11-01T18:00:00"));
    CHECK(service::is_gone(*archive.bag(stew)));
    CHECK(archive::shown_word(State::Discarded) == "discarded");
    CHECK(archive::word_of(State::Discarded) == "thrown"); // since schema 1
    CHECK(archive::state_of("thrown") == State::Discarded);
}

TEST_CASE_FIXTURE(Stocked, "a bag that comes back from thawing is cautioned about") {
    CHECK(note({stew}, State::Out, "2026-11-01T18:00:00").messages.all().empty());
    CHECK(to_text(note({stew}, State::Frozen, "2026-11-02T18:00:00").messages)
              .starts_with("caution: " + stew + " has been out since 2026-11-01 18:00; "));
}

TEST_CASE_FIXTURE(Stocked, "the door list has a row for the bags of each package") {
    const auto rows = service::door_rows(archive, kitchen::allergen_lists().front());
    REQUIRE(rows.size() == 2);
    REQUIRE(rows[0].bags.size() == 2);
    CHECK(rows[0].bags[0].id == stew);
    CHECK(rows[0].bags[1].id == second);
    CHECK(rows[0].bags[1].number == 2);
    CHECK_FALSE(rows[0].allergens); // that description has no dish: what it contains is not known
    CHECK(rows[1].dish == "Plum compote");
}
