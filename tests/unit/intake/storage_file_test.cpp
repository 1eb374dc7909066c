#include "base/text_file.h"
#include "intake/food_words_file.h"
#include "intake/storage_file.h"

#include <doctest/doctest.h>
#include <fmt/format.h>
#include <string>
#include <tuple>

namespace storage_file_test {

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

template <class Row>
std::string told_row(const Row& row) {
    return fmt::format("{} | {}-{} | {} | {} | {}\n", row.rule_set, row.low.count(),
                       row.high.count(), row.row, row.source, row.status);
}

/// Everything a table says, a row a line.
std::string told_all(const kitchen::StorageTable& table) {
    std::string all;
    for (const auto& [food, kind, watery, eaten_frozen] : table.classes) {
        all +=
            fmt::format("{} | {} | {} | {}\n", food, static_cast<int>(kind), watery, eaten_frozen);
    }
    for (const auto& row : table.rows) {
        all += row.food + " | " + span_text(row) + " | " + told_row(row);
    }
    for (const auto& row : table.before_freezing) {
        all += row.food + " | " + told_row(row);
    }
    for (const auto& row : table.after_thawing) {
        const int kind = row.kind ? static_cast<int>(*row.kind) : -1;
        all += fmt::format("{} | {} | {}", kind, row.days_before_count, told_row(row));
    }
    for (const auto& [food, row, source, status, why, instead] : table.unsuitable) {
        all +=
            fmt::format("{} | {} | {} | {} | {} | {}\n", food, row, source, status, why, instead);
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

TEST_CASE("a storage row may count in weeks") {
    CHECK(told("weeks = [3, 4], row = \"Soup\", source = \"a\", status = \"read\"").empty());
}

TEST_CASE("the storage table that is compiled in is the file, row by row") {
    const std::string file = THAWSLIP_SOURCE_DIR "/src/kitchen/storage.toml";
    auto text = read_text_file(file, 1'000'000);
    REQUIRE(text.ok());
    Diagnostics faults;
    const auto document = toml::parse(std::move(text).value(), file, faults);
    const auto read = intake::read_storage(document, faults);
    CHECK(faults.empty());
    const auto built_in = intake::built_in_storage("uk");
    CHECK(built_in.rule_set == "uk");
    CHECK(built_in.rule_sets == read.rule_sets);
    CHECK(told_all(built_in) == told_all(read));
    CHECK(read.rows.size() > 100);
    CHECK_FALSE(read.after_thawing.empty());
    CHECK_FALSE(read.unsuitable.empty());
}

TEST_CASE("a storage row has its source whole, and one that no source is named for is refused") {
    const auto read = [](const std::string& source, Diagnostics& faults) {
        const auto document = toml::parse(
            "lists = [\"us\"]\n[source.a]\npublisher = \"Board A\"\ntitle = \"Keeping\"\n"
            "[source.b]\npublisher = \"Board B\"\ntitle = \"Freezing\"\n"
            "[[class]]\nfood = \"soup\"\nkind = \"cooked dish\"\nfreezer.us = { months = [2, 3], "
            "row = \"Soup\", source = \"" +
                source + "\", status = \"read\" }\n",
            "s.toml", faults);
        return intake::read_storage(document, faults);
    };
    for (const auto& [name, publisher, title] :
         {std::tuple{"a", "Board A", "Keeping"}, std::tuple{"b", "Board B", "Freezing"}}) {
        Diagnostics faults;
        const auto table = read(name, faults);
        CHECK(faults.empty());
        REQUIRE(table.rows.size() == 1);
        CHECK(table.rows[0].source.find(publisher) != std::string::npos);
        CHECK(table.rows[0].source.find(title) != std::string::npos);
    }
    Diagnostics faults;
    read("c", faults);
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].message == "\"c\" is not a source: expected a key of [source]");
}

TEST_CASE("a key that no table of storage times has is refused in every table") {
    const std::string start = "lists = [\"us\"]\n[source.a]\npublisher = \"A\"\ntitle = \"B\"\n";
    const std::string soup = "[[class]]\nfood = \"soup\"\nkind = \"cooked dish\"\n";
    const std::string row = "row = \"R\"\nsource = \"a\"\nstatus = \"read\"\n";
    for (const auto& table :
         {std::string{}, soup,
          soup +
              "freezer.us = { months = [2, 3], row = \"R\", source = \"a\", status = \"read\" }\n" +
              "[class.fridge.us]\ndays = [1, 2]\n" + row,
          "[[thawed]]\nlist = \"us\"\ndays = [1, 1]\n" + row,
          "[[unsuitable]]\nfoods = [\"egg\"]\n" + row}) {
        CAPTURE(table);
        Diagnostics faults;
        intake::read_storage(toml::parse(start + table + "wrong = 1\n", "s.toml", faults), faults);
        REQUIRE(faults.size() == 1);
        CHECK(to_text(faults.front()).find("wrong") != std::string::npos);
    }
}

TEST_CASE("words for food are read by what their table means") {
    using kitchen::FoodRole;
    const auto read = [](const std::string& text, Diagnostics& faults) {
        return intake::read_food_words(toml::parse(text, "w.toml", faults), "en",
                                       intake::built_in_storage("us"), faults);
    };
    Diagnostics faults;
    const auto words =
        read("[kind]\n\"soup or stew\" = [\"potage\"]\n"
             "[[question]]\nkinds = [\"soup or stew\", \"bread\"]\nwords = [\"sop\"]\n"
             "[base]\npoultry = [\"hen\"]\n[form]\nground = [\"mince\"]\n"
             "[state]\nraw = [\"uncooked\"]\n"
             "[no_animal]\nwords = [\"vegan\"]\n[say_nothing]\nwords = [\"fine\"]\n",
             faults);
    CHECK(faults.empty());
    const auto word = [](FoodRole role, const char* means, const char* written) {
        return intake::OwnFoodWord{kitchen::food_key(written), role, means, written, "en", false};
    };
    CHECK(words == std::vector{word(FoodRole::Kind, "soup or stew", "potage"),
                               word(FoodRole::Question, "soup or stew|bread", "sop"),
                               word(FoodRole::Base, "poultry", "hen"),
                               word(FoodRole::Form, "ground", "mince"),
                               word(FoodRole::State, "raw", "uncooked"),
                               word(FoodRole::NoAnimal, "", "vegan"),
                               word(FoodRole::SaysNothing, "", "fine")});
    struct Case {
        const char* text;
        const char* said;
    };
    for (const auto& c :
         {Case{"[kind]\n\"moss\" = [\"potage\"]\n", "\"moss\" is no kind of food"},
          Case{"[[question]]\nkinds = [\"moss\"]\nwords = [\"sop\"]\n",
               "\"moss\" is no kind of food"},
          Case{"[[question]]\nkinds = [\"bread\"]\nwords = [\"sop\"]\nwrong = 1\n", "wrong"},
          Case{"[no_animal]\nwords = [\"vegan\"]\nwrong = 1\n", "wrong"},
          Case{"wrong = 1\n", "wrong"},
          Case{"[base]\npoultry = [\"hen\"]\nmeat = [\"hens\"]\n",
               "\"hens\" is poultry already, as \"hen\""}}) {
        CAPTURE(c.text);
        Diagnostics told;
        read(c.text, told);
        REQUIRE(told.size() == 1);
        CHECK(to_text(told.front()).find(c.said) != std::string::npos);
    }
}

} // namespace storage_file_test
