// Everyday words for food, as kitchens use them, against what they are read as. The lists beside
// this file were written down from knowledge of kitchens, not copied from src/kitchen/food_words.

#include "intake/storage_file.h"
#include "kitchen/cooking/safe_minimum.h"
#include "kitchen/foods/food_catalogue.h"
#include "kitchen/foods/food_reading.h"
#include "kitchen/storage/fridge_life.h"
#include "support/random.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <fmt/format.h>
#include <fstream>

using namespace thawslip;
using namespace thawslip::kitchen;

namespace {

const StorageTable& table() {
    static const auto shipped = intake::built_in_storage();
    return shipped;
}

/// "= soup", "? raw fish", "! mayonnaise", "-": as the lists have it.
std::string outcome(const std::string& word) {
    const auto reading = read_food(table(), word);
    const auto first = [&] { return fmt::format("{}", fmt::join(reading.choices.front(), " + ")); };
    switch (reading.certainty) {
    case FoodCertainty::Sure:
        return (find_unsuitable(table(), reading.choices.front().front()) ? "! " : "= ") + first();
    case FoodCertainty::Asked: return "? " + first();
    case FoodCertainty::Unsure: return "~ " + first();
    case FoodCertainty::Unknown: break;
    }
    return "-";
}

void check_list(const std::string& language) {
    std::ifstream list{THAWSLIP_SOURCE_DIR "/tests/conformance/kitchen/food_words/" + language +
                       ".txt"};
    std::size_t words = 0;
    for (std::string line; std::getline(list, line);) {
        if (line.empty() || line.starts_with('#')) {
            continue;
        }
        const auto end =
            std::min({line.find(" = "), line.find(" ? "), line.find(" ! "), line.size() - 2});
        const auto word = line.substr(0, end);
        CAPTURE(word);
        CHECK(outcome(word) == line.substr(end + 1));
        ++words;
    }
    CHECK(words >= 250);
}

/// What a word means at its rawest: what it says when "raw" is put before it. A dish that is cooked
/// for certain is no other; where it is said to be raw, that is asked.
FoodChoice rawest(const FoodWord& word) {
    if (word.role == FoodRole::Kind) {
        return meanings(word);
    }
    const auto reading = read_food(table(), "raw " + std::string{word.written});
    return reading.choices.empty() ? FoodChoice{} : reading.choices.front();
}

bool says_cooked(const FoodWord& word) {
    return word.role == FoodRole::State && word.means != "raw";
}

/// What the first hint would be, or what is taken.
FoodChoice first_proposed(const std::string& text) {
    const auto reading = read_food(table(), text);
    if (reading.certainty == FoodCertainty::Sure || reading.certainty == FoodCertainty::Asked) {
        return reading.choices.front();
    }
    return nearest_food(table(), text).value_or(FoodChoice{});
}

std::string with_slip(std::string word, test_support::Random& random) {
    const auto place = random.below(word.size());
    const auto letter = static_cast<char>('a' + static_cast<int>(random.below(26)));
    switch (random.below(4)) {
    case 0: word.erase(place, 1); break;
    case 1: word.insert(place, 1, letter); break;
    case 2: word[place] = letter; break;
    default:
        if (place + 1 < word.size()) {
            std::swap(word[place], word[place + 1]);
        }
    }
    return word;
}

} // namespace

TEST_CASE("everyday words for food in English mean the kind that cooks mean, or are asked") {
    check_list("en");
}

TEST_CASE("everyday words for food in Spanish mean the kind that cooks mean, or are asked") {
    check_list("es");
}

TEST_CASE("everyday words for food in German mean the kind that cooks mean, or are asked") {
    check_list("de");
}

TEST_CASE("every word of the files is read as its row says") {
    for (const auto& word : table().words) {
        CAPTURE(word.written);
        const auto reading = read_food(table(), word.written);
        const auto kinds = meanings(word);
        if (word.role == FoodRole::Kind) {
            REQUIRE(reading.certainty == FoodCertainty::Sure);
            CHECK(reading.choices.front() == kinds);
        } else if (word.role == FoodRole::Question) {
            REQUIRE(reading.choices.size() == kinds.size());
            CHECK(reading.certainty == FoodCertainty::Asked);
        } else if (word.role == FoodRole::Base) {
            CHECK((is_animal(word.means) || !plant_senses({word.means}, {}).empty()));
            CHECK_FALSE(reading.choices.empty());
        }
    }
}

TEST_CASE("what is proposed for a word is never laxer than the word is raw") {
    for (const auto& word : table().words) {
        const auto raw = rawest(word);
        const auto proposed = first_proposed(std::string{word.written});
        if (raw.empty() || proposed.empty() || says_cooked(word)) {
            continue;
        }
        CAPTURE(word.written);
        CAPTURE(said(proposed));
        CAPTURE(said(raw));
        CHECK_FALSE(is_laxer(table(), proposed, raw));
    }
}

TEST_CASE("a hint for a slip of the keyboard is never laxer than the word that was meant is raw") {
    auto random = test_support::Random{20261127};
    const auto& words = table().words;
    for (int i = 0; i < 200; ++i) {
        const auto& word = words[random.below(words.size())];
        const auto raw = rawest(word);
        const auto slip = with_slip(std::string{word.key}, random);
        if (raw.empty() || says_cooked(word) || word.key.size() < 4 ||
            read_food(table(), slip).certainty == FoodCertainty::Sure ||
            read_food(table(), slip).certainty == FoodCertainty::Asked) {
            continue; // a word of its own
        }
        const auto hint = nearest_food(table(), slip);
        CAPTURE(word.written);
        CAPTURE(slip);
        CAPTURE((hint ? said(*hint) : ""));
        // Raw food is proposed for its care, whatever its months in the freezer.
        const bool is_raw = hint && is_raw_kind(table(), hint->front());
        CHECK_FALSE((is_raw && is_less_careful(table(), *hint, raw)));
        CHECK_FALSE((hint && !is_raw && is_laxer(table(), *hint, raw)));
    }
}

TEST_CASE("raw, ground, stuffed and unsure words never propose a cooked kind first") {
    for (const auto* base :
         {"chicken", "turkey", "beef", "pork", "lamb", "salmon", "cod", "venison", "duck", "prawns",
          "pollo", "cerdo", "merluza", "Huhn", "Lachs"}) {
        for (const auto* pattern : {"{}", "raw {}", "ground {}", "minced {}", "stuffed {}",
                                    "{} liver", "{} burger", "fresh {}"}) {
            const auto text = fmt::format(fmt::runtime(pattern), base);
            CAPTURE(text);
            const auto proposed = first_proposed(text);
            REQUIRE_FALSE(proposed.empty());
            CHECK(proposed.front().find("cooked") == std::string::npos);
        }
    }
}

TEST_CASE("thawslip foods finds the kinds of a word, the rawest first") {
    const auto kinds = kinds_near(table(), "chicken");
    const std::vector<std::string> first{"raw poultry pieces", "raw whole poultry",
                                         "raw ground poultry"};
    REQUIRE(kinds.size() > 5);
    CHECK(std::equal(first.begin(), first.end(), kinds.begin()));
    CHECK(std::ranges::find(kinds, "cooked poultry") != kinds.end());
    CHECK(kinds_near(table(), "qqqqqqq").empty());
    for (const auto& kind : all_kinds(table())) {
        CAPTURE(kind);
        CHECK(kinds_near(table(), kind).front() == kind);
    }
}
