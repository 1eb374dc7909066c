#include "code/read_picture.h"
#include "layout/files/stock_file.h"
#include "pages.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <set>

namespace sample_day_test {

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

const std::string source = THAWSLIP_SOURCE_DIR;
const std::string day = shell_word(source + "/samples/orchard-day.toml");

layout::Stock stock(const std::string& name) {
    const auto reading = layout::load_stock(source + "/layouts/stock/" + name + ".toml");
    REQUIRE(reading.stock.has_value());
    return *reading.stock;
}

/// The sample day printed on one stock.
struct Printed {
    ScratchFolder folder;
    layout::Stock stock;
    std::string pdf;

    Printed(const std::string& command, const std::string& name)
        : stock{sample_day_test::stock(name)}, pdf{folder / "print.pdf"} {
        const auto outcome =
            run_thawslip(command + " " + day + " --stock " + name + " -o " + shell_word(pdf));
        INFO(outcome.err);
        REQUIRE(outcome.status == 0);
    }
};

std::vector<std::string> paragraphs(const std::string& text) {
    std::vector<std::string> blocks;
    std::size_t start = 0;
    while (start < text.size()) {
        const auto end = std::min(text.find("\n\n", start), text.size());
        blocks.push_back(text.substr(start, end - start));
        start = end + 2;
    }
    if (!blocks.empty() && blocks.back().ends_with('\n')) {
        blocks.back().pop_back();
    }
    return blocks;
}

/// What a label of the sample day must say, however its lines are broken.
struct Expected {
    const char* dish;
    int bags;
    std::vector<std::string> words;
    std::vector<std::string> if_room = {}; ///< or where it stands
};

const std::vector<Expected> expected = {
    {"Squash and red lentil stew",
     3,
     {"Made 17 Oct 2026", "Best if used by", "17 Dec 2026", "Thaw in the refrigerator",
      "look from 30 h, allow 46 h; cook within 1 day of thawing", "Serves",
      "Add at the start: 1 l vegetable stock", "Add last 10 min: 200 g baby spinach",
      "Cook slow cooker, low, 7–9 h, to 74 °C (165 °F)", "Contains celery"}},
    {"Apple and sage pork shoulder",
     2,
     {"Use by", "28 Feb 2027", "82 °C (180 °F)"},
     {"300 ml dry cider", "Add last 15 min: 2 tbsp wholegrain mustard", "3–3½ h"}},
    {"Chestnut, kale and barley soup",
     4,
     {"Do not thaw: cook from frozen. Never in a slow cooker", "0.5 l water",
      "Add to serve: 1½ tsp cider vinegar", "35–45 min"}},
    {"Smoky bean and sausage bake",
     3,
     {"Best if used by", "17 Nov 2026", "in cold water, at most 21 °C (70 °F), 3 h: bag sealed",
      "Cook at once"},
     {"150 g grated hard cheese", "80 g breadcrumbs", "190 °C (375 °F)"}},
    {"Plum and ginger compote", 2, {"in the microwave, about 30 min. Cook at once", "pan, 10 min"}},
};

const std::vector<std::string> label_stocks = {"letter-2x5-4x2in", "a4-2x4-99x68mm",
                                               "letter-2x5-4x2in-cut", "roll-100x150mm"};

} // namespace

TEST_CASE("every label of the sample day has its words in its own cell, on every stock") {
    for (const auto& name : label_stocks) {
        CAPTURE(name);
        const Printed printed{"labels", name};
        const auto pages = read_pages(printed.pdf);
        std::size_t label = 0;
        for (const auto& dish : expected) {
            for (int bag = 1; bag <= dish.bags; ++bag, ++label) {
                const auto cells = static_cast<std::size_t>(printed.stock.cells());
                REQUIRE(label / cells < pages.size());
                const auto text = words_in(pages[label / cells],
                                           printed.stock.cell_at(static_cast<int>(label % cells)));
                CAPTURE(text);
                CHECK(has(text, "Local food-safety rules come first."));
                CHECK(has(text, "Bag " + std::to_string(bag) + " of " + std::to_string(dish.bags)));
                for (const auto& word : {std::string{dish.dish}}) {
                    CHECK(has(text, word));
                }
                for (const auto& words : dish.words) {
                    CAPTURE(words);
                    CHECK(has(text, words));
                }
                for (const auto& words : dish.if_room) {
                    CAPTURE(words);
                    CHECK((has(text, words) || has(text, "see card") || has(text, "see the card")));
                }
            }
        }
    }
}

TEST_CASE("no word stands outside the safe area of a cell") {
    for (const auto& name : label_stocks) {
        CAPTURE(name);
        const Printed printed{"labels", name};
        for (const auto& page : read_pages(printed.pdf)) {
            CHECK_FALSE(page.words.empty());
            for (const auto& word : page.words) {
                bool inside = false;
                for (int cell = 0; cell < printed.stock.cells(); ++cell) {
                    const auto safe = printed.stock.safe_at(cell);
                    // Poppler's boxes reach from the face's ascent to its descent, beyond the ink.
                    inside = inside || (word.left >= safe.left().in_points() - 0.05 &&
                                        word.right <= safe.right().in_points() + 0.05 &&
                                        (word.top + word.bottom) / 2 > safe.top().in_points() &&
                                        (word.top + word.bottom) / 2 < safe.bottom().in_points());
                }
                CAPTURE(word.text);
                CHECK(inside);
            }
        }
    }
}

TEST_CASE("one picture of a sheet gives every code on it, also a coarse one") {
    const Printed printed{"labels", "letter-2x5-4x2in"};
    for (const int dots_per_inch : {100, 150, 200, 250}) {
        CAPTURE(dots_per_inch);
        auto raster = rasterise(printed.pdf, 1, dots_per_inch);
        CHECK(code::read_picture({raster.width, raster.height, std::move(raster.pixels)}).size() ==
              10);
    }
}

TEST_CASE("ZXing-C++ reads from the printed page what `thawslip text` says each code carries") {
    // ISO/IEC 18004:2015, QR Code bar code symbology specification; reader: ZXing-C++ 1.4.
    constexpr int dots_per_inch = 300;
    for (const auto& name : label_stocks) {
        CAPTURE(name);
        const Printed printed{"labels", name};
        const auto texts = paragraphs(run_thawslip("text " + day + " --stock " + name).out);
        REQUIRE(texts.size() == 14);
        const auto cells = static_cast<std::size_t>(printed.stock.cells());
        Raster raster;
        for (std::size_t label = 0; label < texts.size(); ++label) {
            if (label % cells == 0) {
                raster = rasterise(printed.pdf, static_cast<int>(label / cells) + 1, dots_per_inch);
            }
            const auto read = read_code(
                raster, printed.stock.cell_at(static_cast<int>(label % cells)), dots_per_inch);
            CHECK(read == texts[label]);
        }
        CHECK(std::set<std::string>(texts.begin(), texts.end()).size() == texts.size());
    }
}

TEST_CASE("pages are as large as the stock's sheet, to 0.01 mm") {
    // US Letter 215.9 x 279.4 mm (ANSI/ASME Y14.1, from memory); A4 210 x 297 mm (ISO 216:2007).
    struct Case {
        const char* stock;
        double width, height; ///< mm
    };
    const Case cases[] = {{"letter-2x5-4x2in", 215.9, 279.4},
                          {"a4-2x4-99x68mm", 210.0, 297.0},
                          {"roll-100x150mm", 100.0, 150.0}};
    for (const auto& c : cases) {
        CAPTURE(c.stock);
        const Printed printed{"labels", c.stock};
        for (const auto& page : read_pages(printed.pdf)) {
            CHECK(std::abs(page.width * 25.4 / 72 - c.width) < 0.01);
            CHECK(std::abs(page.height * 25.4 / 72 - c.height) < 0.01);
        }
    }
}

TEST_CASE("qpdf finds nothing to complain of, and all faces are embedded subsets with text") {
    for (const char* command : {"labels", "cards"}) {
        const Printed printed{command, std::string{command} == "labels" ? "letter-2x5-4x2in"
                                                                        : "letter-cards-6x4in-cut"};
        const auto check = run("qpdf --check " + shell_word(printed.pdf));
        CHECK(check.status == 0);
        CHECK(has(check.out, "No syntax or stream encoding errors found"));
        const auto fonts = run("pdffonts " + shell_word(printed.pdf));
        CHECK(fonts.err.empty());
        std::istringstream lines{fonts.out};
        std::string line;
        int faces = 0;
        for (int n = 0; std::getline(lines, line); ++n) {
            if (n >= 2) {
                ++faces;
                CAPTURE(line);
                CHECK(has(line, "yes yes yes"));
                CHECK(line.find('+') == 6); // the tag of a subset: ISO 32000-1, 9.6.4 (from memory)
            }
        }
        CHECK(faces >= 2);
        CHECK(has(run("pdfinfo " + shell_word(printed.pdf)).out, "Title:"));
        CHECK(has(run("qpdf --qdf --object-streams=disable " + shell_word(printed.pdf) + " -").out,
                  "/PrintScaling /None"));
    }
}

TEST_CASE("the same day gives the same bytes") {
    const Printed first{"labels", "letter-2x5-4x2in"};
    const Printed second{"labels", "letter-2x5-4x2in"};
    CHECK(read_file(first.pdf) == read_file(second.pdf));
    CHECK(read_file(first.pdf).size() > 1000);
}

TEST_CASE("cook-day cards carry thaw, timeline, steps, target and cautions, and finishing cards "
          "tick boxes") {
    for (const char* name : {"letter-cards-6x4in-cut", "a4-cards-a6-cut"}) {
        CAPTURE(name);
        const Printed printed{"cards", name};
        std::string all;
        int cards = 0;
        for (const auto& page : read_pages(printed.pdf)) {
            for (int cell = 0; cell < printed.stock.cells(); ++cell) {
                const auto text = words_in(page, printed.stock.cell_at(cell));
                cards += text.empty() ? 0 : 1;
                all += text + "\n";
            }
        }
        CHECK(cards == 5 + 1 + 12); // five dishes, one on two cards; twelve bags have additions
        CHECK(has(all, "Tip the thawed bag into the cooker."));
        CHECK(has(all, "74 °C (165 °F) in the middle, measured with a thermometer"));
        CHECK(has(all, "Last 15 min 2 tbsp wholegrain mustard"));
        CHECK(has(all, "Kept at 0 °F (−18 °C) it stays safe for longer"));
        CHECK(has(all, "Last 10 min 200 g (7 oz) baby spinach small bag taped to this one"));
        CHECK(has(all, "Start thawing 46 h before cooking"));
        CHECK(has(all, "These contain: mustard"));
    }
}

TEST_CASE("everything is printed in black: no operator sets another colour") {
    // ISO 32000-1, Table 74: what sets a colour. The initial colour is black, 21:1 on white paper
    // by the formula of W3C WCAG 2.1, of which success criterion 1.4.6 asks 7:1.
    const Printed printed{"labels", "letter-2x5-4x2in"};
    const auto plain =
        run("qpdf --qdf --object-streams=disable " + shell_word(printed.pdf) + " -").out;
    std::istringstream lines{plain};
    std::string line;
    int operators = 0;
    bool in_content = false;
    while (std::getline(lines, line)) {
        in_content = in_content ? line != "endstream" : line == "BT" || line.ends_with(" re");
        operators += in_content ? 1 : 0;
        // White letters on black, and back again, have the same contrast.
        const bool is_white_on_black = line == "1 g" || line == "0 g";
        for (const char* colour : {" rg", " RG", " g", " G", " k", " K", " sc", " SC", " scn"}) {
            CHECK_FALSE((in_content && line.ends_with(colour) && !is_white_on_black));
        }
    }
    CHECK(operators > 100);
}

} // namespace sample_day_test
