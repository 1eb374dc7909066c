#include "base/utf8.h"
#include "unicode/ascii.h"
#include "unicode/normalize.h"

#include <algorithm>
#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::unicode;

TEST_CASE("text is folded as a cook would type it on a plain keyboard") {
    const struct {
        const char* text;
        const char* ascii;
    } cases[] = {
        {"½ cup", "1/2 cup"},
        {"1½ tsp", "1 1/2 tsp"},
        {"1 ½ tsp", "1 1/2 tsp"},
        {"(⅓)", "(1/3)"},
        {"180 °C", "180 C"},
        {"180°C / 350°F", "180 C / 350 F"},
        {"180\u00A0℃", "180 C"},
        {"turn by 45°", "turn by 45 deg"},
        {"20–30 min", "20-30 min"},
        {"−18 °C", "-18 C"},
        {"2 × 400 g", "2 x 400 g"},
        {"“slow” cooker’s", "\"slow\" cooker's"},
        {"Crème fraîche, jalapeño", "Creme fraiche, jalapeno"},
        {"Smørrebrød, Bœuf, Żurek, Gruß, Þorri", "Smorrebrod, Boeuf, Zurek, Gruss, Thorri"},
        {"ŒUF, STRAẞE", "OEUF, STRASSE"},
        {"Щи и борщ", "Shchi i borshch"},
        {"ЩИ", "SHCHI"},
        {"Šči", "Sci"},
        {"Ψωμί, σούπα, αυγό", "Psomi, soupa, avgo"},
        {"salt\u00ADed\u2060 caramel\u200B", "salted caramel"},
        {"one\ttwo\nthree", "one two three"},
        {"你好", "nihao"},
        {"🍐", "?"},
        {"", ""},
    };
    for (const auto& c : cases) {
        CAPTURE(c.text);
        CHECK(to_ascii(c.text) == c.ascii);
    }
}

TEST_CASE("composed and decomposed text fold alike, and what is ASCII stays as it is") {
    const std::string text = "Crème brûlée à la Žižkov, Ένα ψωμί, Йогурт ½ °C";
    std::string apart = "Cre\u0300me";
    CHECK(to_ascii(apart) == to_ascii(to_nfc(apart)));
    CHECK(to_ascii(to_ascii(text)) == to_ascii(text));
    std::string all;
    for (char c = 0x20; c < 0x7F; ++c) {
        all.push_back(c);
    }
    CHECK(to_ascii(all) == all);
}

TEST_CASE("whatever goes in, only printable ASCII comes out") {
    for (char32_t c = 1; c < 0x3000; ++c) {
        std::string text;
        append_utf8(text, c);
        const auto ascii = to_ascii(text + text);
        CAPTURE(static_cast<std::uint32_t>(c));
        CHECK(std::all_of(ascii.begin(), ascii.end(),
                          [](char byte) { return byte >= 0x20 && byte < 0x7F; }));
        if (c == 0x5FF) {
            c = 0x1DFF; // scripts that take CLDR's slow rules add nothing here
        }
    }
}

TEST_CASE("a search finds a word in any spelling of accents, case and spaces") {
    CHECK(fold_for_search("  Crème   BRÛLÉE ") == "creme brulee");
    CHECK(fold_for_search("ΨΩΜΊ") == fold_for_search("ψωμί"));
    CHECK(fold_for_search(" \t ") == "");
}
