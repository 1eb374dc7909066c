#include "intake/storage_file.h"

#include <doctest/doctest.h>
#include <string>

using namespace thawslip;

namespace {

/// What is told about a table with one class, whose freezer row is `row`.
std::string told(const std::string& row) {
    Diagnostics faults;
    const auto document = toml::parse("lists = [\"us\"]\n"
                                      "[source.a]\npublisher = \"A\"\ntitle = \"B\"\n"
                                      "[[class]]\nfood = \"soup\"\nkind = \"cooked dish\"\n"
                                      "freezer.us = { " +
                                          row + " }\n",
                                      "s.toml", faults);
    const auto table = intake::read_storage(document, faults);
    CHECK(table.classes.size() == 1);
    CHECK(table.rows.empty() == has_errors(faults));
    std::string all;
    for (const auto& fault : faults) {
        all += to_text(fault);
    }
    return all;
}

} // namespace

TEST_CASE("a storage row that is whole and cited is read") {
    CHECK(told("months = [2, 3], row = \"Soup\", source = \"a\", status = \"read\"").empty());
}

TEST_CASE("a storage row whose months are no two whole numbers in order is refused") {
    for (const char* months : {"[2.5, 3]", "[3, 2]", "[2]"}) {
        CAPTURE(months);
        CHECK(told("months = " + std::string{months} +
                   ", row = \"Soup\", source = \"a\", status = \"read\"") ==
              "s.toml:8:25: error: expected two whole numbers, the lower one first\n");
    }
}

TEST_CASE("the storage table that is compiled in has no faults and knows its lists") {
    const auto table = intake::built_in_storage("uk");
    CHECK(table.rule_set == "uk");
    CHECK_FALSE(table.rows.empty());
    CHECK_FALSE(table.rule_sets.empty());
}
