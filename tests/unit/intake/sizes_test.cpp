// One dish in bags of several sizes, several ways to thaw, and what is cooked beside it, as the
// cook writes them.

#include "unit/intake/told.h"

#include <doctest/doctest.h>

namespace sizes_test {

using namespace thawslip;
using intake_test::outcome_of;
using intake_test::told;

namespace {

const std::string sized = R"([day]
made = 2026-10-24

[[package]]
dish      = "Lentil and quince stew"
food      = "soup or stew"
thickness = "30 mm"

[[package.size]]
servings  = 6
bags      = 3
weight    = "2.2 kg"
container = "26 x 30 cm"

[[package.size]]
servings  = 2
bags      = 4
weight    = "750 g"
thickness = "20 mm"

[package.thaw]
method = ["refrigerator", "cold water"]

[[package.finish]]
add  = "300 ml vegetable stock"
when = "at the start"

[[package.side]]
add   = "300 g rice"
takes = "15 min"
)";

std::string with(const std::string& from, const std::string& to) {
    auto text = sized;
    const auto at = text.find(from);
    REQUIRE(at != std::string::npos);
    return text.replace(at, from.size(), to);
}

} // namespace

TEST_CASE("each size of a dish is a package with all that the dish says") {
    const auto outcome = outcome_of(sized);
    CHECK(outcome.faults.empty());
    REQUIRE(outcome.day.has_value());
    const auto& packages = outcome.day->packages;
    REQUIRE(packages.size() == 2);
    for (const auto& package : packages) {
        CHECK(package.dish == "Lentil and quince stew");
        REQUIRE(package.size.has_value());
        CHECK(package.size->portions == 26);
        REQUIRE(package.size->lightest.has_value());
        CHECK(package.size->lightest->grams == doctest::Approx(750));
        REQUIRE(package.size->thinnest.has_value());
        CHECK(package.size->thinnest->in_millimetres() == doctest::Approx(20));
    }
    CHECK(packages[0].servings == 6);
    CHECK(packages[0].bags == 3);
    CHECK(packages[0].weight->grams == doctest::Approx(2200));
    CHECK(packages[0].thickness->in_millimetres() == doctest::Approx(30)); // as the dish says
    REQUIRE(packages[0].container.has_value());
    CHECK(packages[0].container->length.in_millimetres() == doctest::Approx(300));
    CHECK(packages[1].servings == 2);
    CHECK(packages[1].bags == 4);
    CHECK(packages[1].thickness->in_millimetres() == doctest::Approx(20)); // as it says itself
    CHECK_FALSE(packages[1].container.has_value());
}

TEST_CASE("what is added is written for a bag of the first size, and shared out to the others") {
    const auto packages = outcome_of(sized).day->packages;
    CHECK(packages[0].finish[0].add.as_written == "300 ml vegetable stock");
    CHECK(packages[1].finish[0].add.as_written == "100 ml vegetable stock");
    CHECK(packages[1].sides[0].add.as_written == "100 g rice");
    // Or for as many servings as the dish says.
    const auto told_for = outcome_of(with("thickness = \"30 mm\"", "servings = 3")).day->packages;
    CHECK(told_for[0].finish[0].add.as_written == "600 ml vegetable stock");
    CHECK(told_for[1].finish[0].add.as_written == "200 ml vegetable stock");
}

TEST_CASE("sizes that serve as many are refused, for by that number bags are known again") {
    const auto alike = with("servings  = 2", "servings  = 6");
    CHECK(told(alike) ==
          "day.toml:16:13: error: another size of this dish serves 6 too: expected a number of "
          "servings that no other size has, for bags are known by it\n"
          "    servings  = 6\n"
          "                ^\n"
          "    hint: bags that serve as many are of one size: bags = 7 in the first "
          "[[package.size]] of both\n");
    // So is one that says nothing else than its dish, where another says the same.
    auto same = with("thickness = \"30 mm\"", "servings = 6");
    same.erase(same.find("servings  = 2\n"), 14);
    CHECK(told(same).find("day.toml:15:1: error: another size") != std::string::npos);
}

TEST_CASE("what the archive has of sizes that serve as many is told apart by their order") {
    Diagnostics faults;
    const auto document = toml::parse(with("servings  = 2", "servings  = 6"), "day.toml", faults);
    const auto packages = intake::read_day(document, faults, intake::From::Archive).day.packages;
    CHECK(faults.empty());
    CHECK(packages[0].size->name == 6);
    CHECK(packages[1].size->name == 1006);
}

TEST_CASE("what a size cannot say is refused at its place") {
    CHECK(told(with("thickness = \"30 mm\"", "weight = \"2 kg\"")) ==
          "day.toml:7:10: error: weight stands beside [[package.size]]; each size has its own\n"
          "    weight = \"2 kg\"\n"
          "             ^~~~~~\n"
          "    hint: write it below each [[package.size]]: weight = \"2.2 kg\"\n");
    CHECK(told(with("servings  = 2\n", "")).find("\"servings\" is missing in [[package.size]]") !=
          std::string::npos);
    CHECK(told(with("bags      = 4", "bgas      = 4")).find("did you mean \"bags\"?") !=
          std::string::npos);
    CHECK(told(with("26 x 30 cm", "26 cm")).find("expected width × length") != std::string::npos);
    CHECK(told(with("26 x 30 cm", "26 x 30")).find("day.toml:13:") != std::string::npos);
    CHECK(told(with("26 x 30 cm", "26 x 300 cm")).find("a side") != std::string::npos);
    CHECK(told(with("26 x 30 cm", "26 x 30 x 90 cm")).find("a side") != std::string::npos);
    CHECK(told(with("26 x 30 cm", "26 x 30 x 9 cm")).empty());
}

TEST_CASE("one dish twice in a day is still two, and sizes are named as the way out") {
    const auto text = sized + "\n[[package]]\ndish = \"Lentil and quince stew\"\nservings = 2\n"
                              "food = \"soup or stew\"\n";
    CHECK(told(text).find("[[package.size]]") != std::string::npos);
}

TEST_CASE("a list of methods is read in its order") {
    const auto packages = outcome_of(sized).day->packages;
    CHECK(packages[0].thaw.method == kitchen::ThawMethod::Refrigerator);
    REQUIRE(packages[0].thaw.others.size() == 1);
    CHECK(packages[0].thaw.others[0].method == kitchen::ThawMethod::ColdWater);
    CHECK(told(with("\"cold water\"]", "\"cold watr\"]")) ==
          "day.toml:22:27: error: \"cold watr\" is not a thaw method: expected \"refrigerator\", "
          "\"cold water\", \"running water\", \"microwave\" or \"from frozen\"\n"
          "    method = [\"refrigerator\", \"cold watr\"]\n"
          "                              ^~~~~~~~~~~\n"
          "    hint: did you mean \"cold water\"?\n");
    CHECK(told(with("\"cold water\"]", "\"refrigerator\"]")).find("twice") != std::string::npos);
    CHECK(told(with("[\"refrigerator\", \"cold water\"]", "[]")).find("empty list") !=
          std::string::npos);
}

TEST_CASE("a side says what it takes, and is ready at serving where nothing else is said") {
    const auto side = outcome_of(sized).day->packages[0].sides.at(0);
    CHECK(side.add.item == "rice");
    CHECK(side.takes.high == std::chrono::minutes{15});
    CHECK(side.ready.anchor == kitchen::When::Anchor::AtServing);
    const auto late =
        outcome_of(with("takes = \"15 min\"", "takes = \"15 min\"\nready = \"last 5 min\""))
            .day->packages[0]
            .sides.at(0);
    CHECK(late.ready.offset == std::chrono::minutes{5});
    CHECK(told(with("takes = \"15 min\"\n", "")).find("\"takes\" is missing") != std::string::npos);
    CHECK(told(with("takes = \"15 min\"", "time = \"15 min\"")).find("unknown key \"time\"") !=
          std::string::npos);
}

} // namespace sizes_test
