#include "kitchen/texts/lexicon.h"
#include "kitchen/texts/negation.h"
#include "kitchen/texts/phrases.h"
#include "kitchen/texts/text.h"

#include <algorithm>
#include <doctest/doctest.h>

using namespace thawslip::kitchen;

namespace {

using Words = std::vector<std::string>;

std::string meanings(std::string_view text, Section section) {
    const auto read = worded(text);
    std::string all;
    for (const auto& mention : mentions(read, section)) {
        all += (all.empty() ? "" : "; ") + std::string{mention.meaning} + ": " +
               words_of(read, mention);
    }
    return all;
}

} // namespace

TEST_CASE("a text is cut into words and clauses, with its numbers") {
    const auto text = worded("Dried (not canned), 1.5 h - boil; 30-40 min");
    CHECK(text.words == Words{"dried", "not", "canned", "1.5", "h", "boil", "30", "40", "min"});
    CHECK(text.clauses[0] != text.clauses[1]);
    CHECK(text.clauses[1] == text.clauses[2]);
    CHECK(text.clauses[4] != text.clauses[5]);
    CHECK(text.clauses[6] == text.clauses[8]);
    CHECK(worded("").words.empty());
    CHECK(worded("\xFF\xFE, ½ …").words.empty());
}

TEST_CASE("the longest phrase wins and uses up its words") {
    CHECK(meanings("butter, peanut butters and peanuts", Section::Allergen) ==
          "milk: butter; peanuts: peanut butters; peanuts: peanuts");
    CHECK(meanings("peanutty codes", Section::Allergen).empty());
}

TEST_CASE("a word as it stands wins over a dictionary form, and that over a part of a compound") {
    CHECK(meanings("eine Bratpfanne", Section::Appliance) == "pan: bratpfanne");
    CHECK(meanings("Pfannen", Section::Appliance) == "pan: pfannen");
    CHECK(meanings("Kaffeebohnen", Section::Bean) == "other: kaffeebohnen");
    CHECK(meanings("Riesenbohnen", Section::Bean) == "bean: riesenbohnen");
}

TEST_CASE("a warning is no advice, in any language") {
    const auto warned = [](std::string_view text) {
        const auto read = worded(text);
        const auto warm = mentions(read, Section::Place, "warm");
        const auto safe = mentions(read, Section::Place, "safe");
        REQUIRE_FALSE(warm.empty());
        for (std::size_t i = 0; i < warm.size(); ++i) {
            if (!is_warned_of(read, warm, i, safe)) {
                return false;
            }
        }
        return true;
    };
    for (const char* text : {
             "never on the counter",
             "Do not thaw on the counter, the table or the windowsill",
             "instead of the worktop use the fridge",
             "don't leave it on the bench",
             "Never, ever on the porch",
             "nicht auf der Arbeitsplatte",
             "auf der Arbeitsplatte nie auftauen",
             "nunca en la encimera",
             "sin dejarlo en la encimera",
         }) {
        CAPTURE(std::string{text});
        CHECK(warned(text));
    }
    for (const char* text : {
             "on the counter",
             "not in the fridge but on the counter",
             "no fridge needed, leave on the counter",
             "no more than a night on the counter",
             "do not refrigerate; leave it on the table",
             "on the counter until no longer hard",
             "nicht im Kühlschrank, sondern auf der Arbeitsplatte",
             "nicht länger als eine Nacht auf dem Tisch",
             "no en la nevera sino en la encimera",
         }) {
        CAPTURE(std::string{text});
        CHECK_FALSE(warned(text));
    }
}

TEST_CASE("only what a clause says without a doubt is certain") {
    const auto certain = [](std::string_view text) {
        const auto read = worded(text);
        const auto boiled = mentions(read, Section::BeanState, "boiled");
        REQUIRE_FALSE(boiled.empty());
        return is_certain(read, boiled.front());
    };
    for (const char* text : {"boiled 30 min", "Boil the beans", "hervidas 30 minutos",
                             "30 Minuten sprudelnd gekocht"}) {
        CAPTURE(std::string{text});
        CHECK(certain(text));
    }
    for (const char* text :
         {"do not boil", "no need to boil", "never boiled", "boil if you like", "nicht kochen",
          "ohne zu kochen", "no hervir", "without boiling", "briefly boiled"}) {
        CAPTURE(std::string{text});
        CHECK_FALSE(certain(text));
    }
}

TEST_CASE("every row is found by its own words, with its own meaning") {
    for (const auto& file : lexicon_files()) {
        for (const auto& row : file.rows) {
            const auto means_so = [&](const auto& found) { return found.meaning == row.meaning; };
            CAPTURE(row.phrase);
            if (row.section < first_of_phrases) {
                CHECK(std::ranges::any_of(mentions(worded(row.phrase), row.section), means_so));
                continue;
            }
            const auto meaning = row.section == Section::Meat ? std::string_view{} : row.meaning;
            const auto found = phrase_book(row.section, meaning).find(words_of(row.phrase));
            REQUIRE(found.size() == 1); // the longest, and not a part of it
            CHECK(means_so(found.front()));
        }
    }
}
