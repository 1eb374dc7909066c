#include "layout/files/printer_settings.h"
#include "layout/sheets/ruler.h"
#include "toml/document.h"
#include "toml/file_table.h"
#include "toml/reader.h"
#include "unit/layout/stocks.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <string>

namespace thawslip::layout {
namespace printer_settings_test {
namespace {

struct Reading {
    std::vector<Printer> printers;
    Diagnostics faults;
};

Reading read(std::string text) {
    Reading reading;
    const auto document = toml::parse(std::move(text), "settings.toml", reading.faults);
    toml::Reader reader{document, reading.faults};
    auto settings = reader.root();
    reading.printers = read_printers(settings);
    return reading;
}

const Size a4{210_mm, 297_mm};

} // namespace

TEST_CASE("paper that nobody has measured is left as it is") {
    const auto reading = read("[[printer]]\npaper = \"a4\"\n");
    CHECK(reading.faults.empty());
    REQUIRE(reading.printers.size() == 1);
    CHECK(reading.printers[0].correction == Correction{});
    CHECK(reading.printers[0].unprinted == usual_insets);
    CHECK(read("").printers.empty());
    CHECK(printer_for({}, a4).correction == Correction{});
    CHECK(printer_for({}, a4).unprinted == usual_insets);
}

TEST_CASE("readings hold for the paper they were taken from, as it lay") {
    const auto reading = read("[[printer]]\npaper = \"a4\"\n"
                              "unprinted = [\"1 mm\", \"1 mm\", \"1 mm\", \"1 mm\"]\n"
                              "[[printer]]\nsheet = [\"101.6 mm\", \"152.4 mm\"]\n"
                              "unprinted = [\"0 mm\", \"0 mm\", \"0 mm\", \"0 mm\"]\n");
    CHECK(reading.faults.empty());
    CHECK(printer_for(reading.printers, a4).unprinted.top.in_millimetres() == doctest::Approx(1));
    CHECK(printer_for(reading.printers, {4_in, 6_in}).unprinted.top == Length{});
    CHECK(printer_for(reading.printers, {297_mm, 210_mm}).unprinted == usual_insets);
}

TEST_CASE("readings in the settings become the correction of the printer") {
    // Everything lands 1 mm to the right and 0.5 mm up.
    const auto reading = read("[[printer]]\n"
                              "paper = \"a4\"\n"
                              "cross_a = [\"31 mm\", \"29.5 mm\"]\n"
                              "cross_b = [\"181 mm\", \"29.5 mm\"]\n"
                              "cross_c = [\"31 mm\", \"264.5 mm\"]\n"
                              "cross_d = [\"181 mm\", \"264.5 mm\"]\n"
                              "unprinted = [\"3 mm\", \"4 mm\", \"12.7 mm\", \"1/8 in\"]\n");
    CHECK(reading.faults.empty());
    const Point moved = printer_for(reading.printers, a4).correction({100_mm, 100_mm});
    CHECK(moved.x.in_millimetres() == doctest::Approx(99));
    CHECK(moved.y.in_millimetres() == doctest::Approx(100.5));
    CHECK(printer_for(reading.printers, a4).unprinted.bottom.in_millimetres() ==
          doctest::Approx(12.7));
    CHECK(printer_for(reading.printers, a4).unprinted.left.in_inches() == doctest::Approx(0.125));
}

TEST_CASE("what the ruler page tells one to write can be read, and asks for no correction") {
    for (const Size page : {Size{210_mm, 297_mm}, Size{11_in, 8.5_in}, Size{120_mm, 133_mm}}) {
        std::string settings;
        for (const auto& line : ruler_instructions(page)) {
            if (line == "[[printer]]" || line.find(" = ") != std::string::npos) {
                settings += line + "\n";
            }
        }
        CAPTURE(settings);
        const auto reading = read(settings);
        CHECK(reading.faults.empty());
        const Point moved = printer_for(reading.printers, page).correction({100_mm, 100_mm});
        CHECK(moved.x.in_millimetres() == doctest::Approx(100));
        CHECK(moved.y.in_millimetres() == doctest::Approx(100));
        CHECK(printer_for(reading.printers, page).unprinted.top.in_millimetres() ==
              doctest::Approx(4));
    }
}

TEST_CASE("settings that make no sense are refused and not applied") {
    struct Case {
        const char* name;
        const char* text;
        const char* message;
    };
    const Case cases[] = {
        {"a slip of the ruler",
         "paper = \"a4\"\ncross_a = [\"30 mm\", \"30 mm\"]\ncross_b = [\"180 mm\", \"30 mm\"]\n"
         "cross_c = [\"30 mm\", \"265 mm\"]\ncross_d = [\"180 mm\", \"260 mm\"]\n",
         "the readings do not agree"},
        {"two crosses",
         "paper = \"a4\"\ncross_a = [\"3 cm\", \"3 cm\"]\n"
         "cross_b = [\"18 cm\", \"3 cm\"]\n",
         "2 crosses were measured, expected at least 3"},
        {"no paper", "cross_a = [\"30 mm\", \"30 mm\"]\n", "\"paper\""},
        {"no printer leaves so much",
         "paper = \"a4\"\nunprinted = [\"4 mm\", \"4 mm\", \"60 mm\", \"4 mm\"]\n",
         "the printer leaves 60 mm free, expected 0 to 50 mm"},
        {"three sides", "paper = \"a4\"\nunprinted = [\"4 mm\", \"4 mm\", \"4 mm\"]\n",
         "unprinted has 3 lengths, expected 4: top, right, bottom, left"},
        {"twice", "paper = \"a4\"\n[[printer]]\npaper = \"a4\"\n",
         "paper of 210 x 297 mm is measured twice"},
        {"a misspelt key", "paper = \"a4\"\nunprintet = 4\n", "\"unprintet\""},
    };
    for (const auto& c : cases) {
        CAPTURE(c.name);
        const auto reading = read(std::string{"[[printer]]\n"} + c.text);
        REQUIRE(reading.faults.size() == 1);
        CHECK(reading.faults[0].message.find(c.message) != std::string::npos);
        const auto printer = printer_for(reading.printers, a4);
        CHECK(printer.correction == Correction{});
        CHECK(printer.unprinted == usual_insets);
    }
}

} // namespace printer_settings_test
} // namespace thawslip::layout
