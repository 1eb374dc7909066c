// The page and the command line are two doors to the same kitchen: what a route answers of the
// sample day's archive is what the command answers in JSON, member by member.

#include "support/asked.h"
#include "support/printed_days.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

/// A desk, and the program beside it, with one archive and one clock.
struct TwoDoors {
    FakeMachine fake;
    desk::Desk desk{machine_of(fake)};
    ScratchFolder none; // no settings but the defaults
    std::string bag;

    TwoDoors() {
        print_labels(fake, orchard_sample());
        auto archive = fake.open_archive();
        bag = archive.find("squash", archive::Which::All).front().id;
        const auto out = archive.find("pork", archive::Which::All).front().id;
        archive.set_state({&out, 1}, archive::State::Out, "2026-10-17T11:30:00");
    }

    /// What a command says in JSON.
    json::Json command(const std::string& arguments) const {
        const auto outcome =
            run("XDG_CONFIG_HOME=" + shell_word(none.path().string()) +
                " TZ=UTC0 SOURCE_DATE_EPOCH=1792238400 " + THAWSLIP_PROGRAM + " " + arguments +
                " --json --archive " + shell_word(fake.archive_file()));
        CAPTURE(arguments);
        CAPTURE(outcome.err);
        CHECK(outcome.status == 0);
        auto said = json::parsed(outcome.out);
        REQUIRE_FALSE(said.is_discarded());
        return said;
    }
    json::Json route(const std::string& path, const json::Json& body) {
        const auto answer = post(desk, path, body);
        CAPTURE(answer.body);
        REQUIRE(answer.status == 200);
        return said(answer);
    }
};

/// Whether an answer has all members of another, and the same in them.
void check_has(const json::Json& answer, const json::Json& members) {
    REQUIRE(members.size() > 0);
    for (const auto& member : members.items()) {
        CAPTURE(member.key());
        CHECK(answer.value(member.key(), json::Json{}) == member.value());
    }
}

} // namespace

TEST_CASE("the freezer's bags are those of freezer list") {
    TwoDoors doors;
    const std::pair<const char*, json::Json> questions[] = {
        {"list", json::Json::object()},
        {"list --all", {{"gone", true}}},
        {"find squash", {{"words", {"squash"}}}},
        {"list --without celery,nuts", {{"without", "celery,nuts"}}}};
    for (const auto& [options, body] : questions) {
        const auto bags = doors.command(std::string{"freezer "} + options);
        CHECK(bags.size() > 0);
        CHECK(doors.route("/api/freezer", body)["bags"] == bags);
    }
}

TEST_CASE("the next dinners are those of freezer next") {
    TwoDoors doors;
    const auto proposals = doors.command("freezer next 6 --at 19:15 --serves 4");
    CHECK(proposals.size() > 0);
    auto answered = doors.route("/api/freezer/next",
                                {{"days", 6}, {"at", "19:15"}, {"serves", 4}})["proposals"];
    for (auto& proposal : answered) { // the page has the labels' own words besides
        CHECK(proposal.erase("bags") == 1);
        CHECK(proposal.erase("thaw_words") == 1);
    }
    CHECK(answered == proposals);
}

TEST_CASE("a bag's history is that of freezer history") {
    TwoDoors doors;
    const auto history = doors.command("freezer history " + doors.bag);
    const auto answer = doors.route("/api/freezer/history", {{"bag", doors.bag}});
    CHECK(answer["events"] == history["history"]);
    CHECK(answer["dish"] == history["dish"]);
}

TEST_CASE("a bag that is read says what read says") {
    TwoDoors doors;
    check_has(doors.route("/api/read", {{"typed", doors.bag}})["bags"].at(0),
              doors.command("read " + doors.bag));
}

TEST_CASE("a plan is that of plan, in time and too late") {
    TwoDoors doors;
    for (const auto* eat : {"2026-10-24T18:30", "2026-10-19T07:00"}) {
        check_has(doors.route("/api/plan", {{"bags", {doors.bag, "chestnut"}}, {"eat", eat}}),
                  doors.command("plan " + doors.bag + ", chestnut --eat " + eat));
    }
}
