// Files of everyday words: what is wrong with a phrase stops the build, and what is well is kept.

#include "intake/words_file.h"
#include "toml/document.h"

#include <doctest/doctest.h>

namespace words_file_test {

using namespace thawslip;

namespace {

struct Words {
    std::vector<intake::WordsRow> rows;
    std::string faults;
};

Words read(const std::string& phrases) {
    Diagnostics faults;
    const auto document =
        toml::parse("[appliance]\n\"oven\" = [" + phrases + "]\n", "words.toml", faults);
    Words words{intake::read_words(document, faults), {}};
    for (const auto& fault : faults) {
        words.faults += to_text(fault);
    }
    return words;
}

bool refuses(const std::string& phrase, const std::string& why) {
    const auto words = read("\"hearth\", " + phrase);
    return words.rows.size() == 1 && words.rows[0].phrase == "hearth" &&
           words.faults.find(why) != std::string::npos;
}

} // namespace

TEST_CASE("phrases are kept with what they mean, parts of compounds too") {
    const auto words = read(R"("hearth", "clay oven", "-oven", "bak-")");
    CHECK(words.faults.empty());
    REQUIRE(words.rows.size() == 4);
    for (const auto& row : words.rows) {
        CHECK(row.section == kitchen::Section::Appliance);
        CHECK(row.meaning == "oven");
    }
    CHECK(words.rows[1].phrase == "clay oven");
}

TEST_CASE("a phrase that can be no word, or would be found everywhere, is left out and told") {
    CHECK(refuses("\"?!\"", "\"?!\" has no letters"));
    CHECK(refuses("\"-ov\"", "\"-ov\" is too short a part"));
    CHECK(refuses("\"ov-\"", "\"ov-\" is too short a part"));
    CHECK(refuses("\"clay oven-\"", "is a part of a compound and must be one word"));
    CHECK(refuses("\"Hearth\"", "\"Hearth\" is listed twice"));
    CHECK(read("\"ov\"").faults.empty()); // a word by itself may be short
}

} // namespace words_file_test
