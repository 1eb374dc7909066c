#include "code/seal.h"

#include <doctest/doctest.h>
#include <string>
#include <utility>

using namespace thawslip::code;

TEST_CASE("the check agrees with the published check value of CRC-15/CAN") {
    // Greg Cook, "Catalogue of parametrised CRC algorithms", entry CRC-15/CAN: check 0x059E for
    // the nine digits (from memory).
    CHECK(crc15("123456789") == 0x059E);
    CHECK(check_characters("123456789") == "1CY");
}

TEST_CASE("every wrong character and every swap of neighbours changes the check") {
    const std::string text = "THAW IN REFRIGERATOR\nAT START ADD 1 L STOCK\nEND 1";
    const std::string check = check_characters(text);
    for (std::size_t i = 0; i < text.size(); ++i) {
        for (char c = ' '; c <= '~'; ++c) {
            std::string wrong = text;
            wrong[i] = c;
            CHECK((check_characters(wrong) == check) == (wrong == text));
        }
        std::string swapped = text;
        std::swap(swapped[i], swapped[i == 0 ? text.size() - 1 : i - 1]);
        CHECK((check_characters(swapped) == check) == (swapped == text));
    }
}
