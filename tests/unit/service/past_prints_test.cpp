// What was printed, as a cook looks for it.

#include "kitchen/bag_id.h"
#include "records.h"
#include "service/archive/past_prints.h"
#include "service/print/printed_bags.h"
#include "support/command.h"

#include <doctest/doctest.h>

namespace past_prints_test {

using namespace thawslip;
using namespace thawslip::test_support;
using service::What;

namespace {

struct Printed {
    ScratchFolder folder;
    archive::Archive archive =
        std::move(archive::Archive::open(folder / "archive.db", archive::Mode::Write)).value();

    void print(const std::string& what, const std::string& at, kitchen::Date made,
               const std::vector<archive::PackageRecord>& packages,
               const std::vector<std::string>& part = {}) {
        std::string options;
        for (const auto& id : part) {
            options += (options.empty() ? "bags = [\"" : "\", \"") + id;
        }
        options += options.empty() ? "" : "\"]\n";
        archive::PrintRecord record;
        record.at = at;
        record.setup = {what, "roll", "", options + "# settings\n", ""};
        record.days = {{made, "", "/" + kitchen::to_iso(made), kitchen::to_iso(made), packages}};
        if (!part.empty()) {
            record.part = part;
        }
        archive.record(record);
    }
    std::set<std::string> have(What what, const std::vector<std::string>& of) {
        std::set<std::string> ids;
        for (const auto& [id, facts] :
             service::printed_bags(archive, what, {of.begin(), of.end()})) {
            ids.insert(id);
        }
        return ids;
    }
};

} // namespace

TEST_CASE_FIXTURE(Printed, "prints stand the last one first, each with its dishes and bags once") {
    const auto stew = package("stew", october(17), 2);
    const auto soup = package("soup", october(17), 1);
    print("labels", "2026-10-17T14:05:00", october(17), {stew, soup});
    print("cards", "2026-10-18T09:00:00", october(17), {stew, soup}, {stew.bags[1]});
    print("labels", "2026-10-19T09:00:00", october(17), {stew, soup}); // again
    const auto prints = service::past_prints(archive);
    REQUIRE(prints.size() == 2);
    CHECK(prints[0].what == "labels");
    CHECK(prints[0].at == "2026-10-19T09:00:00");
    CHECK(prints[0].first_at == "2026-10-17T14:05:00");
    CHECK(prints[0].times == 2);
    CHECK(prints[0].stock == "roll");
    CHECK(prints[0].days == std::vector{october(17)});
    CHECK(prints[0].dishes == std::vector<std::string>{"stew", "soup"});
    CHECK(prints[0].bags.size() == 3);
    CHECK(prints[1].what == "cards");
    CHECK(prints[1].times == 1);
    CHECK(prints[1].dishes == std::vector<std::string>{"stew"});
    CHECK(prints[1].bags == std::vector{stew.bags[1]});
}

TEST_CASE_FIXTURE(Printed, "a bag has its cards when it has both kinds, and its label by itself") {
    const auto stew = package("stew", october(17), 3);
    const auto& ids = stew.bags;
    using Ids = std::set<std::string>;
    print("labels", "2026-10-17T14:05:00", october(17), {stew}, {ids[0], ids[1]});
    CHECK(have(What::Labels, ids) == Ids{ids[0], ids[1]});
    CHECK(have(What::DoorList, ids) == Ids{ids[0], ids[1]}); // lists go by the labels
    CHECK(have(What::Cards, ids).empty());
    print("finishing cards", "2026-10-17T15:05:00", october(17), {stew}, {ids[0], ids[2]});
    CHECK(have(What::FinishingCards, ids) == Ids{ids[0], ids[2]});
    CHECK(have(What::CookDayCards, ids).empty());
    CHECK(have(What::Cards, ids).empty());
    print("cook-day cards", "2026-10-17T16:05:00", october(17), {stew}, {ids[1], ids[2]});
    CHECK(have(What::CookDayCards, ids) == Ids{ids[1], ids[2]});
    CHECK(have(What::Cards, ids) == Ids{ids[2]});
    print("cards", "2026-10-17T17:05:00", october(17), {stew}); // all of both
    CHECK(have(What::Cards, ids) == Ids{ids.begin(), ids.end()});
    CHECK(have(What::FinishingCards, ids).size() == 3);
    CHECK(have(What::Labels, ids) == Ids{ids[0], ids[1]}); // as before
    CHECK(have(What::Labels, {kitchen::bag_id({"soup", october(17), 1})}).empty());
}

TEST_CASE_FIXTURE(Printed, "a print that a later program wrote has no bag that is known") {
    const auto stew = package("stew", october(17), 1);
    archive::PrintRecord record;
    record.at = "2026-10-17T14:05:00";
    record.setup = {"labels", "roll", "", "gilded_edges = true\n# settings\n", ""};
    record.days = {{october(17), "", "/day", "day", {stew}}};
    archive.record(record);
    CHECK(have(What::Labels, stew.bags).empty());
    CHECK(service::past_prints(archive).at(0).bags.empty());
}

} // namespace past_prints_test
