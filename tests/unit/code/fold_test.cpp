#include "code/fold.h"
#include "unit/code/random_messages.h"

#include <doctest/doctest.h>

using namespace thawslip::code;

TEST_CASE("words fold into capitals that a code carries cheaply") {
    struct Case {
        const char* words;
        const char* folded;
    };
    constexpr Case cases[] = {
        {"Squash and red lentil stew", "SQUASH AND RED LENTIL STEW"},
        {"½ cup crème fraîche", "1/2 CUP CREME FRAICHE"},
        {"180 °C", "180 C"},
        {"20–30 min", "20-30 MIN"},
        {"-18 °C", "-18 C"},
        {"Борщ", "BORSHCH"},
        {"spinach (baby), washed.", "SPINACH - BABY - WASHED"},
        {"salt & pepper", "SALT AND PEPPER"},
        {"Granny's \"best\"", "GRANNYS BEST"},
        {"2 * 400 g tins", "2 X 400 G TINS"},
        {"milk*", "MILK"},
        {"1,000 g", "1,000 G"},
        {"1.000 g", "1.000 G"},
        {"ready at 18:30", "READY AT 18:30"},
        {"  a \t b\nc  ", "A B C"},
        {"stir!", "STIR"},
        {"(!)", ""},
        {"\xff\xfe stew", "STEW"},
    };
    for (const auto& [words, folded] : cases) {
        CAPTURE(words);
        CHECK(fold(words) == folded);
    }
}

TEST_CASE("what a phone would act upon is taken apart") {
    CHECK(fold("Dish: stew") == "DISH - STEW");
    CHECK(fold("http://www.example.com/x") == "HTTP - /WWW. EXAMPLE. COM/X");
    CHECK(fold("cook@example.org") == "COOK AT EXAMPLE. ORG");
    CHECK(fold("tel:0800 123456") == "TEL - 080 / 0 / 123 / 456");
    CHECK(fold("+44 20 7946 0000") == "+44 / 20 / 794 / 6 / 000 / 0");
    CHECK(fold("made 2026-10-17") == "MADE 202 / 6 / 10 / 17");
    CHECK(fold("1000 ml") == "1000 ML");
}

TEST_CASE("folding twice is folding once") {
    thawslip::test_support::Random random{2};
    for (int i = 0; i < 10000; ++i) {
        const std::string words = thawslip::test_support::random_words(random, 60);
        const std::string once = fold(words);
        REQUIRE_MESSAGE(fold(once) == once, words);
    }
}

TEST_CASE("folding never puts a byte into a code that is not of its alphabet") {
    thawslip::test_support::Random random{5};
    for (int i = 0; i < 2000; ++i) {
        std::string bytes(random.below(40), ' ');
        for (char& byte : bytes) {
            byte = static_cast<char>(random.below(256));
        }
        const std::string folded = fold(bytes);
        CHECK(folded.find_first_not_of("0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%+-./:,") ==
              std::string::npos);
    }
}
