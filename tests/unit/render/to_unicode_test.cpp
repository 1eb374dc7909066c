#include "render/to_unicode.h"

#include <doctest/doctest.h>
#include <vector>

using namespace thawslip;

namespace {

std::string hex(std::string_view utf8) {
    std::string out;
    render::append_utf16_hex(out, utf8);
    return out;
}

int count(const std::string& text, const std::string& what) {
    int found = 0;
    for (auto at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) {
        ++found;
    }
    return found;
}

} // namespace

TEST_CASE("UTF-16 is written big end first, with surrogates beyond U+FFFF") {
    // The Unicode Standard 15.0, Table 3-4 "Examples of Unicode Encoding Forms" (from memory).
    CHECK(hex("M") == "004d");
    CHECK(hex("а") == "0430");
    CHECK(hex("二") == "4e8c");
    CHECK(hex("\U00010302") == "d800df02");
    CHECK(hex("\U0010FFFF") == "dbffdfff");
    CHECK(hex("é½") == "00e900bd");
    CHECK(hex("").empty());
}

TEST_CASE("a CMap names each code that has a text, in blocks of at most 100") {
    // Adobe Technical Note 5014, "Adobe CMap and CIDFont Files Specification": at most 100
    // entries a block.
    std::vector<std::string> texts(250, "x");
    texts[0] = "fi";
    texts[1] = "";
    texts[249] = "Ω";
    const auto cmap = render::to_unicode_cmap(texts);
    CHECK(cmap.find("<0001> <00660069>\n") != std::string::npos);
    CHECK(cmap.find("<0002>") == std::string::npos);
    CHECK(cmap.find("<00fa> <03a9>\n") != std::string::npos);
    CHECK(count(cmap, "100 beginbfchar\n") == 2);
    CHECK(count(cmap, "49 beginbfchar\n") == 1);
    CHECK(count(cmap, "endbfchar\n") == 3);
    CHECK(count(cmap, "> <") == 249 + 1); // and the code space
}

TEST_CASE("a CMap without texts has no block at all") {
    const auto cmap = render::to_unicode_cmap({});
    CHECK(cmap.find("bfchar") == std::string::npos);
    CHECK(cmap.find("<0000> <ffff>\nendcodespacerange\n") != std::string::npos);
    CHECK(cmap.ends_with("end\nend\n"));
}
