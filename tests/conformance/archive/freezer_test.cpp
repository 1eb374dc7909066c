// What is in the freezer, what to eat next, and planning by what the archive knows.

#include "app/archive_place.h"
#include "kitchen.h"
#include "service/freezer/bags.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <regex>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

/// The kitchen of the sample day, its labels printed.
struct StockedKitchen : Kitchen {
    StockedKitchen() { REQUIRE((*this)("labels day.toml -o labels.pdf").status == 0); }

    /// What python makes of an answer in JSON (RFC 8259), by an expression over `answer`.
    std::string json(const std::string& command, const std::string& expression) const {
        return (*this)(command + " --json | python3 -c " +
                       shell_word("import json, sys; answer = json.load(sys.stdin); print(" +
                                  expression + ")"))
            .out;
    }
};

/// The ids that a list of bags begins its lines with, as words of a command line.
std::string listed_ids(const Kitchen& kitchen, const std::string& list) {
    return kitchen(list + " | grep -o '^[0-9A-Z-]\\{11\\}' | tr '\\n' ' '").out;
}

std::size_t count(const std::string& text, const std::string& words) {
    std::size_t times = 0;
    for (auto at = text.find(words); at != std::string::npos; at = text.find(words, at + 1)) {
        ++times;
    }
    return times;
}

} // namespace

TEST_CASE_FIXTURE(StockedKitchen,
                  "the list has days left, weight and count of each dish, and all") {
    const auto list = (*this)("freezer list").out;
    CHECK(list.starts_with((*this)("freezer find bean").out.substr(0, 11))); // soonest date first
    CHECK(says(list, "61 days left"));
    CHECK(says(list, "Squash and red lentil stew: 3 bags, 18 servings, 6.6 kg\n"));
    CHECK(says(list, "in all: 14 bags, 84 servings, 25.8 kg\n"));
    CHECK_FALSE(says(list, "past the date"));
    now = "1795478400"; // 24 Nov 2026
    const auto later = (*this)("freezer list").out;
    CHECK(says(later, "7 days past"));
    CHECK(says(later, "3 bags past the date on the label; the rules of your local food authority"));
}

TEST_CASE_FIXTURE(StockedKitchen, "JSON has the keys that other programs rely on") {
    CHECK(json("freezer list",
               "all(set(('id','dish','servings','made','keep_until','state')) <= set(b) "
               "for b in answer), len(answer), sorted(b['keep_until'] for b in answer) == "
               "[b['keep_until'] for b in answer]") == "True 14 True\n");
    CHECK(json("freezer list", "answer[0]['made'], answer[0]['keep_until'], answer[0]['state']") ==
          "2026-10-17 2026-11-17 frozen\n");
    CHECK(json("freezer find nothing-like-it", "answer") == "[]\n");
}

TEST_CASE_FIXTURE(StockedKitchen, "words are found by their beginnings, whatever their accents") {
    write_file(folder / "other.toml", "[day]\nmade = 2026-10-17\n[[package]]\n"
                                      "dish = \"Crème of Jalapeño & Kürbis\"\nservings = 2\n"
                                      "use_by = 2026-12-01\n");
    REQUIRE((*this)("labels other.toml -o other.pdf").status == 0);
    for (const std::string words :
         {"creme", "CRÈME", "'cre\xCC\x80me'", "jalap kurb", "Kürbis", "'kür of'"}) {
        CAPTURE(words);
        CHECK(count((*this)("freezer find " + words).out, "serves") == 1);
    }
    CHECK(says((*this)("freezer find rème").out, "no bag"));
    CHECK(says((*this)("freezer find '\"*'").out, "no bag"));
}

TEST_CASE_FIXTURE(StockedKitchen, "what to eat next: the soonest date that can thaw in time") {
    // Only what needs the refrigerator for more than a day is left.
    for (const std::string words : {"bean", "chestnut", "plum"}) {
        REQUIRE((*this)("freezer eaten " + listed_ids(*this, "freezer find " + words)).status == 0);
    }
    const auto next = (*this)("freezer next 4");
    CAPTURE(next.out);
    CHECK(count(next.out, "Squash and red lentil stew") == 1); // no dish twice
    CHECK(count(next.out, "Apple and sage pork shoulder") == 1);
    CHECK(says(next.out, "nothing can be thawed as its label says by Sun 18 Oct 2026, 18:30"));
    CHECK(json("freezer next 4 --at 19:00",
               "[(b['eat'], b['thaw'], b['thaw_start'] < b['eat']) for b in answer]") ==
          "[('2026-10-20T19:00', 'refrigerator', True), "
          "('2026-10-21T19:00', 'refrigerator', True)]\n");
    CHECK(json("freezer next --days 4 --serves 12",
               "[(len(b['ids']), b['servings']) for b in answer]") == "[(2, 12), (2, 16)]\n");
    CHECK((*this)("freezer next 3 --at noon").status == 2);
    now = "1797245900"; // 14 Dec 2026: three bags of the stew, best by the 17th
    const auto late = (*this)("freezer next 5");
    CAPTURE(late.out);
    CHECK(says(late.out, "2 bags cannot be eaten in these days before the date on the label"));
    CHECK(says(late.out, "Apple and sage pork shoulder"));
}

TEST_CASE_FIXTURE(Kitchen,
                  "what is not proposed is told with its reason, and what is, how to thaw") {
    const auto bag = [](const std::string& dish, int servings, const std::string& use_by,
                        const std::string& weight, const std::string& thaw) {
        return "[[package]]\ndish = \"" + dish + "\"\nservings = " + std::to_string(servings) +
               "\nuse_by = " + use_by + "\nweight = \"" + weight +
               "\"\nthickness = \"20 mm\"\n[package.thaw]\nmethod = \"" + thaw +
               "\"\n[package.cook]\nin = \"pot\"\ntime = \"20 min\"\n";
    };
    write_file(folder / "day.toml", "[day]\nmade = 2026-10-17\n" +
                                        bag("Leek soup", 4, "2026-12-01", "1.2 kg", "microwave") +
                                        bag("Quince pot", 4, "2026-12-02", "1 kg", "cold water") +
                                        bag("Barley pot", 1, "2026-12-03", "400 g", "microwave") +
                                        bag("Plum pots", 1, "2026-12-04", "100 g", "microwave") +
                                        bag("Old broth", 4, "2026-10-20", "1 kg", "microwave"));
    REQUIRE((*this)("labels day.toml -o labels.pdf").status == 0);
    now = "1792937100"; // 25 Oct 2026
    const auto next = (*this)("freezer next 4 --serves 2").out;
    CAPTURE(next);
    CHECK(says(next, "into the microwave: Mon 26 Oct 2026, "));
    CHECK(says(next, "; then cook at once\n"));
    CHECK(says(next, "into cold water, at most 21 °C (70 °F), the bag sealed and the water changed "
                     "every 30 min: Tue 27 Oct 2026, "));
    CHECK(says(next, "2 days more: every dish that serves 2 was proposed once\n"));
    CHECK(says(next, "not proposed, small portions: Plum pots\n"));
    CHECK(says(next, "not proposed, all bags together do not serve 2: Barley pot\n"));
    CHECK(says(next, "not proposed: 1 bag past the date on the label, see thawslip freezer list"));
    REQUIRE((*this)("freezer eaten " + listed_ids(*this, "freezer list")).status == 0);
    CHECK((*this)("freezer next").out == "the freezer is empty, as far as the archive knows\n");
}

TEST_CASE_FIXTURE(Kitchen,
                  "where the soonest bag cannot be thawed in time, the next that can is next") {
    // The soonest date needs the refrigerator for more than a day; beside it stands a dish of the
    // same day, then the same dish of another day, that cook from frozen.
    const auto bag = [](const std::string& dish, const std::string& made, const std::string& use_by,
                        const std::string& thaw) {
        return "[[package]]\ndish = \"" + dish + "\"\nservings = 2\nmade = " + made +
               "\nuse_by = " + use_by + "\nweight = \"2.5 kg\"\nthickness = \"60 mm\"\n" +
               "[package.thaw]\nmethod = \"" + thaw + "\"\n";
    };
    const std::string fridge = "refrigerator";
    const std::string at_once = "from frozen";
    const std::string day = "[day]\nmade = 2026-10-17\n";
    SUBCASE("another dish of the same day") {
        write_file(folder / "day.toml", day +
                                            bag("Plum roast", "2026-10-17", "2026-11-01", fridge) +
                                            bag("Leek soup", "2026-10-17", "2026-11-02", at_once));
    }
    SUBCASE("the same dish of another day") {
        write_file(folder / "day.toml", day + bag("Leek soup", "2026-10-17", "2026-11-01", fridge) +
                                            bag("Leek soup", "2026-10-16", "2026-11-02", at_once));
    }
    REQUIRE((*this)("labels day.toml -o labels.pdf").status == 0);
    const auto next = (*this)("freezer next 1");
    CAPTURE(next.out);
    CHECK(says(next.out, "Leek soup"));
    CHECK(says(next.out, "use by 2026-11-02"));
    CHECK_FALSE(says(next.out, "nothing can be thawed"));
}

TEST_CASE_FIXTURE(StockedKitchen, "nothing in the freezer is no mistake") {
    std::filesystem::remove(archive);
    std::filesystem::remove(archive + "-wal");
    std::filesystem::remove(archive + "-shm");
    for (const std::string command : {"freezer list", "freezer next"}) {
        CAPTURE(command);
        CHECK((*this)(command).status == 0);
        CHECK(says((*this)(command).out, "there is no archive at " + archive));
        CHECK(json(command, "answer") == "[]\n");
    }
    CHECK_FALSE(std::filesystem::exists(archive));
}

TEST_CASE_FIXTURE(StockedKitchen, "a plan by a bag's id or words is the plan by its description") {
    const std::string when = " --eat '2026-12-03 18:30' --now '2026-11-29 10:00' --json";
    const auto by_file = (*this)("plan day.toml --dish squash" + when);
    REQUIRE(by_file.status == 0);
    std::filesystem::remove(folder / "day.toml");
    const auto id = first_id("squash");
    const auto second = (*this)("freezer find squash | sed -n 2p").out.substr(0, 11);
    CHECK((*this)("plan squash" + when).out == by_file.out);
    CHECK((*this)("plan red lentil" + when).out == by_file.out);
    CHECK((*this)("plan " + id + when).out == by_file.out);
    CHECK(count((*this)("plan squash --bags 2" + when).out, second) > 0);
    // Two dishes for one table, by the id of one and a word of the other.
    const auto two = (*this)("plan " + id + " plum" + when);
    CAPTURE(two.err);
    CHECK(two.status == 0);
    CHECK(says(two.out, "Plum and ginger compote"));
    CHECK(says(two.out, id));
}

TEST_CASE_FIXTURE(StockedKitchen, "a plan says what stands against a bag") {
    const std::string when = " --eat '2026-12-03 18:30' --now '2026-11-29 10:00'";
    const auto id = first_id("squash");
    CHECK(says((*this)("plan bean" + when).out,
               "before this meal: best if used by 17 Nov 2026. Its quality may be less"));
    REQUIRE((*this)("freezer out " + id).status == 0);
    const auto out = (*this)("plan " + id + when);
    CHECK(out.status == 0);
    CHECK(says(out.err, "is out of the freezer since 2026-10-17T14:05"));
    REQUIRE((*this)("freezer eaten " + id).status == 0);
    const auto eaten = (*this)("plan " + id + when);
    CHECK(eaten.status == 1);
    CHECK(says(eaten.err, "was eaten on 2026-10-17"));
    CHECK((*this)("plan gravel" + when).status == 1);
    CHECK(says((*this)("plan K7Q-2M4-9XC" + when).err, "error: "));
    CHECK(says((*this)("plan missing.toml" + when).err, "missing.toml"));
}

TEST_CASE_FIXTURE(StockedKitchen,
                  "the rows of a door list come from the archive, the soonest date first") {
    REQUIRE((*this)("freezer eaten " + first_id("squash")).status == 0);
    app::Settings settings;
    settings.archive = archive;
    auto open = app::open_archive(settings, archive::Mode::Read);
    const auto rows = service::door_rows(open, kitchen::allergen_lists().front());
    REQUIRE(rows.size() == 5);
    CHECK(rows[0].dish == "Smoky bean and sausage bake");
    CHECK(rows[0].bags.size() == 3);
    CHECK(rows[0].thaw == kitchen::ThawMethod::ColdWater);
    CHECK(rows[0].thaw_lead.has_value());
    CHECK(rows[2].bags.size() == 2); // of the stew, one bag is gone
    CHECK(rows[2].basis == kitchen::DateBasis::StorageTable);
    CHECK(std::ranges::is_sorted(rows, {}, &wording::DoorRow::keep_until));
}

TEST_CASE_FIXTURE(StockedKitchen, "without a day the door list has every bag that is frozen") {
    const auto gone = first_id("squash");
    REQUIRE((*this)("freezer eaten " + gone).status == 0);
    std::filesystem::remove(folder / "day.toml");
    REQUIRE((*this)("lists --door -o door.pdf").status == 0);
    const auto words = run("pdftotext -layout " + shell_word(folder / "door.pdf") + " -").out;
    CAPTURE(words);
    CHECK(std::regex_search(words, std::regex{"Plum and ginger compote +1 +2\n"}));
    CHECK(std::regex_search(words, std::regex{"Squash and red lentil stew +2 +3\n"}));
    CHECK(says(words, "Contains celery")); // the archive has the day's description
    CHECK_FALSE(says(words, "see the label"));
    const auto refused = (*this)("lists --day -o day.pdf");
    CHECK(refused.status == 2);
    CHECK(says(refused.err, "DAY.toml"));
}

TEST_CASE_FIXTURE(StockedKitchen,
                  "a label printed again of a bag that is eaten is said, and listed") {
    const auto id = first_id("squash");
    const auto other = (*this)("freezer find squash | sed -n 2p").out.substr(0, 11);
    REQUIRE((*this)("freezer eaten " + id).status == 0);
    const auto of_it =
        "caution: bag " + id + " of \"Squash and red lentil stew\" is noted as eaten";
    const auto again = (*this)("reprint " + id + " -o again.pdf");
    CHECK(says(again.err, of_it));
    CHECK_FALSE(says((*this)("reprint " + other + " -o other.pdf").err, "is noted as"));
    CHECK_FALSE(says((*this)("reprint " + id + " --cards -o card.pdf").err, "is noted as"));
    CHECK_FALSE(says((*this)("freezer list --all").out, "printed again"));
    now = "1795478400"; // 24 Nov 2026
    const auto all = (*this)("labels day.toml -o labels.pdf");
    CHECK(says(all.err, of_it));
    CHECK(count(all.err, "is noted as") == 1);
    CHECK(says((*this)("freezer list --all").out, "label was printed again on 2026-11-24"));
    CHECK_FALSE(says((*this)("labels day.toml --no-archive -o labels.pdf").err, "is noted as"));
}

TEST_CASE_FIXTURE(Kitchen, "a place where no archive is is told as that, not as an empty freezer") {
    const auto list = (*this)("freezer list");
    CHECK(list.status == 0);
    CHECK(says(list.out, "there is no archive at " + archive));
    REQUIRE((*this)("labels day.toml -o labels.pdf").status == 0);
    sql("UPDATE bag SET state = 'eaten'");
    CHECK(says((*this)("freezer list").out, "the freezer is empty"));
}

TEST_CASE_FIXTURE(Kitchen,
                  "what comes back after more days than its label allows is to be discarded") {
    const auto dish = [](const std::string& name, const std::string& food,
                         const std::string& thaw) {
        return "[[package]]\ndish = \"" + name + "\"\nservings = 4\nfood = \"" + food +
               "\"\nweight = \"500 g\"\nthickness = \"20 mm\"\nthaw.method = " + thaw + "\n";
    };
    write_file(folder / "day.toml",
               "[day]\nmade = 2026-10-17\n" +
                   dish("Windfall mince", "raw ground meat", "\"refrigerator\"") +
                   dish("Quince stew", "stew", "[\"cold water\", \"refrigerator\"]") +
                   dish("Damson soup", "soup", "\"cold water\""));
    REQUIRE((*this)("labels day.toml -o labels.pdf").status == 0);
    const auto back_after = [this](int hours, const std::string& words) {
        now = "1792245900"; // 14:05 on 17 Oct
        REQUIRE((*this)("freezer out " + words).status == 0);
        now = std::to_string(1792245900 + hours * 3600);
        const auto back = (*this)("freezer back " + words);
        CHECK(back.status == 0);
        CHECK(says(back.err, " has been out since 2026-10-17 14:05"));
        return says(back.err, "it must not be eaten; discard it: thawslip freezer discarded ");
    };
    CHECK(back_after(16 * 24, "mince"));
    CHECK_FALSE(back_after(20, "mince"));
    CHECK(back_after(16 * 24, "quince"));
    CHECK_FALSE(back_after(40, "quince")); // by the slower of its ways
    CHECK(back_after(40, "damson"));
}

TEST_CASE_FIXTURE(Kitchen,
                  "what was thrown away is neither taken out nor eaten, by whatever name") {
    REQUIRE((*this)("labels day.toml -o labels.pdf").status == 0);
    const auto id = first_id("compote");
    REQUIRE((*this)("freezer discarded " + id).status == 0);
    for (const std::string command : {"out ", "eaten "}) {
        const auto refused = (*this)("freezer " + command + id);
        CHECK(refused.status == 1);
        CHECK(says(refused.err, "was discarded on"));
        CHECK(says(refused.err, "thawslip freezer back " + id));
    }
    CHECK(says((*this)("read " + id).err, "known as discarded"));
    REQUIRE((*this)("freezer back " + id).status == 0);
    REQUIRE((*this)("freezer eaten " + id).status == 0);
    CHECK((*this)("freezer out " + id).status == 1);
    CHECK((*this)("freezer discarded " + id).status == 0); // half of it was
}

TEST_CASE_FIXTURE(Kitchen, "what is light is weighed in grams") {
    const auto dish = [](const std::string& name, const std::string& weight) {
        return "[[package]]\ndish = \"" + name + "\"\nservings = 1\nfood = \"soup or stew\"\n" +
               "weight = \"" + weight + "\"\n";
    };
    write_file(folder / "day.toml", "[day]\nmade = 2026-10-17\n" + dish("Sloe drops", "40 g") +
                                        dish("Quince pot", "750 g") + dish("Medlar pot", "1 kg"));
    REQUIRE((*this)("labels day.toml -o labels.pdf").status == 0);
    const auto list = (*this)("freezer list").out;
    CAPTURE(list);
    CHECK(says(list, "  40 g  "));
    CHECK(says(list, " 750 g  "));
    CHECK(says(list, "1.0 kg  "));
    CHECK(says(list, "Quince pot: 1 bag, 1 serving, 750 g\n"));
    CHECK(says(list, "in all: 3 bags, 3 servings, 1.8 kg\n"));
}
