#include "wording/language.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <map>
#include <regex>
#include <set>
#include <string>

using namespace thawslip;

namespace {

/// The numbers of a phrase in rising order, whatever the language's decimal mark; those of its
/// slots are none.
std::string numbers_in(const std::string& phrase) {
    static const std::regex slot{"\\{[0-9]\\}"};
    static const std::regex number{"[0-9]+([.,][0-9]+)?"};
    const auto text = std::regex_replace(phrase, slot, "");
    std::multiset<std::string> found;
    for (std::sregex_iterator at{text.begin(), text.end(), number}, end; at != end; ++at) {
        auto one = at->str();
        std::ranges::replace(one, ',', '.');
        found.insert(std::move(one));
    }
    std::string all;
    for (const auto& one : found) {
        all += (all.empty() ? "" : " ") + one;
    }
    return all;
}

/// Every phrase with a number of its own, by its key; the words of cautions among them.
std::map<std::string, std::string> numbers_of(const wording::Language& language) {
    std::map<std::string, std::string> all;
    for (const auto& key : language.keys()) {
        all[key] = numbers_in(language.say(key));
    }
    std::erase_if(all, [](const auto& each) { return each.second.empty(); });
    return all;
}

} // namespace

TEST_CASE("no language says another number than the others, nor one that no other says") {
    const auto english = numbers_of(wording::shipped_language("en"));
    for (const auto& code : wording::shipped_languages()) {
        CAPTURE(code);
        const auto others = numbers_of(wording::shipped_language(code));
        for (const auto& [key, numbers] : english) {
            CAPTURE(key);
            REQUIRE(others.contains(key));
            CHECK(others.at(key) == numbers);
        }
        for (const auto& [key, numbers] : others) {
            CAPTURE(key);
            CHECK(english.contains(key));
        }
    }
}

TEST_CASE("the figures that stand in words are these, and each has its source") {
    const std::map<std::string, std::string> published = {
        // USDA FSIS, The Big Thaw: Safe Defrosting Methods, 2013: 24 h for 4 to 5 lb, here 2 kg;
        // half of it as the soonest: ours.
        {"thaw.refrigerator-rule", "12 2 24 24"},
        {"thaw.refrigerator-rule-least", "2 24 24"},
        {"thaw.within-day", "1"},
        {"thaw.within-day-least", "1"},
        {"thaw.within-day-eaten", "1"},
        {"thaw.within-day-eaten-least", "1"},
        // FDA Food Code 3-501.13 (B): running water at 21 °C (70 °F) or below. USDA FSIS, The Big
        // Thaw, 2013: changed every 30 minutes.
        {"thaw.cold-water", "21 30 70"},
        {"thaw.cold-water-rule", "21 30 70"},
        {"thaw.cold-water-least", "21 30 70"},
        {"thaw.cold-water-rule-least", "21 30 70"},
        // FDA Food Code 3-501.14, Cooling: within 2 h, and 6 h in all.
        {"cooling.as-placed", "2 6"},
        {"cooling.on-rack", "2 6"},
        {"cooling.ice-water", "2 6"},
        {"cooling.before", "2 6"},
        // An oven for raw meat at 325 °F at least: USDA FSIS, Roasting Those "Other" Holiday Meats
        // (from
        // memory); dials in Celsius mark it as 160.
        {"caution.vessel-unknown", "160 325"},
        {"caution.cool-before-freezing", "2 6"},
        // USDA FSIS, Freezing and Food Safety: 2 to 3 lb per cubic foot in 24 h, 32 to 48 g a
        // litre.
        {"freezing.load", "24"},
        {"freezing.size-unknown", "2 24 3 32 48"},
        // FDA Food Code 3-401.12, Microwave Cooking: covered for 2 minutes.
        {"caution.microwave-stand", "2"},
        // FDA, Bad Bug Book, 2012, Phytohaemagglutinin: 30 minutes.
        {"caution.beans-unclear", "30"},
        // National Center for Home Food Preservation, Freezing: Garlic-in-Oil, 2015.
        {"caution.garlic-in-oil-days", "4"},
        // FDA Food Code 3-402.11: −20 °C for 168 hours.
        {"caution.fish-eaten-raw", "7"},
        // INSPQ (Quebec), From Tiny Tot to Toddler, Honey: never before the first birthday.
        {"caution.risk-honey", "12"},
        // Food Safety Authority of Ireland, Berries: boil imported frozen ones for 1 minute.
        {"caution.risk-berries", "1"},
        {"cooling.long", "24"},
        // USDA FSIS, Danger Zone (40 °F to 140 °F), from memory: no more than 2 h.
        {"caution.delayed-start", "2"},
        // The same: hot food is held at 140 °F or above.
        {"caution.stands-out", "140 2 60"},
        // FoodSafety.gov, Meat and Poultry Roasting Charts: an oven of 325 °F or higher.
        {"caution.oven-cool", "160 325"},
        // USDA FSIS, The Big Thaw: cold water, changed every 30 minutes.
        {"caution.cold-water-said", "30"},
    };
    auto said = numbers_of(wording::shipped_language("en"));
    std::erase_if(said, [](const auto& each) {
        const auto group = each.first.substr(0, each.first.find('.'));
        return group != "thaw" && group != "cooling" && group != "caution" && group != "freezing" &&
               group != "standing";
    });
    for (const auto& [key, numbers] : said) {
        CAPTURE(key);
        REQUIRE(published.contains(key)); // a new figure needs its source here
        CHECK(numbers == published.at(key));
    }
    CHECK(said.size() == published.size());
}
