#include "wording/goods.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::wording;

namespace {

Style speaking(const char* language) {
    return style_for(shipped_language(language), {});
}

std::string kind(std::string_view item, const Goods& goods = shipped_goods()) {
    const auto found = kind_of(goods, item);
    if (!found) {
        return "other";
    }
    const auto& [key, name] = goods.kinds[*found];
    return key.empty() ? name : key;
}

/// "3 onions" of three times "1 onion".
std::string several(const char* written, const char* language) {
    auto total = kitchen::parse_quantity(written).value();
    total.low->numerator *= 3;
    total.high->numerator *= 3;
    return in_number(shipped_goods(), total, speaking(language));
}

} // namespace

TEST_CASE(
    "everyday goods are known in three languages, by what they are and not by what is named") {
    struct Case {
        const char* item;
        const char* kind;
    };
    const Case cases[] = {
        {"onions, sliced", "produce"},
        {"brickpeach", "other"}, // English writes its compounds apart
        {"large red onions", "produce"},
        {"tomato paste", "tins"},
        {"tomatoes", "produce"},
        {"tins white beans", "tins"},
        {"white beans", "dry"},
        {"frozen peas", "frozen"},
        {"peas", "produce"},
        {"peanut butter", "tins"},
        {"butter", "dairy"},
        {"chicken stock", "tins"},
        {"chicken thighs", "meat"},
        {"smoked trout", "fish"},
        {"wholegrain mustard", "tins"},
        {"dry cider", "drinks"},
        {"cider vinegar", "spices"},
        {"sparkling water", "drinks"},
        {"bread (stale)", "bakery"},
        {"freezer bags", "household"},
        {"pork shoulder with the bone in", "meat"},
        {"beef mince", "meat"}, // Minze is mint
        {"turkey mince", "meat"},
        {"Minze", "produce"},
        {"cod steaks", "fish"},
        {"crab meat", "fish"},
        {"garlic cloves", "produce"},
        {"ground cloves", "spices"},
        {"filete de merluza", "fish"},
        {"filetes de ternera", "meat"},
        {"lomo de salmón", "fish"},
        {"carne de cangrejo", "fish"},
        {"carne de membrillo", "tins"},
        {"morcilla de cebolla", "meat"},
        {"cebollas picadas", "produce"},
        {"caldo de pollo", "tins"},
        {"pechuga de pavo", "meat"},
        {"dientes de ajo", "produce"},
        {"latas de tomate", "tins"},
        {"aceite de oliva", "spices"},
        {"harina", "dry"},
        {"nata para montar", "dairy"},
        {"Zwiebeln, gehackt", "produce"},
        {"Kirschtomaten", "produce"},
        {"festkochende Kartoffeln", "produce"},
        {"Hähnchenschenkel", "meat"},
        {"Gemüsebrühe", "tins"},
        {"Rapsöl", "spices"},
        {"Eier", "dairy"},
        {"tiefgekühlter Spinat", "frozen"},
        {"rote Linsen", "dry"},
        {"Bio-Vollkornmehl", "dry"},
        {"grandmother's secret", "other"},
        {"", "other"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.item);
        CHECK(kind(c.item) == c.kind);
    }
}

TEST_CASE("water and ice are not bought, whatever they are called, and what is only named so is") {
    for (const char* item : {"water", "cold water", "boiling water", "Wasser", "kaltes Wasser",
                             "agua", "agua fría", "agua hirviendo", "water, boiling", "ice cubes",
                             "water for the pasta", "Eiswürfel", "hielo"}) {
        CAPTURE(item);
        CHECK_FALSE(is_bought(shipped_goods(), item));
    }
    for (const char* item : {"sparkling water", "Mineralwasser", "agua mineral", "rose water",
                             "coconut water", "water chestnuts", "watercress", "watermelon",
                             "ice cream", "tuna in water", "", "water or stock"}) {
        CAPTURE(item);
        CHECK(is_bought(shipped_goods(), item));
    }
}

TEST_CASE("several of a thing are named in the plural where its words are known") {
    struct Case {
        const char* written;
        const char* language;
        const char* said;
    };
    const Case cases[] = {
        {"1 lemon", "en", "lemons"},
        {"1 onion, sliced", "en", "onions, sliced"},
        {"1 large potato", "en", "large potatoes"},
        {"1 bay leaf", "en", "bay leaves"},
        {"1 cherry", "en", "cherries"},
        {"1 radish", "en", "radishes"},
        {"1 clove garlic", "en", "cloves garlic"},
        {"1 bunch sage", "en", "bunches sage"},
        {"1 tin chopped tomatoes", "en", "tins chopped tomatoes"},
        {"1 cebolla", "es", "cebollas"},
        {"1 cebolla grande", "es", "cebollas grandes"},
        {"1 limón", "es", "limones"},
        {"1 diente de ajo", "es", "dientes de ajo"},
        {"1 nuez", "es", "nueces"},
        {"1 Zwiebel", "de", "Zwiebeln"},
        {"1 Apfel, gerieben", "de", "Äpfel, gerieben"},
        {"1 große Zwiebel", "de", "große Zwiebeln"},
        {"1 Zehe Knoblauch", "de", "Zehen Knoblauch"},
        {"1 Bund Petersilie", "de", "Bund Petersilie"},
        // What two languages write alike has the plural of the one that is spoken.
        {"1 mango", "en", "mangoes"},
        {"1 mango", "es", "mangos"},
        {"1 Mango", "de", "Mangos"},
        {"1 orange", "en", "oranges"},
        {"1 Orange", "de", "Orangen"},
        // A word that is not known, or an adjective that might change: as it is written.
        {"1 whatsit", "en", "whatsit"},
        {"1 kleiner Apfel", "de", "kleiner Apfel"},
        {"1 cebolla dulzona", "es", "cebolla dulzona"},
        {"1 onions", "en", "onions"},
        {"1 pair gloves", "en", "pair gloves"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.written);
        CHECK(several(c.written, c.language) == c.said);
    }
}

TEST_CASE("a word for how a thing is counted is told from the thing") {
    struct Case {
        const char* item;
        const char* measure; ///< nullptr: none
        const char* thing;
    };
    const Case cases[] = {
        {"bunches sage", "bunches", "sage"},
        {"head of lettuce", "head", "lettuce"},
        {"tins chopped tomatoes", "tins", "chopped tomatoes"},
        {"manojos de apio", "manojos", "apio"},
        {"latas de tomate, grandes", "latas", "tomate, grandes"},
        {"Bund Petersilie, gehackt", "Bund", "Petersilie, gehackt"},
        {"EL Rapsöl", "EL", "Rapsöl"},
        {"cucharadas de vinagre", "cucharadas", "vinagre"},
        {"barra de pan", nullptr, ""}, // a thing as a whole
        {"cloves", nullptr, ""},
        {"head of", nullptr, ""},
        {"onions, sliced", nullptr, ""},
    };
    for (const auto& c : cases) {
        CAPTURE(c.item);
        const auto parts = measured_thing(shipped_goods(), c.item);
        REQUIRE(parts.has_value() == (c.measure != nullptr));
        if (parts) {
            CHECK(parts->measure == c.measure);
            CHECK(parts->thing == c.thing);
        }
    }
}

TEST_CASE("one of a thing, a half and what is measured keep their words") {
    for (const char* written : {"1 lemon", "½ lemon", "500 g onion", "3 tbsp lemon juice"}) {
        CAPTURE(written);
        const auto quantity = kitchen::parse_quantity(written).value();
        CHECK(in_number(shipped_goods(), quantity, speaking("en")) == quantity.item);
    }
}

TEST_CASE("a table of the cook's own wins, adds and comes first") {
    const auto own = own_goods("[[kind]]\nname = \"Farm shop\"\ngoods = [\"egg\", \"squash\"]\n"
                               "[[kind]]\nname = \"Dairy and eggs\"\ngoods = [\"oat drink\"]\n"
                               "[[kind]]\nname = \"not-bought\"\ngoods = [\"rain\", \"–\"]\n",
                               "goods.toml");
    REQUIRE(own.ok());
    const auto& goods = own.value();
    CHECK(kind("6 eggs", goods) == "Farm shop");
    CHECK(kind("butternut squash", goods) == "Farm shop");
    CHECK(kind("oat drink", goods) == "dairy");
    CHECK(kind("onions", goods) == "produce");
    CHECK_FALSE(is_bought(goods, "rain"));
    CHECK_FALSE(is_bought(goods, "water"));
    CHECK(is_bought(goods, "???")); // a sign is no word: it stands for nothing
    CHECK(say_kind(goods, 0, speaking("de")) == "Farm shop");
    CHECK(goods.kinds[1].key == "dairy");
    CHECK(goods.kinds.size() == shipped_goods().kinds.size() + 1);
}

TEST_CASE("what is wrong with a table of goods is told at its place") {
    const auto told = [](const char* toml) {
        const auto goods = own_goods(toml, "goods.toml");
        REQUIRE_FALSE(goods.ok());
        return to_text(goods.fault().front());
    };
    CHECK(told("[[kind]]\ngoods = [\"egg\"]\n").find("goods.toml:1:") == 0);
    CHECK(told("[[kind]]\nname = \"Farm\"\ngods = [\"egg\"]\n").find("goods.toml:3:1") == 0);
    CHECK(told("[[kinds]]\nname = \"Farm\"\n").find("goods.toml:1:") == 0);
}

TEST_CASE("each kind has its name in every language, and every list its words in each") {
    for (const auto& language : shipped_languages()) {
        for (const auto& kind : shipped_goods().kinds) {
            CAPTURE(kind.key);
            CHECK(shipped_language(language).has("goods." + kind.key));
        }
        int words = 0;
        for (const auto& [key, list] : shipped_goods().words) {
            for (const auto& word : list) {
                words += word.language == language ? 1 : 0;
            }
        }
        CAPTURE(language);
        CHECK(words > 300);
    }
}
