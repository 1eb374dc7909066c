#include "code/fold.h"
#include "unit/code/random_messages.h"

#include <doctest/doctest.h>
#include <utility>

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

TEST_CASE("every mark that a code does not carry becomes what is read in its place") {
    const std::pair<const char*, const char*> cases[] = {
        {"$5", "$5"},
        {"5%", "5%"},
        {"a/b", "A/B"},
        {"a+b", "A+B"},
        {"-5", "-5"},
        {"a;b", "A - B"},
        {"(a) (b)", "A - B"},
        {"a[b]c", "A - B - C"},
        {"a{b}c", "A - B - C"},
        {"a<b>c", "A - B - C"},
        {"a|b", "A - B"},
        {"x=y", "X - Y"},
        {"a!b", "A. B"},
        {"a?b", "A. B"},
        {"a\\b", "A/B"},
        {"a&b", "A AND B"},
        {"a@b", "A AT B"},
        {"#5", "NO 5"},
        {"`a`", "A"},
        {"a^b", "AB"},
        {"a'b", "AB"},
        {"a\"b", "AB"},
        {"a_b", "A B"},
        {"a~b", "A B"},
        // Between figures, spaces left out of account, a star is a cross.
        {"2*3", "2 X 3"},
        {"2 * 3", "2 X 3"},
        {"*3", "3"},
        {"2*", "2"},
        {"2*x", "2 X"},
        {"2**3", "2 3"},
        // Between figures, side by side, a comma and a colon stay.
        {"1,5", "1,5"},
        {"a,5", "A - 5"},
        {"5,a", "5 - A"},
        {",5", "5"},
        {"5,", "5"},
        {"12:30", "12:30"},
        {"1:2:3", "1:2:3"},
        {"3:x", "3 - X"},
        {"x:3", "X - 3"},
        {"5, 6", "5 - 6"},
    };
    for (const auto& [words, folded] : cases) {
        CAPTURE(words);
        CHECK(fold(words) == folded);
    }
}

TEST_CASE("pauses and spaces come one at a time and not at the ends, a minus stays") {
    const std::pair<const char*, const char*> cases[] = {
        {"a - - b", "A - B"},
        {"a -- b", "A -- B"},
        {"a  b", "A B"},
        {" - a - ", "A"},
        {"-", ""},
        {"- -", ""},
        {"a -", "A"},
        {"5-", "5-"},
        {"--5", "--5"},
        {"-a", "-A"},
        {"- 5", "5"},
        {"a..", "A"},
        {"a. .", "A"},
        {"...a", "... A"},
        {"a.b", "A. B"},
        {"a.5", "A.5"},
        {"a//b", "A/B"},
        {"a///b", "A/B"},
        {"//", "/"},
        {"a/ /b", "A/ /B"},
    };
    for (const auto& [words, folded] : cases) {
        CAPTURE(words);
        CHECK(fold(words) == folded);
    }
}

TEST_CASE("seven digits are a number to dial, whatever stands between them, six are none") {
    // E.164 and RFC 3966, 3: hyphens, dots and spaces are visual separators (from memory).
    const struct {
        const char* words;
        const char* folded; ///< where it is another
    } cases[] = {
        {"123456", nullptr},
        {"1234567", "123 / 456 / 7"},
        {"1234567890", "123 / 456 / 789 / 0"},
        {"123 4567", "123 / 456 / 7"},
        {"12.34-567", "12 / 34 / 567"},
        {"+1234567", "+123 / 456 / 7"},
        {"123456 7", "123 / 456 / 7"},
        {"12 34 5 6", nullptr},
        {"1234 G 567", nullptr},
        {"1234567 G OF 5", "123 / 456 / 7 G OF 5"},
        {"A1234567B", "A123 / 456 / 7B"},
        {"123456 X 7", nullptr},
        {"123/4567", nullptr},
    };
    for (const auto& [words, folded] : cases) {
        CAPTURE(words);
        CHECK(fold(words) == (folded == nullptr ? words : folded));
        CHECK(looks_like_a_number_to_dial(words) == (folded != nullptr));
        CHECK_FALSE(looks_like_a_number_to_dial(fold(words)));
    }
}

TEST_CASE("a colon behind a scheme's name becomes a pause, behind figures alone it stays") {
    // RFC 3986, 3.1: a scheme is of letters, digits, plus, minus and dots.
    const std::pair<const char*, const char*> cases[] = {
        {"word18:5", "WORD18 - 5"}, {"18:5", "18:5"},       {"x 18:5", "X 18:5"},
        {"a/18:5", "A/18:5"},       {"a-18:5", "A-18 - 5"}, {"a.18:5", "A.18 - 5"},
        {"a+18:5", "A+18 - 5"},     {"a,18:5", "A - 18:5"}, {"$18:5", "$18:5"},
        {"a$18:5", "A$18:5"},       {"a%18:5", "A%18:5"},   {"a1:18:5", "A1 - 18:5"},
    };
    for (const auto& [words, folded] : cases) {
        CAPTURE(words);
        CHECK(fold(words) == folded);
    }
}

TEST_CASE("of a bag's id letters, digits and hyphens are kept") {
    CHECK(fold_bag_id("k7q-2m4-9xc") == "K7Q-2M4-9XC");
    CHECK(fold_bag_id("az AZ!09_") == "AZAZ09");
    CHECK(fold_bag_id("@[`{/:é").empty());
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
