#include "kitchen/allergens/allergens.h"
#include "kitchen/texts/lexicon.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <map>
#include <set>
#include <string>
#include <vector>

using namespace thawslip::kitchen;

namespace {

const AllergenList& eu = *find_allergen_list("eu");

/// The meanings under which any language lists exactly these words.
std::map<std::vector<std::string>, std::set<std::string_view>> meanings_listed() {
    std::map<std::vector<std::string>, std::set<std::string_view>> meanings;
    for (const auto& file : lexicon_files()) {
        for (const auto& row : file.rows) {
            if (row.section == Section::Allergen) {
                meanings[worded(row.phrase).words].insert(row.meaning);
            }
        }
    }
    return meanings;
}

std::string as_text(const std::set<std::string_view>& meanings) {
    std::string text;
    for (const auto meaning : meanings) {
        text += std::string{meaning} + "; ";
    }
    return text;
}

} // namespace

TEST_CASE("every row of allergens is found whole, and means what its language's row says") {
    const auto all_listed = meanings_listed();
    for (const auto& file : lexicon_files()) {
        for (const auto& row : file.rows) {
            if (row.section != Section::Allergen) {
                continue;
            }
            const auto text = worded(row.phrase);
            std::set<std::string_view> found;
            for (const auto& mention : mentions(text, Section::Allergen)) {
                CHECK(mention.count == text.words.size());
                found.insert(mention.meaning);
            }
            CAPTURE(std::string{row.phrase});
            CHECK(found.contains(row.meaning));
            const auto listed = all_listed.at(text.words);
            // A word may be a plural, or the other gender, of another language's word.
            CHECK_MESSAGE(std::ranges::includes(found, listed), as_text(found));
        }
    }
}

TEST_CASE("every language has at least 400 words for allergens") {
    for (const auto& file : lexicon_files()) {
        std::set<std::string_view> phrases;
        for (const auto& row : file.rows) {
            if (row.section == Section::Allergen && row.meaning != "nothing") {
                phrases.insert(row.phrase);
            }
        }
        CHECK((phrases.size() >= 400 || file.tongue == Tongue::French));
    }
}

TEST_CASE("allergens are asked about in every language, and what only sounds like one is not") {
    struct Case {
        const char* text;
        const char* expected; ///< by the names of the EU's list
    };
    const Case cases[] = {
        {"400 g udon", "cereals containing gluten (wheat)"},
        {"2 EL geriebener Gouda", "milk"},
        {"Käsespätzle", "milk; eggs; cereals containing gluten (wheat)"},
        {"500 g gambas peladas", "crustaceans (prawn)"},
        {"lomos de merluza", "fish (hake)"},
        {"gehackte Haselnüsse", "tree nuts (hazelnut)"},
        {"Haselnussmilch", "tree nuts (hazelnut)"},
        {"Räucherlachs", "fish (salmon)"},
        {"Kaese", "milk"},
        {"1 Ei", "eggs"},
        {"harina de trigo", "cereals containing gluten (wheat)"},
        {"mantequilla de cacahuete", "peanuts"},
        {"100 ml dry sherry", "sulphites"},
        {"Gemüsebrühe", "celery"},
        {"Mehl, glutenfrei", ""},
        {"harina sin gluten", ""},
        {"queso sin lactosa", "milk"},
        {"no-knead bread", "cereals containing gluten (wheat)"},
        {"free range eggs", "eggs"},
        {"eine Zwiebel", ""},
        {"Pan-roasted carrots", ""},
        {"toasted cumin", ""},
        {"carne picada", ""},
        {"pork butt", ""},
        {"leche de coco", ""},
        {"Kokosmilch", ""},
        {"trigo sarraceno", ""},
        {"Buchweizenmehl", ""},
        {"Reisnudeln", ""},
        {"nuez moscada", ""},
        {"Muskatnuss", ""},
        {"Leberkäse", ""},
        {"Eisbergsalat", ""},
        {"Schweinefleisch", ""},
        {"100 g bulghur", "cereals containing gluten (wheat)"},
        {"2 sheets of matza", "cereals containing gluten (wheat)"},
        {"maftoul", "cereals containing gluten (wheat)"},
        {"cooked wheatberries", "cereals containing gluten (wheat)"},
        {"Bulgursalat", "cereals containing gluten (wheat)"},
        {"Pankokruste", "cereals containing gluten (wheat)"},
        {"Bonitoflocken", "fish (bonito)"},
        {"Parmesankruste", "milk"},
        {"Mozzarellahaube", "milk"},
        {"Seehechtfilet", "fish (hake)"},
        {"Baiserhaube", "eggs"},
        {"custard apple", ""},
        {"Eierpflaumenmus", ""},
        {"Spaghettikürbis", ""},
    };
    for (const auto& c : cases) {
        std::string named;
        for (const auto& mention : mentioned_allergens(c.text)) {
            named += (named.empty() ? "" : "; ") + label_name(mention.named, eu);
        }
        CAPTURE(std::string{c.text});
        CHECK(named == c.expected);
    }
}
