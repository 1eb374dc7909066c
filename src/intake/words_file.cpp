#include "intake/words_file.h"

#include "base/list.h"
#include "base/printable.h"
#include "kitchen/allergens/allergen.h"
#include "kitchen/texts/text.h"
#include "toml/file_table.h"
#include "toml/reader.h"

#include <algorithm>
#include <fmt/format.h>
#include <iterator>
#include <set>
#include <span>
#include <tuple>

namespace thawslip::intake {
namespace {

using kitchen::Section;

constexpr std::size_t most_phrases = 5000;

/// A table of the files, and what its words may mean.
struct Meanings {
    Section section;
    const char* table;
    std::vector<std::string> names;
};

std::vector<std::string> allergens_and(std::vector<std::string> names) {
    for (const auto& allergen : kitchen::allergen_names) {
        names.emplace_back(allergen.name);
    }
    return names;
}

/// What texts say is done to food, and with what.
std::vector<Meanings> meanings_of_doing() {
    return {
        {Section::Appliance,
         "appliance",
         {"slow cooker", "multicooker", "rice cooker", "warmer", "pressure cooker", "steamer",
          "microwave", "oven", "grill", "pan", "pot", "water bath", "haybox"}},
        {Section::Setting, "setting", {"slow", "pressure", "warm", "keep", "low", "heat"}},
        {Section::Place,
         "place",
         {"warm", "heats", "room", "basin", "bath", "boils", "water", "safe", "cool", "away"}},
        {Section::Thawing,
         "thawing",
         {"thaw", "long", "when", "frozen", "rising", "rises", "marinating", "again", "freezes",
          "goods", "other"}},
        {Section::Negation,
         "negation",
         {"not", "after", "none", "needless", "free", "nothing", "clause", "doubt", "filler",
          "or"}},
        {Section::Bean, "bean", {"bean", "other"}},
        {Section::BeanState,
         "bean-state",
         {"dried", "uncooked", "canned", "packed", "boiled", "first", "them", "also", "minutes",
          "hours"}},
        {Section::People, "people", {"honey", "infant", "child", "other", "months"}},
        {Section::Trace, "trace", {"trace"}},
        {Section::Freezes,
         "freezes",
         {"nothing", "limp", "soft", "mushy", "rubbery", "separates", "soggy", "weeps", "fades"}},
        {Section::Pack, "pack", {"vacuum"}},
        {Section::Doing,
         "doing",
         {"cook",     "preheat", "keep",  "core",    "until",    "hot",   "rack",
          "stand",    "before",  "hours", "minutes", "several",  "limit", "bag",
          "contents", "cools",   "at",    "inside",  "holder",   "cured", "hot-held",
          "keeps",    "days",    "weeks", "two",     "three",    "four",  "five or more",
          "closing",  "elapsed", "more",  "left",    "takes out"}}};
}

/// What texts say that food is.
std::vector<Meanings> meanings_of_food() {
    return {
        {Section::Dish,
         "dish",
         {"stuffed", "wrapped", "filling", "with", "apart", "soup", "rice", "cured fish", "cures",
          "other"}},
        {Section::Plant, "plant", {"named", "ground", "cut", "nothing"}},
        {Section::Handling,
         "handling",
         {"delayed",
          "marinade",
          "boils it",
          "underdone",
          "against cold water",
          "suspect",
          "bag",
          "unpacks",
          "heat",
          "glass",
          "shelf",
          "again and again",
          "hot oil",
          "served cold",
          "crockery",
          "kept",
          "stands out",
          "fills",
          "loads",
          "at night",
          "by day",
          "switches on",
          "warm setting",
          "anew",
          "remains",
          "any marinade",
          "bag liquid",
          "as sauce",
          "washes",
          "bird",
          "washed else",
          "washed for",
          "nothing"}},
        {Section::Aside, "aside", {"other", "food", "before", "behind"}},
        {Section::Allergen, "allergen", allergens_and({"nothing"})},
        {Section::AllergenDenied, "allergen-denied", allergens_and({})},
        {Section::Allergy, "allergy", {"suits", "allergic", "avoids"}},
        {Section::Meat, "meat", {"poultry", "pork", "beef or lamb", "game", "some", "nothing"}},
        {Section::Risk,
         "risk",
         {"smoked fish", "raw egg", "soft cheese", "raw milk", "pate", "berries", "sprouts",
          "infants", "liver", "mercury"}},
        {Section::Hazard,
         "hazard",
         {"garlic in oil", "eaten raw", "poisonous raw", "no food", "infant milk", "raw dough"}},
        {Section::PartCooking,
         "part-cooking",
         {"in part", "part", "heat", "after", "browned", "later", "undone", "finish", "takes out",
          "another time", "today"}},
        {Section::Gentle, "gentle", {"low"}},
    };
}

const std::vector<Meanings>& meanings() {
    static const auto all = [] {
        auto both = meanings_of_doing();
        std::ranges::move(meanings_of_food(), std::back_inserter(both));
        return both;
    }();
    return all;
}

/// "tree nuts (walnut)" is a kind of "tree nuts".
std::string without_kind(const std::string& meaning) {
    return meaning.substr(0, meaning.find(" ("));
}

void check_meaning(toml::Table& table, const Meanings& known, const std::string& meaning) {
    if (!contains(known.names, without_kind(meaning))) {
        table.reader().error(table.path().key(meaning),
                             fmt::format("no rule asks for {}", in_quotes(meaning)));
    }
}

/// What is wrong with a phrase by itself; empty where nothing is.
std::string fault_of(const std::string& phrase) {
    constexpr std::size_t shortest_part = 3;
    const auto words = kitchen::words_of(phrase);
    if (words.empty()) {
        return "has no letters";
    }
    const bool is_part = phrase.starts_with('-') || phrase.ends_with('-');
    if (is_part && words.size() > 1) {
        return "is a part of a compound and must be one word";
    }
    if (is_part && words.front().size() < shortest_part) {
        return "is too short a part: too many words begin or end with it";
    }
    return {};
}

class WordsReader {
public:
    explicit WordsReader(toml::Reader& reader) : reader_{reader} {}

    void read_section(toml::Table& root, const Meanings& known) {
        auto table = root.table(known.table);
        if (!table) {
            return;
        }
        for (const auto& meaning : table->keys()) {
            check_meaning(*table, known, meaning);
            for (const auto& [phrase, key] : table->strings(meaning.c_str(), most_phrases)) {
                take({known.section, meaning, phrase}, key);
            }
        }
    }

    std::vector<WordsRow> rows() && { return std::move(rows_); }

private:
    void take(WordsRow row, const KeyPath& key) {
        auto fault = fault_of(row.phrase);
        if (!seen_.insert({row.section, row.meaning, kitchen::words_of(row.phrase)}).second) {
            fault = "is listed twice";
        }
        if (!fault.empty()) {
            reader_.error(key, fmt::format("{} {}", in_quotes(row.phrase), fault));
            return;
        }
        rows_.push_back(std::move(row));
    }

    toml::Reader& reader_;
    std::set<std::tuple<Section, std::string, std::vector<std::string>>> seen_;
    std::vector<WordsRow> rows_;
};

} // namespace

std::vector<WordsRow> read_words(const toml::Document& document, Diagnostics& faults) {
    if (!document.has_values()) {
        return {};
    }
    toml::Reader reader{document, faults};
    auto root = reader.root();
    WordsReader words{reader};
    for (const auto& known : meanings()) {
        words.read_section(root, known);
    }
    root.refuse_unknown();
    reader.finish();
    return std::move(words).rows();
}

} // namespace thawslip::intake
