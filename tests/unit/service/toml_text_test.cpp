// Lines of TOML that keep any bytes (TOML 1.0, "String").

#include "base/utf8.h"
#include "service/allergen_names.h"
#include "service/archive/toml_text.h"

#include <doctest/doctest.h>

using namespace thawslip;
using service::bytes_of_hex;
using service::toml_line;

TEST_CASE("a text of one line, of several, and what is no text, each has its form") {
    CHECK(toml_line("dish", "Quince \"hot\" stew") == "dish = \"Quince \\\"hot\\\" stew\"\n");
    CHECK(toml_line("note", "one\ntwo\n") == "note = \"\"\"\none\ntwo\n\"\"\"\n");
    CHECK(toml_line("file", "a\xFF\x0F") == "file_hex = \"61ff0f\"\n");
    CHECK(toml_line("days", std::vector<std::string>{}) == "days = []\n");
    CHECK(toml_line("days", std::vector<std::string>{"a", "b"}) == "days = [\"a\", \"b\"]\n");
}

TEST_CASE("hexadecimal digits are read as bytes, and what is none as nothing") {
    CHECK(bytes_of_hex("61ff0f") == "a\xFF\x0F");
    CHECK(bytes_of_hex("09af") == "\x09\xAF");
    CHECK(bytes_of_hex("") == "");
    for (const std::string none : {"6g", "g6", "6/", "6:", "6`", "FF", "-1"}) {
        CAPTURE(none);
        CHECK(bytes_of_hex(none) == "");
    }
    std::string all;
    std::string digits;
    for (int byte = 0; byte < 256; ++byte) {
        constexpr const char* hex = "0123456789abcdef";
        digits += {hex[byte / 16], hex[byte % 16]};
        all += static_cast<char>(byte);
    }
    CHECK(bytes_of_hex(digits) == all);
}

TEST_CASE("allergens are named as they are meant, and what no list knows as it was written") {
    const auto declared = kitchen::read_allergens({"walnuts", "milk", "grandmother's spice"});
    using Names = std::vector<std::string>;
    CHECK(service::allergen_names(declared) ==
          Names{"tree nuts (walnut)", "milk", "grandmother's spice"});
    CHECK(service::allergen_names(declared, "may contain ") ==
          Names{"may contain tree nuts (walnut)", "may contain milk",
                "may contain grandmother's spice"});
    CHECK(service::sorted_once({"rye", "barley", "rye"}) == Names{"barley", "rye"});
}
