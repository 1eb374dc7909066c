// Bags of several sizes, ways to thaw and sides, on the command line: the sample day of them.

#include "support/command.h"

#include <doctest/doctest.h>
#include <regex>
#include <vector>

namespace choices_test {

using namespace thawslip::test_support;

namespace {

const std::string sample = std::string{THAWSLIP_SOURCE_DIR} + "/samples/windfall-day.toml";

/// A kitchen of its own, without settings.
struct Kitchen {
    ScratchFolder folder;

    Outcome operator()(const std::string& arguments) const {
        return run("cd " + shell_word(folder.path().string()) +
                   " && XDG_CONFIG_HOME=" + shell_word(folder.path().string()) +
                   " XDG_DATA_HOME=" + shell_word(folder.path().string()) + " TZ=UTC0 " +
                   THAWSLIP_PROGRAM + " " + arguments);
    }
    std::string text_of(const std::string& pdf) const {
        return run("pdftotext -layout " + shell_word(folder / pdf) + " -").out;
    }
};

bool has(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

std::size_t count(const std::string& text, const std::string& words) {
    std::size_t found = 0;
    for (auto at = text.find(words); at != std::string::npos; at = text.find(words, at + 1)) {
        ++found;
    }
    return found;
}

/// The ids in a list of bags.
std::vector<std::string> ids_in(const std::string& text) {
    static const std::regex id{"[0-9A-Z]{3}-[0-9A-Z]{3}-[0-9A-Z]{3}"};
    std::vector<std::string> ids;
    for (std::sregex_iterator at{text.begin(), text.end(), id}; at != std::sregex_iterator{};
         ++at) {
        ids.push_back(at->str());
    }
    return ids;
}

const std::string plan = "plan " + shell_word(sample) + " --eat '2026-12-03 18:30'";

} // namespace

TEST_CASE("a dish in two sizes is labelled bag by bag, and listed once") {
    const Kitchen kitchen;
    REQUIRE(kitchen("labels " + shell_word(sample) + " -o labels.pdf").status == 0);
    const auto labels = kitchen.text_of("labels.pdf");
    CHECK(count(labels, "Lentil and quince stew") == 7);
    CHECK(count(labels, "of 3") == 3);
    CHECK(count(labels, "of 4") == 4);
    REQUIRE(kitchen("lists " + shell_word(sample) + " --day -o day.pdf").status == 0);
    const auto sheet = kitchen.text_of("day.pdf");
    CHECK(count(sheet, "1 · Lentil and quince stew") == 1);
    CHECK(has(sheet, "3 bags, each serves 6"));
    CHECK(has(sheet, "4 bags, each serves 2"));
    const auto list = kitchen("freezer list");
    CHECK(ids_in(list.out).size() == 7);
    CHECK(kitchen("archive check").status == 0);
}

TEST_CASE("a size more or a bag more leaves the labels of the others as they are") {
    const Kitchen kitchen;
    auto text = read_file(sample);
    write_file(kitchen.folder / "day.toml", text);
    REQUIRE(kitchen("labels day.toml -o labels.pdf").status == 0);
    const auto before = ids_in(kitchen("freezer list").out);
    REQUIRE(before.size() == 7);
    const auto at = text.find("[package.thaw]");
    text.insert(at,
                "[[package.size]]\nservings = 4\nweight = \"1.5 kg\"\nthickness = \"25 mm\"\n\n");
    text.replace(text.find("bags      = 3"), 13, "bags      = 4");
    write_file(kitchen.folder / "day.toml", text);
    const auto again = kitchen("labels day.toml -o labels.pdf");
    CAPTURE(again.err);
    REQUIRE(again.status == 0);
    CHECK_FALSE(has(again.err, "no longer described"));
    const auto after = kitchen("freezer list").out;
    for (const auto& id : before) {
        CHECK(has(after, id));
    }
    CHECK(ids_in(after).size() == 9);
}

TEST_CASE("a plan takes the first way on the label that serves, and says what it is too late for") {
    const Kitchen kitchen;
    const auto early = kitchen(plan + " --now '2026-11-28 09:00'");
    CHECK(has(early.out, "from the freezer to the refrigerator"));
    CHECK_FALSE(has(early.out, "Too late"));
    const auto morning = kitchen(plan + " --now '2026-12-03 09:00'");
    CHECK(morning.status == 0);
    CHECK(has(morning.out, "into cold water"));
    CHECK(has(morning.out, "Too late for the first way to thaw on its label"));
    const auto evening = kitchen(plan + " --now '2026-12-03 17:00'");
    CHECK(has(evening.out, "in the microwave"));
    const auto late = kitchen(plan + " --now '2026-12-03 18:20'");
    CHECK(late.status != 0);
    const auto json = kitchen(plan + " --now '2026-12-03 09:00' --json").out;
    CHECK(count(json, "\"first_choice\":false") == 2);
    CHECK(has(json, "\"serves\":2,\"bags\":"));
    // What is to be minded names its moments: the rules of cold water where it begins to thaw.
    const auto rules = json.find("\"id\":\"cold_water_rules\"");
    REQUIRE(rules != std::string::npos);
    const auto named = json.find("\"events\":[", rules);
    REQUIRE(named != std::string::npos);
    const auto number = std::stoul(json.substr(named + 10)); // throws where there is none
    auto event = json.find("\"at\":");
    for (auto i = number; i > 0; --i) {
        event = json.find("\"at\":", event + 1);
    }
    CHECK(json.substr(event, json.find('}', event) - event).find("\"what\":\"thaw\"") !=
          std::string::npos);
}

TEST_CASE("sides stand in the plan, its sheet and its calendar, before the dish where they take "
          "longer") {
    const Kitchen kitchen;
    const auto outcome =
        kitchen(plan + " --now '2026-12-03 09:00' -o plan.pdf --calendar plan.ics");
    CHECK(outcome.status == 0);
    const auto barley =
        outcome.out.find("17:50  Start 450 g (1 lb) pearl barley (second pot, 40 min)");
    const auto start = outcome.out.find("18:05  Start cooking 1 bag of Lentil");
    REQUIRE(barley != std::string::npos);
    REQUIRE(start != std::string::npos);
    CHECK(barley < start);
    CHECK(has(outcome.out, "150 g (5¼ oz) pearl barley"));
    CHECK(has(kitchen.text_of("plan.pdf"), "cooks beside it"));
    CHECK(has(read_file(kitchen.folder / "plan.ics"), "pearl barley"));
}

TEST_CASE("cards say all ways to thaw and what is cooked beside, in three languages") {
    const Kitchen kitchen;
    struct Case {
        const char* language;
        const char* other;
        const char* side;
    };
    const Case cases[] = {{"en", "Or in cold water", "40 min before"},
                          {"es", "O bien en agua fría", "40 min antes"},
                          {"de", "Oder in kaltem Wasser", "40 min vor"}};
    for (const auto& c : cases) {
        CAPTURE(c.language);
        REQUIRE(kitchen("cards " + shell_word(sample) + " --no-archive -o cards.pdf --language " +
                        c.language)
                    .status == 0);
        const auto cards = run("pdftotext " + shell_word(kitchen.folder / "cards.pdf") + " -").out;
        CHECK(has(cards, c.other));
        CHECK(has(cards, c.side));
    }
}

TEST_CASE("check --json has sizes, ways to thaw and sides, each with its figures") {
    const Kitchen kitchen;
    const auto json = kitchen("check --json " + shell_word(sample)).out;
    CHECK(count(json, "\"number\":1,") == 2);
    CHECK(has(json, "\"servings\":6"));
    CHECK(has(json, "\"grams\":750"));
    CHECK(has(json, "\"container\":\"18 × 22 cm\""));
    CHECK(has(json, "\"other_thaws\":[{\"thaw\":\"cold water\",\"look_from_minutes\":180"));
    CHECK(has(json, "\"other_thaws\":[{\"thaw\":\"cold water\",\"look_from_minutes\":90"));
    CHECK(count(json, "\"takes_minutes\":[40,40]") == 2);
}

TEST_CASE("allergens that a side names are asked about") {
    const Kitchen kitchen;
    auto text = read_file(sample);
    text.replace(text.find("450 g pearl barley"), 18, "450 g egg noodles");
    write_file(kitchen.folder / "day.toml", text);
    const auto outcome = kitchen("check day.toml");
    CHECK(has(outcome.out, "\"egg noodles\" names an allergen"));
}

} // namespace choices_test
