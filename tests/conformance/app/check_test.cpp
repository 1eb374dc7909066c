#include "support/command.h"

#include <doctest/doctest.h>

namespace check_test {

using namespace thawslip::test_support;

namespace {

const std::string sample = THAWSLIP_SOURCE_DIR "/samples/orchard-day.toml";

/// With no settings but the defaults.
Outcome check(const std::string& arguments) {
    return run("XDG_CONFIG_HOME=/nonexistent " THAWSLIP_PROGRAM " check " + arguments);
}

bool has(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

std::string day_with(const ScratchFolder& folder, const std::string& package) {
    const auto file = folder / "day.toml";
    write_file(file, "[day]\nmade = 2026-10-17\n[[package]]\ndish = \"Barley pot\"\nservings = 4\n"
                     "use_by = 2027-01-17\n" +
                         package);
    return shell_word(file);
}

} // namespace

TEST_CASE("the README's day and settings are taken as they stand there") {
    const ScratchFolder folder;
    const auto readme = read_file(THAWSLIP_SOURCE_DIR "/README.md");
    const auto example = [&readme](const std::string& first_line) {
        const auto begin = readme.find(first_line);
        REQUIRE(begin != std::string::npos);
        return readme.substr(begin, readme.find("```", begin) - begin);
    };
    const auto day = folder / "day.toml";
    const auto settings = folder / "settings.toml";
    write_file(day, example("[day]\nmade "));
    write_file(settings, example("paper         = \"a4\""));
    write_file(folder / "goods.toml", read_file(THAWSLIP_SOURCE_DIR "/samples/goods.toml"));
    const auto outcome = check(shell_word(day) + " --settings " + shell_word(settings));
    CAPTURE(outcome.err);
    CHECK(outcome.status == 0);
    CHECK_FALSE(has(outcome.err, "error"));
}

TEST_CASE("check says the figures of print and code only where all is asked for") {
    for (const std::string words : {"read with ease from: ", "modules of ", "x-heights: "}) {
        CAPTURE(words);
        CHECK(has(check("--why=all " + shell_word(sample)).out, words));
        CHECK_FALSE(has(check("--why " + shell_word(sample)).out, words));
    }
}

TEST_CASE("check answers in JSON that Python reads, with dates as ISO 8601") {
    const auto outcome = run(
        "XDG_CONFIG_HOME=/nonexistent " THAWSLIP_PROGRAM " check --json " + shell_word(sample) +
        " | python3 -c 'import json, sys, datetime; told = json.load(sys.stdin); "
        "first = told[\"packages\"][0]; print(len(told[\"packages\"]), first[\"dish\"], "
        "datetime.date.fromisoformat(first[\"made\"]), first[\"keep_until\"], first[\"basis\"], "
        "len(first[\"bags\"]), first[\"cautions\"][0][\"id\"], "
        "first[\"cautions\"][0][\"shown_on\"], told[\"cautions\"][0][\"id\"])'");
    CHECK(outcome.status == 0);
    CHECK(outcome.out == "5 Squash and red lentil stew 2026-10-17 2026-12-17 best 3 "
                         "slow-cooker-thaw-first card two-hour-rule\n");
}

TEST_CASE("check says what room the bags take, and which of them its figures leave out") {
    const ScratchFolder folder;
    const std::string measured = "bags = 2\nweight = \"1.5 kg\"\nthickness = \"30 mm\"\n";
    const auto all = check("--archive none.db " + day_with(folder, measured));
    CHECK(has(all.out, "the freezer: 2 bags take about "));
    CHECK(has(all.out,
              "of food, bags and gaps not counted\n    in one flat stack 6 cm (3 in) high\n"));
    const auto some = check("--archive none.db " +
                            day_with(folder, measured + "[[package]]\ndish = \"Pear crumble\"\n"
                                                        "servings = 4\nuse_by = 2027-01-17\n"));
    CHECK(has(some.out, "the freezer: 3 bags take about "));
    CHECK(has(some.out,
              "not counted; 1 bag without a weight\n    in one flat stack 6 cm (3 in) high; "
              "1 bag without a thickness\n"));
    CHECK_FALSE(
        has(check("--archive none.db " + day_with(folder, "bags = 2\n")).out, "the freezer: "));
}

TEST_CASE("check says what decided how long each bag thaws, and what of its size it was told") {
    const ScratchFolder folder;
    const auto thaws = [&](const std::string& sizes, const std::string& method) {
        const auto told =
            check("--why " + day_with(folder, sizes + "[package.thaw]\nmethod = \"" + method +
                                                  "\"\n[package.cook]\nin = "
                                                  "\"pot\"\ntime = \"20 min\"\n"));
        const auto at = told.out.find("    thaw: ");
        return at == std::string::npos ? told.err : told.out.substr(at);
    };
    const std::string weight = "weight = \"1 kg\"\n";
    const std::string thickness = "thickness = \"30 mm\"\n";
    CHECK(has(thaws(weight + thickness + "food = \"soup or stew\"\n", "refrigerator"),
              ", by heat transfer through its thickness\n          a soup's 88 % water, on a tray, "
              "one face does most of the work; looked at from "));
    CHECK(has(thaws(weight + "placing = \"rack\"\n", "refrigerator"),
              ", by the agencies' rule for its weight (USDA FSIS); thickness is not given\n"
              "          75 % water, on a rack, air on both faces"));
    CHECK(has(thaws(thickness, "cold water"), "; weight is not given\n          75 % water\n"));
    CHECK(has(thaws("", "refrigerator"), "; neither weight nor thickness is given\n"));
    CHECK(has(thaws(weight + thickness, "microwave"),
              ", by the heat it takes up, over the oven's power\n"));
    CHECK(thaws(weight, "from frozen").starts_with("    thaw: cooked from frozen\n"));
}

TEST_CASE("check says whether a day's bags are too many for a freezer to freeze, or to hold") {
    const ScratchFolder folder;
    const auto of_bags = [&](const std::string& bags, const std::string& freezer) {
        auto day = read_file(folder / "day.toml");
        day.insert(day.find("[[package]]"), "freezer = \"" + freezer + "\"\n");
        day += "bags = " + bags + "\n";
        write_file(folder / "own.toml", day);
        return check("--archive none.db " + shell_word(folder / "own.toml")).out;
    };
    day_with(folder, "weight = \"1.5 kg\"\nthickness = \"30 mm\"\n");
    CHECK(has(of_bags("2", "200 l"), ": within the limit: all at once\n"));
    CHECK(has(of_bags("2", "200 l"), ": there is room\n"));
    CHECK(has(of_bags("4", "8 l"), ": tight, for baskets and gaps take about a quarter of it\n"));
    CHECK(has(of_bags("4", "5 l"), ": too much: make room first\n"));
    CHECK(has(of_bags("5", "200 l"),
              ": between the two limits: all at once if the freezer is a cold "
              "one, spread out\n"));
    CHECK(has(of_bags("9", "200 l"), ": over the limit\n    freeze in 2 batches, a day apart"));
}

TEST_CASE("check asks about an ingredient that names an allergen nobody declared") {
    const ScratchFolder folder;
    const auto outcome =
        check(day_with(folder, "contains = [\"celery\", \"kiwi\"]\n[[package.ingredient]]\n"
                               "add = \"200 g walnuts\"\n"));
    CHECK(outcome.status == 0);
    CHECK(has(outcome.out, "\"walnuts\" names an allergen that contains does not list: tree nuts "
                           "(walnut)?"));
    CHECK(has(outcome.out, "\"kiwi\" is on no list of allergens known here; it is printed as "
                           "written"));
    CHECK_FALSE(has(outcome.out, "free from"));
}

TEST_CASE("check answers in JSON where bags lie and what they contain, also where it refuses") {
    const ScratchFolder folder;
    const auto json = [&](const std::string& package, const std::string& expression) {
        return run("XDG_CONFIG_HOME=/nonexistent " THAWSLIP_PROGRAM " check --json " +
                   day_with(folder, package) +
                   " 2>/dev/null | python3 -c 'import json, sys; answer = json.load(sys.stdin); "
                   "print(" +
                   expression + ")'")
            .out;
    };
    CHECK(json("contains = [\"celery\", \"walnut\"]\nmay_contain = \"milk\"\n"
               "place = \"cellar\"\n",
               "[answer[\"packages\"][0][key] for key in (\"contains\", \"may_contain\", "
               "\"place\")]") == "[['celery', 'walnut'], ['milk'], 'cellar']\n");
    CHECK(json("bags = 0\n", "len(answer[\"packages\"]), answer[\"messages\"][0][\"severity\"], "
                             "answer[\"messages\"][0][\"line\"]") == "0 error 7\n");
}

TEST_CASE(
    "check speaks English as a whole, whatever is printed, and a plan the language that is set") {
    const ScratchFolder folder;
    const auto day = day_with(folder, "contains = [\"kiwi\"]\n");
    const auto outcome = check("--language de " + day);
    CHECK(has(outcome.out, "17 Jan 2027"));
    CHECK(has(outcome.out, "caution: \"kiwi\" is on no list of allergens known here"));
    const auto plan =
        run("XDG_CONFIG_HOME=/nonexistent SOURCE_DATE_EPOCH=1792238400 " THAWSLIP_PROGRAM
            " plan --language de --eat '2026-11-03 18:30' " +
            day);
    CHECK(has(plan.out, "Vorsicht: "));
    CHECK_FALSE(has(plan.out, "caution: "));
}

TEST_CASE("days that share a freezer are added up, also where their batches only meet") {
    const ScratchFolder folder;
    const auto write = [&](const char* name, const char* made, const char* dish, int bags,
                           const char* kitchen) {
        write_file(folder / name, std::string{"[day]\nmade = "} + made + "\nkitchen = \"" +
                                      kitchen + "\"\nfreezer = \"60 l\"\n[[package]]\ndish = \"" +
                                      dish + "\"\nservings = 4\nfood = \"stew\"\nbags = " +
                                      std::to_string(bags) + "\nweight = \"1.2 kg\"\n");
        return shell_word(folder / name);
    };
    const auto first = write("a.toml", "2026-10-17", "Barley pot", 4, "Mill"); // until the 18th
    const auto second = write("b.toml", "2026-10-18", "Kale pot", 2, "Mill");
    const auto third = write("c.toml", "2026-10-19", "Leek pot", 2, "Mill");
    const auto elsewhere = write("d.toml", "2026-10-18", "Swede pot", 2, "Barn");
    const std::string words = "go in on 2026-10-18, and the limit in 24 h is";
    CHECK(has(check(first + " " + second).out, words));
    CHECK(has(check(first + " " + second).out, "4.8 kg"));
    CHECK_FALSE(has(check(first + " " + third).out, "of all together"));
    CHECK_FALSE(has(check(first + " " + elsewhere).out, "of all together"));
}

} // namespace check_test
