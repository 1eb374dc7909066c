#include "kitchen/allergens/allergens.h"
#include "kitchen/cautions/cautions.h"
#include "kitchen/timeline/timeline_remark.h"
#include "wording/language.h"
#include "wording/phrases.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <set>

using namespace thawslip;
using namespace thawslip::wording;

namespace {

/// The numbers in braces of a phrase, each once.
std::set<char> slots(const std::string& phrase) {
    std::set<char> found;
    for (std::size_t i = 0; i + 2 < phrase.size(); ++i) {
        if (phrase[i] == '{' && phrase[i + 2] == '}') {
            found.insert(phrase[i + 1]);
        }
    }
    return found;
}

std::string kind_key(std::string_view kind) {
    auto key = "allergen-kind." + std::string{kind};
    std::ranges::replace(key, ' ', '-');
    return key;
}

/// The kinds of allergens that any language of the lexicon names: "walnut", "cod".
std::set<std::string> known_kinds() {
    std::set<std::string> kinds;
    for (const auto& file : kitchen::lexicon_files()) {
        for (const auto& row : file.rows) {
            if (const auto open = row.meaning.find(" ("); open != std::string_view::npos) {
                kinds.insert(
                    std::string{row.meaning.substr(open + 2, row.meaning.size() - open - 3)});
            }
        }
    }
    return kinds;
}

} // namespace

TEST_CASE("no shipped language lacks a phrase of the English table, nor a value in one") {
    const auto& english = shipped_language("en");
    for (const auto& code : shipped_languages()) {
        CAPTURE(code);
        const auto& language = shipped_language(code);
        for (const auto& key : english.keys()) {
            CAPTURE(key);
            REQUIRE(language.has(key));
            CHECK(slots(language.say(key)) == slots(english.say(key)));
            CHECK(!language.say(key).empty());
        }
    }
}

TEST_CASE("Spanish has the words of the Americas where food is declared by one of their lists") {
    CHECK(language_where("es", "us") == "es-419");
    CHECK(language_where("es", "canada") == "es-419");
    CHECK(language_where("es", "eu") == "es");
    CHECK(language_where("de", "us") == "de");
    const auto& spain = shipped_language("es");
    const auto& americas = shipped_language("es-419");
    CHECK(americas.keys() == spain.keys());
    CHECK(spain.say("allergen.peanuts") == "cacahuetes");
    CHECK(americas.say("allergen.peanuts") == "maní (cacahuate)"); // South, Mexico
    CHECK(americas.say("door-list.refrigerator") == "en el refrigerador");
    CHECK(americas.say("caution.beans-unclear").starts_with("Los frijoles"));
    CHECK(spain.say("decimal") == ",");
    CHECK(americas.say("decimal") == "."); // Unicode CLDR 44, es_419, es_MX, es_US (from memory)
    CHECK(americas.say("room.assumed").find("1.02 l") != std::string::npos);
    CHECK(americas.say("allergen.sesame") == "sésamo (ajonjolí)"); // both names, from memory
    for (const auto& key : spain.keys()) {
        CAPTURE(key);
        CHECK(slots(americas.say(key)) == slots(spain.say(key)));
        CHECK(americas.say(key).find("frigorífic") == std::string::npos);
    }
}

TEST_CASE("the end of cooking is said in the number and the gender of minutes and of hours") {
    const auto said = [](int minutes, const char* language) {
        const kitchen::When when{kitchen::When::Anchor::BeforeEnd, std::chrono::minutes{minutes}};
        return say_when(when, shipped_language(language)) + " / " +
               say_when_head(when, shipped_language(language));
    };
    CHECK(said(10, "es") == "en los últimos 10 min / Últimos 10 min");
    CHECK(said(60, "es") == "en la última hora / Última hora");
    CHECK(said(90, "es") == "en los últimos 90 min / Últimos 90 min");
    CHECK(said(120, "es") == "en las últimas 2 h / Últimas 2 h");
    CHECK(said(60, "de") == "in der letzten Stunde / Letzte Stunde");
    CHECK(said(120, "de") == "in den letzten 2 h / Letzte 2 h");
    CHECK(said(60, "en") == "last hour / Last hour");
    CHECK(said(200, "en") == "last 3 h 20 min / Last 3 h 20 min");
}

TEST_CASE("every caution that can be said has words in English, a sentence where it is printed") {
    using kitchen::CautionLevel;
    const auto& english = shipped_language("en");
    for (const auto& rule : kitchen::caution_rules()) {
        const auto key = "caution." + std::string{rule.id};
        CAPTURE(key);
        CHECK(english.has(key) == (rule.level != CautionLevel::Refuse)); // those are messages
        const bool printed =
            rule.level == CautionLevel::Card || rule.level == CautionLevel::LabelAndCard;
        for (const auto& code : shipped_languages()) {
            const auto& language = shipped_language(code);
            const auto words = language.has(key) ? language.say(key) : std::string{"."};
            const bool ends = words.ends_with('.') || words.ends_with('}');
            CHECK((!printed || ends));
        }
        if (english.has(key) && !printed) {
            const auto words = english.say(key);
            CHECK_FALSE(words.ends_with('.'));
            CHECK_FALSE((words.front() >= 'A' && words.front() <= 'Z'));
        }
    }
}

TEST_CASE("every remark on a timeline has a sentence in English") {
    for (const auto& rule : kitchen::remark_rules()) {
        const auto key = "timeline." + std::string{rule.key};
        CAPTURE(key);
        REQUIRE(shipped_language("en").has(key));
        CHECK(shipped_language("en").say(key).ends_with('.'));
    }
}

TEST_CASE("no other language lacks a kind of nut or cereal that the law wants to be named") {
    // Regulation (EU) 1169/2011, Annex II, 1 and 8.
    for (const char* kind :
         {"almond", "hazelnut", "walnut", "cashew", "pecan", "Brazil nut", "pistachio", "macadamia",
          "wheat", "spelt", "khorasan", "rye", "barley", "oats"}) {
        CAPTURE(kind);
        CHECK(shipped_language("es").has(kind_key(kind)));
        CHECK(shipped_language("de").has(kind_key(kind)));
    }
}

TEST_CASE("every kind of allergen that a cook can name has a name in every language") {
    for (const auto& kind : known_kinds()) {
        CAPTURE(kind);
        CHECK(shipped_language("es").has(kind_key(kind)));
        CHECK(shipped_language("de").has(kind_key(kind)));
    }
}

TEST_CASE("no language has a phrase that nothing asks for") {
    const auto& english = shipped_language("en");
    std::set<std::string> known;
    for (const auto& key : english.keys()) {
        if (!key.starts_with("caution.") && !key.starts_with("timeline.")) {
            known.insert(key);
        }
    }
    for (const auto& rule : kitchen::caution_rules()) {
        if (rule.level != kitchen::CautionLevel::Refuse) {
            known.insert("caution." + std::string{rule.id});
        }
    }
    for (const auto& rule : kitchen::remark_rules()) {
        known.insert("timeline." + std::string{rule.key});
    }
    for (const auto& kind : known_kinds()) {
        known.insert(kind_key(kind));
    }
    known.insert("allergen-kind.wheat"); // in the EU a kind of cereal
    for (const auto& code : shipped_languages()) {
        for (const auto& key : shipped_language(code).keys()) {
            CAPTURE(key);
            CHECK(known.contains(key));
        }
    }
}
