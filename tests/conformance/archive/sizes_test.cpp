// A dish in bags of several sizes: what is said of one size is never said of another.

#include "kitchen.h"

#include <doctest/doctest.h>

namespace sizes_test {

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

std::string day_text(const std::string& dish) {
    return "[day]\nmade = 2026-10-17\n[[package]]\ndish = \"" + dish +
           "\"\nfood = \"soup or stew\"\n"
           "[[package.size]]\nservings = 6\nbags = 2\nweight = \"2.2 kg\"\nthickness = \"30 mm\"\n"
           "[[package.size]]\nservings = 2\nbags = 3\nweight = \"750 g\"\nthickness = \"20 mm\"\n";
}

struct SizesKitchen : Kitchen {
    SizesKitchen() {
        write_file(folder / "sizes.toml", day_text("Beetroot stew"));
        REQUIRE((*this)("labels sizes.toml -o a.pdf").status == 0);
    }
};

/// How often `words` stand in `text`.
int count(const std::string& text, const std::string& words) {
    int found = 0;
    for (auto at = text.find(words); at != std::string::npos; at = text.find(words, at + 1)) {
        ++found;
    }
    return found;
}

} // namespace

TEST_CASE_FIXTURE(SizesKitchen, "the door list of the archive has a row for each size of a dish") {
    REQUIRE((*this)("lists --door -o door.pdf").status == 0);
    const auto words = run("pdftotext -layout " + shell_word(folder / "door.pdf") + " -").out;
    CAPTURE(words);
    CHECK(count(words, "Serves 6") == 1);
    CHECK(count(words, "Serves 2") == 1);
    CHECK(count(words, "Beetroot stew") == 2);
}

TEST_CASE_FIXTURE(SizesKitchen, "words that fit two sizes are asked about, for they thaw apart") {
    const auto read = (*this)("read beetroot");
    CHECK(read.status == 1);
    CHECK(says(read.err, "\"beetroot\" fits 5 bags; which is meant?"));
}

TEST_CASE_FIXTURE(SizesKitchen, "a dish that is renamed is joined size by size") {
    write_file(folder / "renamed.toml", day_text("Garden pot"));
    REQUIRE((*this)("labels renamed.toml -o b.pdf").status == 0);
    const auto renamed = (*this)("freezer renamed beetroot \"garden pot\"");
    CHECK(renamed.status == 0);
    CAPTURE(renamed.out);
    CHECK(count(renamed.out, "both ids are known") == 5);
    CHECK(count(renamed.out, "bag 1 of 2 is ") == 1);
    CHECK(count(renamed.out, "Garden pot, bag 1 of 2;") == 1);
    CHECK(count(renamed.out, "Garden pot, bag 1 of 3;") == 1);
    CHECK(says((*this)("freezer list").out, "Garden pot: 5 bags, 18 servings"));
}

} // namespace sizes_test
