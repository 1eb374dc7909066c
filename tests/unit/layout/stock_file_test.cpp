#include "layout/files/stock_file.h"
#include "unit/layout/stocks.h"

#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>
#include <string>

namespace thawslip::layout {
namespace {

StockReading read(std::string text) {
    return read_stock(std::move(text), "own.toml", "own");
}

/// All that is wrong, one line each, without hints: "2:9 message".
std::string faults_of(std::string text) {
    std::string faults;
    for (const auto& diagnostic : read(std::move(text)).diagnostics) {
        faults += std::to_string(diagnostic.where.line) + ":" +
                  std::to_string(diagnostic.where.column) + " " + diagnostic.message + "\n";
    }
    return faults;
}

} // namespace

TEST_CASE("six things describe a stock") {
    const auto reading = read("about   = \"ten labels of the orchard crew\"\n"
                              "paper   = \"letter\"\n"
                              "cell    = [\"4 in\", \"2 in\"]\n"
                              "columns = 2\n"
                              "rows    = 5\n"
                              "first   = [\"5/32 in\", \"0.5 in\"]\n"
                              "pitch   = [\"4 3/16 in\", \"50.8 mm\"]\n"
                              "corner_radius = \"2 mm\"\n");
    REQUIRE(reading.stock.has_value());
    CHECK(reading.diagnostics.empty());
    Stock expected = ten_labels();
    expected.name = "own";
    expected.about = "ten labels of the orchard crew";
    CHECK(reading.stock->sheet == expected.sheet);
    CHECK(reading.stock->first == expected.first);
    CHECK(reading.stock->pitch.height.in_points() == doctest::Approx(144));
    expected.pitch = reading.stock->pitch;
    CHECK(*reading.stock == expected);
}

TEST_CASE("what is left out has a sensible default") {
    const auto stock = read("paper = \"a4\"\n"
                            "cell = [\"90 mm\", \"50 mm\"]\n"
                            "columns = 2\nrows = 5\ncut = true\n")
                           .stock;
    REQUIRE(stock.has_value());
    CHECK(stock->pitch == stock->cell);
    CHECK(stock->corner_radius == Length{});
    CHECK(stock->safe_margin == 2_mm);
    CHECK(stock->first.x.in_millimetres() == doctest::Approx(15));
    CHECK(stock->first.y.in_millimetres() == doctest::Approx(23.5));
    CHECK(stock->cut);
    CHECK_FALSE(stock->roll);
    CHECK(stock->about == "2 columns x 5 rows of 90 x 50 mm");
}

TEST_CASE("paper alone is a stock of one cell") {
    const auto stock = read("sheet = [\"120 mm\", \"80 mm\"]").stock;
    REQUIRE(stock.has_value());
    CHECK(stock->cells() == 1);
    CHECK(stock->cell == Size{120_mm, 80_mm});
    CHECK(stock->first == Point{});
    CHECK(stock->about == "one cell of 120 x 80 mm");
}

TEST_CASE("the page of a roll is its label") {
    const auto stock = read("roll = true\ncell = [\"60 mm\", \"100 mm\"]\n").stock;
    REQUIRE(stock.has_value());
    CHECK(stock->roll);
    CHECK(stock->sheet == stock->cell);
    CHECK(stock->sheet.width.in_millimetres() == doctest::Approx(60));
    CHECK(stock->cells() == 1);
    CHECK(stock->about == "roll, label of 60 x 100 mm");
}

TEST_CASE("a wrong stock file is refused with every fault, each at its place") {
    struct Case {
        const char* name;
        const char* text;
        const char* faults;
    };
    const Case cases[] = {
        {"unknown paper", "paper = \"a44\"", "1:9 \"a44\" is no paper known by name\n"},
        {"paper twice", "paper = \"a4\"\nsheet = [\"9 in\", \"9 in\"]\n",
         "2:9 the paper is given twice, by name and by size\n"},
        {"one length only", "paper = \"a4\"\ncell = [\"90 mm\"]\n",
         "2:8 cell has 1 length, expected 2: across and down\n"},
        {"no unit", "paper = \"a4\"\ncell = [\"90\", \"50 mm\"]\n",
         "2:12 \"90\" lacks a unit: mm, cm, in or pt\n"},
        {"the arithmetic",
         "paper = \"a4\"\ncell = [\"60 mm\", \"50 mm\"]\ncolumns = 4\n"
         "pitch = [\"62 mm\", \"50 mm\"]\nfirst = [\"10 mm\", \"0 mm\"]\n",
         "3:11 4 columns x 60 mm + 3 gutters x 2 mm + 10 mm = 256 mm, but the paper is 210 mm "
         "wide\n"},
        {"too wide where nothing says where it starts",
         "paper = \"a4\"\ncell = [\"110 mm\", \"50 mm\"]\ncolumns = 2\n",
         "3:11 2 columns x 110 mm = 220 mm, but the paper is 210 mm wide\n"},
        {"a sheet that is too small, said by name of its key", "sheet = [\"9 mm\", \"50 mm\"]\n",
         "1:9 the paper is 9 mm wide, expected 10 mm to 5080 mm\n"
         "1:9 a cell is 9 mm wide, expected 10 mm to 5080 mm\n"},
        {"several",
         "paper = \"a4\"\ncell = [\"90 mm\", \"50 mm\"]\nsafe_margin = \"25 mm\"\n"
         "corner_radius = \"30 mm\"\n",
         "3:15 2 safe margins x 25 mm = 50 mm, which leaves nothing of a cell that is 50 mm high\n"
         "4:17 the corner radius is 30 mm, expected 0 to 25 mm: half of the cell, which is 50 mm "
         "high\n"},
        {"a roll with a grid",
         "roll = true\ncell = [\"60 mm\", \"100 mm\"]\ncolumns = 2\npaper = \"a4\"\n",
         "3:11 a roll has no columns: its page is its label\n"
         "4:9 a roll has no paper: its page is its label\n"},
        {"a roll that is cut", "roll = true\ncut = true\ncell = [\"60 mm\", \"100 mm\"]\n",
         "2:7 a roll is not cut by hand from a sheet\n"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.name);
        CHECK(faults_of(c.text) == c.faults);
        CHECK_FALSE(read(c.text).stock.has_value());
    }
}

TEST_CASE("a stock needs its paper, a roll its label, and no key may be unknown") {
    const auto has_fault = [](const char* text, const char* key) {
        const auto reading = read(text);
        return !reading.stock && reading.diagnostics.size() == 1 &&
               reading.diagnostics[0].message.find(key) != std::string::npos;
    };
    CHECK(has_fault("", "\"paper\""));
    CHECK(has_fault("roll = true", "\"cell\""));
    CHECK(has_fault("paper = \"a4\"\ncolums = 2", "\"colums\""));
    CHECK(has_fault("roll = true\ncell = [\"4 in\", \"6 in\"]\ncolums = 2", "\"colums\""));
}

TEST_CASE("a misspelt paper is answered with the nearest one") {
    const auto reading = read("paper = \"leter\"");
    REQUIRE(reading.diagnostics.size() == 1);
    REQUIRE(reading.diagnostics[0].hints.size() == 2);
    CHECK(reading.diagnostics[0].hints[0] == "did you mean \"letter\"?");
}

TEST_CASE("text that is no stock at all is refused and nothing worse") {
    for (const char* text :
         {"\xff\xfe", "paper", "paper = ", "[[[[", "columns = 99999999999999999999",
          "paper = 1979-05-27", "paper = [\"a4\"]\ncell = \"4 in\"\nrows = -1\ncolumns = 0.5",
          "paper = \"a4\"\ncell = [[\"1 mm\"], 2]\npitch = []\nfirst = {x = 1}",
          "paper = \"a4\"\ncell = [\"nan mm\", \"1e999 mm\"]", "roll = \"yes\"",
          "paper = \"a4\"\nfirst = [\"-9 m\", \"9.99 m\"]"}) {
        CAPTURE(text);
        const auto reading = read(text);
        CHECK_FALSE(reading.stock.has_value());
        CHECK(has_errors(reading.diagnostics));
    }
}

TEST_CASE("a folder's stocks come by name, and its faulty files are told of") {
    namespace fs = std::filesystem;
    const fs::path folder = fs::path{THAWSLIP_BINARY_DIR} / "stock-shelf-test";
    fs::remove_all(folder);
    fs::create_directories(folder);
    const auto write = [&](const char* name, const char* text) {
        std::ofstream{folder / name} << text;
    };
    write("plum-cut.toml", "paper = \"a4\"\ncut = true");
    write("plum.toml", "paper = \"a4\"");
    write("apple.toml", "paper = \"a5\"");
    write("broken.toml", "paper = \"a55\"");
    write("notes.txt", "not a stock");
    const auto shelf = load_stocks(folder.string());
    REQUIRE(shelf.stocks.size() == 3);
    CHECK(shelf.stocks[0].name == "apple");
    CHECK(shelf.stocks[1].name == "plum");
    CHECK(shelf.stocks[2].name == "plum-cut");
    REQUIRE(shelf.diagnostics.size() == 1);
    CHECK(shelf.diagnostics[0].where.file == (folder / "broken.toml").string());
    CHECK(has_errors(load_stock((folder / "missing.toml").string()).diagnostics));
    CHECK(has_errors(load_stock(folder.string()).diagnostics));
    CHECK_THROWS_AS(load_stocks((folder / "no-such-folder").string()),
                    std::filesystem::filesystem_error);
    fs::remove_all(folder);
}

} // namespace thawslip::layout
