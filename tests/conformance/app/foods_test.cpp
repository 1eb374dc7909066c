#include "support/command.h"

#include <doctest/doctest.h>

namespace foods_test {

using namespace thawslip::test_support;

namespace {

Outcome thawslip_says(const std::string& arguments) {
    return run("XDG_CONFIG_HOME=/nonexistent " THAWSLIP_PROGRAM " " + arguments);
}

bool has(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

/// What `check` says of one package.
Outcome check(const std::string& package, const std::string& options = "") {
    const ScratchFolder folder;
    const auto file = folder / "day.toml";
    write_file(file, "[day]\nmade = 2026-10-17\n[[package]]\nservings = 4\n" + package);
    return thawslip_says("check " + options + " " + shell_word(file) + " 2>&1");
}

} // namespace

TEST_CASE("foods lists what is asked for, with its source, and JSON that Python reads") {
    const auto chicken = thawslip_says("foods chicken");
    CHECK(chicken.status == 0);
    CHECK(chicken.out.starts_with("raw poultry pieces\n    frozen 9 months; chilled 1 to 2 days; "
                                  "once thawed 1 to 2 days; at least 165 °F (74 °C)\n"));
    CHECK(has(chicken.out, "FoodSafety.gov"));
    CHECK(has(chicken.out, "\ncooked poultry\n"));
    CHECK_FALSE(has(chicken.out, "\nbread\n"));
    const auto json = thawslip_says(
        "foods --json Hackfleisch | python3 -c 'import json, sys; told = json.load(sys.stdin); "
        "print(told[0][\"food\"], told[0][\"frozen\"][\"low\"], told[0][\"chilled\"][\"high\"])'");
    CHECK(json.out == "raw ground meat 3 2\n");
    CHECK(has(thawslip_says("--storage-list canada foods shrimp").out, "chilled 1 to 2 days"));
    const auto none = thawslip_says("foods qqqqqqqq 2>&1");
    CHECK(none.status == 1);
    CHECK(has(none.out, "error: no kind of food comes near \"qqqqqqqq\""));
}

TEST_CASE("an everyday word is taken as the kind it means, and check --why says so") {
    const auto outcome = check("dish = \"Montag\"\nfood = \"Rindergulasch\"\n", "--why");
    CHECK(outcome.status == 0);
    CHECK(has(outcome.out, "food: \"Rindergulasch\" is taken as \"stew\""));
}

TEST_CASE("what may be raw or cooked is asked, the raw kind first") {
    const auto outcome = check("dish = \"Monday\"\nfood = \"turkey legs\"\n");
    CHECK(outcome.status == 1);
    CHECK(has(outcome.out, "error: \"turkey legs\" is not one kind of food: raw or cooked?"));
    CHECK(has(outcome.out, "hint: did you mean \"raw poultry pieces\"?"));
}

TEST_CASE("without food, what the words name decides: low targets and long chilling are refused") {
    const std::string date = "use_by = 2026-12-17\n";
    const auto low = check("dish = \"Lemon thighs\"\n" + date +
                           "[package.cook]\nin = \"oven\"\nuntil = \"60 °C\"\n"
                           "[[package.ingredient]]\nadd = \"1 kg turkey legs\"\n");
    CHECK(low.status == 1);
    CHECK(has(low.out, "below the safe minimum"));
    const auto long_chilled = check("dish = \"Chicken kit\"\ndays_refrigerated = 6\n" + date);
    CHECK(long_chilled.status == 1);
    CHECK(has(long_chilled.out, "6 days in the refrigerator before freezing; expected 3 at most"));
    const auto named = check("dish = \"Roast dinner\"\n" + date +
                             "[[package.ingredient]]\nadd = \"2 kg lamb shoulder\"\n");
    CHECK(has(named.out, "\"lamb shoulder\": \"raw roasts\""));
    const auto unknown = check("dish = \"Grandpa's secret\"\n" + date);
    CHECK(has(unknown.out, "no rule could be applied; 165 °F (74 °C) is asked for"));
}

TEST_CASE("a dish whose ingredients say raw asks whether food says enough") {
    const auto outcome = check("dish = \"Green pot\"\nfood = \"vegetable soup\"\n"
                               "[[package.ingredient]]\nadd = \"800 g pork belly\"\n");
    CHECK(outcome.status == 0);
    CHECK(has(outcome.out, "\"pork belly\" is \"raw roasts\", which asks for more care"));
}

TEST_CASE("what is not to be frozen at home is refused, and says what would do") {
    CHECK(has(check("dish = \"Feast\"\nfood = \"raw stuffed turkey\"\n").out,
              "not to be frozen stuffed at home"));
    CHECK(has(check("dish = \"Salmon sushi\"\nuse_by = 2026-12-17\n").out, "parasites"));
}

} // namespace foods_test
