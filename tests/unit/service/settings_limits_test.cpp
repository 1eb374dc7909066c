// What the settings take, at the edge of it and beyond.

#include "kitchen/bag_id.h"
#include "service/print/part.h"
#include "service/settings.h"

#include <doctest/doctest.h>
#include <fmt/format.h>

namespace settings_limits_test {

using namespace thawslip;
using service::PaperFrom;
using service::Settings;

namespace {

std::optional<Settings> read(const std::string& text) {
    return service::settings_from(text, "settings.toml").value;
}

std::string told(const std::string& text) {
    return to_text(service::settings_from(text, "settings.toml").messages);
}

/// The degrees of the refrigerator that is set so; below 0: it is refused.
double refrigerator(const std::string& text) {
    const auto settings = read("refrigerator = \"" + text + "\"\n");
    return settings ? settings->kitchen.thaw.refrigerator.celsius : -1.0;
}

bool is_cautioned(const std::string& text) {
    return told("refrigerator = \"" + text + "\"\n").find("caution: ") != std::string::npos;
}

} // namespace

TEST_CASE("every number is taken at both ends of its range, and not beyond") {
    struct Range {
        std::string before; ///< the value
        std::string lowest;
        std::string highest;
        std::string too_low;
        std::string too_high;
    };
    const auto most_number = kitchen::highest_kitchen_number;
    const auto most = service::most_copies;
    std::vector<Range> ranges = {
        {"altitude_metres", "-430", "6000", "-430.1", "6000.1"},
        {"altitude_meters", "-430", "6000", "-430.1", "6000.1"},
        {"paper_reflectance", "0.05", "1.0", "0.049", "1.001"},
        {"kitchen_number", "1", std::to_string(most_number), "0", std::to_string(most_number + 1)},
    };
    for (const std::string job : {"labels", "finishing_cards", "cook_day_cards", "lists"}) {
        ranges.push_back({job + ".dpi", "72", "4800", "71.9", "4800.1"});
        ranges.push_back(
            {job + ".copies", "1", std::to_string(most), "0", std::to_string(most + 1)});
    }
    for (const auto& [key, lowest, highest, too_low, too_high] : ranges) {
        CAPTURE(key);
        CHECK(read(key + " = " + lowest + "\n"));
        CHECK(read(key + " = " + highest + "\n"));
        CHECK(told(key + " = " + too_low + "\n").find("settings.toml:1:") == 0);
        CHECK_FALSE(read(key + " = " + too_low + "\n"));
        CHECK_FALSE(read(key + " = " + too_high + "\n"));
    }
}

TEST_CASE("what is set is what holds, and all else is as usual") {
    const auto settings = read("altitude_metres = 1500\nkitchen_number = 7\npaper_reflectance = "
                               "0.7\npeople_at_risk = true\nlarge_print = true\nrecord_prints = "
                               "false\narchive = \"barn.db\"\ngoods = \"goods.toml\"\nunits = "
                               "\"both\"\ncups = \"australian\"\nplacing = \"rack\"\n");
    REQUIRE(settings);
    CHECK(settings->kitchen.altitude_metres == 1500.0);
    CHECK(settings->kitchen.number == 7);
    CHECK(settings->paper_reflectance == 0.7);
    CHECK(settings->kitchen.people_at_risk);
    CHECK(settings->large_print);
    CHECK_FALSE(settings->record_prints);
    CHECK(settings->archive == "barn.db");
    CHECK(settings->goods_file == "goods.toml");
    CHECK(settings->kitchen.units == kitchen::Units::Both);
    CHECK(settings->kitchen.measures == kitchen::Measures::Australian);
    CHECK(settings->kitchen.thaw.placing == kitchen::Placing::Rack);
    CHECK(read("altitude_meters = 1200\n")->kitchen.altitude_metres == 1200.0);
    const auto usual = read("");
    REQUIRE(usual);
    const Settings plain;
    CHECK(usual->kitchen.altitude_metres == plain.kitchen.altitude_metres);
    CHECK(usual->kitchen.number == plain.kitchen.number);
    CHECK(usual->paper_reflectance == plain.paper_reflectance);
    CHECK_FALSE(usual->kitchen.people_at_risk);
    CHECK_FALSE(usual->large_print);
    CHECK(usual->record_prints);
    CHECK(usual->paper_from == PaperFrom::Nobody);
    CHECK(usual->kitchen.thaw.refrigerator.celsius == plain.kitchen.thaw.refrigerator.celsius);
}

TEST_CASE("every system of units and every kind of cup can be set") {
    using kitchen::Measures;
    using kitchen::Units;
    for (const auto& [word, units] : {std::pair{"metric", Units::Metric},
                                      {"us", Units::Us},
                                      {"both", Units::Both},
                                      {"written", Units::Written}}) {
        CAPTURE(std::string{word});
        CHECK(read(fmt::format("units = \"{}\"\n", word))->kitchen.units == units);
    }
    for (const auto& [word, cups] : {std::pair{"us", Measures::Us},
                                     {"metric", Measures::Metric},
                                     {"australian", Measures::Australian},
                                     {"imperial", Measures::Imperial}}) {
        CAPTURE(std::string{word});
        CHECK(read(fmt::format("cups = \"{}\"\n", word))->kitchen.measures == cups);
    }
    for (const auto& [word, meant] : {std::pair{"si", "metric"}, {"imperial", "us"}}) {
        const auto said = told(fmt::format("units = \"{}\"\n", word));
        CHECK(said.find(fmt::format("\"{}\"", meant)) != std::string::npos);
    }
    CHECK(told("cups = \"uk\"\n").find("\"imperial\"") != std::string::npos);
}

// Food Standards Scotland, "Storing food safely": 0 to 5 °C; UK Food Standards Agency: 8 °C at
// most; FDA Food Code (2022), 3-501.16: 41 °F at most.
TEST_CASE("a refrigerator is above 0 and at most 8 degrees, and warmer than 5 is cautioned about") {
    CHECK(refrigerator("4 °C") == doctest::Approx(4.0));
    CHECK(refrigerator("0.1 °C") == doctest::Approx(0.1));
    CHECK(refrigerator("8 °C") == doctest::Approx(8.0));
    CHECK(refrigerator("41 °F") == doctest::Approx(5.0));
    for (const std::string out :
         {"0 °C", "8.1 °C", "-1 °C", "\u22121 °C", "32 °F", "47 °F", "warm"}) {
        CAPTURE(out);
        CHECK(refrigerator(out) < 0.0);
    }
    CHECK_FALSE(is_cautioned("5 °C"));
    CHECK_FALSE(is_cautioned("41 °F"));
    CHECK(is_cautioned("5.1 °C"));
    CHECK(is_cautioned("42 °F"));
    CHECK(is_cautioned("8 °C"));
    // Each is said once.
    for (const std::string out : {"-1 °C", "9 °C"}) {
        const auto said = told("refrigerator = \"" + out + "\"\n");
        CHECK(said.find("food in it would freeze, or spoil") != std::string::npos);
        CHECK(said.find("error", said.find("error") + 1) == std::string::npos);
    }
}

TEST_CASE("one language or two are named, each that there is, and none twice") {
    Settings settings;
    CHECK_FALSE(set_languages(settings, "de,es"));
    CHECK(settings.language == "de");
    CHECK(settings.second_language == "es");
    CHECK(second_style_of(settings));
    CHECK_FALSE(set_languages(settings, "es"));
    CHECK(settings.language == "es");
    CHECK(settings.second_language == "");
    CHECK_FALSE(second_style_of(settings));
    CHECK(set_languages(settings, "de,de") == "\"de\" is named twice");
    CHECK(set_languages(settings, "de,es,en") == "3 languages are named, expected one or two");
    CHECK(set_languages(settings, "de,")->starts_with("\"\" is not a language"));
    CHECK(set_languages(settings, "")->starts_with("\"\" is not a language"));
    CHECK(settings.language == "es"); // as before
    CHECK(told("language = [\"en\", \"en\"]\n").find("\"en\" is named twice") != std::string::npos);
    CHECK_FALSE(read("language = [\"en\", \"es\", \"de\"]\n"));
}

TEST_CASE("it is said who chose the paper") {
    Settings settings;
    CHECK(why_paper(settings) == "for neither settings nor locale say which");
    settings.paper_from = PaperFrom::Settings;
    CHECK(why_paper(settings) == "as the settings have it");
    settings.paper_from = PaperFrom::Option;
    CHECK(why_paper(settings) == "as --paper has it");
    settings.paper_from = PaperFrom::Locale;
    settings.locale = "de_DE";
    CHECK(why_paper(settings) == "as the locale de_DE has it");
}

TEST_CASE("settings that are no TOML are refused as a whole, and an unknown key with the nearest") {
    CHECK_FALSE(read("paper = \"a4\"\nlanguage = \n"));
    CHECK(told("papr = \"a4\"\n").find("\"paper\"") != std::string::npos);
    CHECK_FALSE(read("papr = \"a4\"\n"));
}

} // namespace settings_limits_test
