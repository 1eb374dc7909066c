#include "labels.h"
#include "layout/areas/row_columns.h"
#include "layout/files/layout_file.h"
#include "support/random.h"

#include <algorithm>
#include <map>

using namespace thawslip;
using namespace thawslip::layout;
using namespace thawslip::literals;

namespace {

const std::string list_layout = R"(
print = "door list"
picture = ["rows"]
[area]
rows = { words = "rows", x_height = ["1.2 mm", "2 mm", "2.4 mm"], table = ["content", "share", "20 mm"], row_rule = "0.5 pt", space = 0.5 }
)";

wording::Paragraph words(const std::string& text, wording::Marker marker = wording::Marker::None) {
    wording::Paragraph paragraph;
    paragraph.marker = marker;
    paragraph.spans.push_back({text, {}});
    return paragraph;
}

wording::Paragraph row(std::vector<wording::Paragraph> cells) {
    wording::Paragraph paragraph;
    paragraph.cells = std::move(cells);
    return paragraph;
}

wording::Print list(std::vector<wording::Paragraph> rows) {
    wording::Print print;
    print.kind = wording::Kind::DoorList;
    print.fields = {{"rows", std::move(rows), {}}};
    return print;
}

struct SetList {
    std::vector<Text> texts;
    std::vector<Rule> rules;
    std::vector<Outline> boxes;
    Extent extent;
};

constexpr TypeSize ten_points{Length::points(10), Length::points(12)};

SetList set_list(const wording::Print& print, Length width, const std::string& toml = list_layout) {
    const auto layout = testing::layout_from(toml);
    const auto contents = testing::shaped(print, layout);
    SetList result;
    result.extent = measure(contents[0], layout.areas[0], ten_points, width);
    const Rect room{{}, {width, result.extent.height}};
    for (const auto& item : layout::draw(contents[0], layout.areas[0], ten_points, room)) {
        if (const auto* text = std::get_if<Text>(&item)) {
            result.texts.push_back(*text);
        } else if (const auto* rule = std::get_if<Rule>(&item)) {
            result.rules.push_back(*rule);
        } else if (const auto* box = std::get_if<Outline>(&item)) {
            result.boxes.push_back(*box);
        }
    }
    return result;
}

} // namespace

TEST_CASE("the cells of a column begin at one edge, whatever stands in the others") {
    const auto print = list({row({words("1 l"), words("stock"), words("stew")}),
                             row({words("1.5 kg (3 lb 5 oz)"), words("squash"), words("stew")})});
    const auto result = set_list(print, 120_mm);
    std::map<double, std::vector<double>> left_edges; // by baseline
    for (const auto& text : result.texts) {
        left_edges[text.baseline.y.in_points()].push_back(text.baseline.x.in_points());
    }
    REQUIRE(left_edges.size() == 2);
    const auto& first = left_edges.begin()->second;
    const auto& second = left_edges.rbegin()->second;
    CHECK(first.front() == doctest::Approx(second.front()));
    CHECK(first.back() == doctest::Approx(second.back()));
    // The last column is 20 mm wide as it says, at the right edge.
    CHECK(first.back() == doctest::Approx((120_mm - 20_mm).in_points()));
}

TEST_CASE("a row is as high as its highest cell, and a line stands under each") {
    const auto low = set_list(list({row({words("a"), words("b"), words("c")})}), 120_mm);
    const auto high = set_list(
        list({row({words("a"), words("b"), words("one two three four five six seven")})}), 120_mm);
    CHECK(high.extent.height > low.extent.height + ten_points.leading);
    REQUIRE(high.rules.size() == 1);
    const auto& rule = high.rules.front().area;
    CHECK(rule.size.width == 120_mm);
    CHECK(rule.bottom() <= high.extent.height);
    for (const auto& text : high.texts) {
        CHECK(text.baseline.y < rule.top());
    }
}

TEST_CASE("a cell has its box at its own left edge") {
    const auto print = list({row(
        {words("a", wording::Marker::TickBox), words("b"), words("c", wording::Marker::TickBox)})});
    const auto result = set_list(print, 120_mm);
    REQUIRE(result.boxes.size() == 2);
    CHECK(result.boxes[0].area.left() < 1_mm);
    CHECK(result.boxes[1].area.left() >= 100_mm);
    CHECK(result.boxes[1].area.left() < 101_mm);
}

TEST_CASE("no cell is lost: what is beyond the last column stands in it too") {
    const auto layout = testing::layout_from(list_layout);
    const auto cells = cells_for(row({words("a"), words("b"), words("c"), words("d")}),
                                 *text_of(layout.areas.front()));
    REQUIRE(cells.size() == 3);
    REQUIRE(cells[2].spans.size() == 3);
    CHECK(cells[2].spans[0].text == "c");
    CHECK(cells[2].spans[2].text == "d");
}

TEST_CASE("without columns a cell's label stands before its words, and what is below comes last") {
    auto bag = words("K7Q-2M4-9XC", wording::Marker::TickBox);
    bag.label = "Bag";
    bag.below = {words("top shelf")};
    auto made = words("17 Oct");
    made.label = "Made";
    wording::Paragraph only_label;
    only_label.label = "raw";
    auto whole = row({bag, {}, made, only_label});
    whole.role = wording::Role::Heading;
    whole.below = {words("of two")};
    const auto line = without_columns(whole);
    std::string said;
    for (const auto& span : line.spans) {
        said += span.emphasis == wording::Emphasis::Strong ? "*" + span.text + "*" : span.text;
    }
    CHECK(said == "*Bag *K7Q-2M4-9XC · top shelf · *Made *17 Oct · *raw * · of two");
    CHECK(line.marker == wording::Marker::TickBox);
    CHECK(line.role == wording::Role::Heading);
    CHECK(line.cells.empty());
    CHECK(line.below.empty());
    wording::Paragraph plain;
    plain.marker = wording::Marker::Number;
    CHECK(without_columns(plain).marker == wording::Marker::Number);
}

TEST_CASE("an area that is no table sets the cells of a row one after the other") {
    const auto line = without_columns(row({words("a"), {}, words("c")}));
    REQUIRE(line.spans.size() == 3);
    CHECK(line.spans[0].text == "a");
    CHECK(line.spans[2].text == "c");
}

TEST_CASE("columns that are wider than the area are refused, not set into each other") {
    const auto print = list({row({words("a word and a good many more"), words("b"), words("c")})});
    CHECK(set_list(print, 60_mm).extent.cut_paragraphs > 0);
    CHECK(set_list(print, 120_mm).extent.cut_paragraphs == 0);
}

TEST_CASE("a heading is larger than its text, with room above it") {
    auto heading = words("Stew");
    heading.role = wording::Role::Heading;
    const auto plain = set_list(list({words("x"), words("y")}), 120_mm);
    const auto headed = set_list(list({words("x"), heading}), 120_mm);
    CHECK(headed.texts.back().size == ten_points.size * usual_heading_size);
    CHECK(headed.texts.back().baseline.y > plain.texts.back().baseline.y);
    CHECK(headed.extent.height > plain.extent.height);
}

TEST_CASE("the second language is set smaller and lighter, but never under the legal floor") {
    auto echo = words("Añadir");
    echo.voice = wording::Voice::Second;
    const auto size_with = [&](const std::string& smallest) {
        const auto layout = R"(
print = "door list"
picture = ["steps"]
[area]
steps = { words = "rows", weight = "bold", x_height = [")" +
                            smallest +
                            R"(", "2.4 mm", "2.6 mm"] }
)";
        return set_list(list({words("Add"), echo}), 120_mm, layout).texts.back().size /
               ten_points.size;
    };
    CHECK(size_with("2 mm") == doctest::Approx(second_size));
    CHECK(size_with("1.25 mm") == doctest::Approx(1.2 / 1.25));
    CHECK(size_with("1.2 mm") == doctest::Approx(1.0));
}

namespace {

const std::string flowing_layout = R"(
print = "door list"
picture = ["rows"]
[area]
rows = { words = "rows", x_height = ["1.2 mm", "2 mm", "2.4 mm"], table = ["share", "share"], columns_flow = true, space = 0.5 }
)";

} // namespace

TEST_CASE("where the columns flow, a long cell leaves no hole beside it") {
    const std::string three_lines = "a cell of so many words that it takes three lines at least";
    const auto print = list({row({words("a"), words(three_lines)}), row({words("b"), words("x")}),
                             row({words("c"), {}}), words("below both")});
    const auto result = set_list(print, 60_mm, flowing_layout);
    std::vector<double> left;
    std::vector<double> right;
    for (const auto& text : result.texts) {
        auto& column = text.baseline.x < 30_mm ? left : right;
        column.push_back(text.baseline.y / ten_points.leading);
    }
    REQUIRE(left.size() == 4);
    REQUIRE(right.size() >= 4);
    CHECK(left[0] == doctest::Approx(right[0]));
    CHECK(left[1] - left[0] == doctest::Approx(1.5)); // its own line and the space
    CHECK(left[2] - left[1] == doctest::Approx(1.5));
    CHECK(right[1] - right[0] == doctest::Approx(1.0));    // lines of one cell
    CHECK(left[3] - right.back() == doctest::Approx(1.5)); // below the longer column
    CHECK(result.extent.height >= ten_points.leading * left[3]);
}

TEST_CASE("an area whose columns flow is never higher than one whose rows are aligned") {
    auto aligned = flowing_layout;
    aligned.replace(aligned.find("true"), 4, "false");
    test_support::Random random{26};
    for (int i = 0; i < 50; ++i) {
        std::vector<wording::Paragraph> rows;
        for (std::size_t r = 0; r < 1 + random.below(6); ++r) {
            const auto cell = [&] {
                std::string text;
                for (std::size_t w = random.below(12); w > 0; --w) {
                    text += "word ";
                }
                return words(text);
            };
            rows.push_back(row({cell(), cell()}));
        }
        const auto flows = set_list(list(rows), 60_mm, flowing_layout);
        const auto lines_up = set_list(list(rows), 60_mm, aligned);
        CHECK(flows.extent.height <= lines_up.extent.height + 0.001_mm);
        CHECK(flows.texts.size() == lines_up.texts.size());
    }
}

TEST_CASE("lines under rows are refused where there are no rows to draw them under") {
    auto both = flowing_layout;
    both.insert(both.find("space"), "row_rule = \"0.5 pt\", ");
    Diagnostics faults;
    const auto document = toml::parse(both, "both.toml", faults);
    CHECK_FALSE(read_layout(document, "both", faults).has_value());
    REQUIRE(faults.size() == 1);
    CHECK(faults.front().message.find("where the columns flow") != std::string::npos);
}

TEST_CASE("an area that is as wide as its table holds every cell on one line") {
    const std::string tables[] = {R"(["share", "share"])", R"(["share 3", "share"])",
                                  R"(["content", "share"])", R"(["30 mm", "share 2"])",
                                  R"(["20 %", "share"])"};
    const auto print = list(
        {row({words("a"), words("of a few more words")}), row({words("and so on"), words("b")})});
    for (const auto& table : tables) {
        CAPTURE(table);
        const auto layout = testing::layout_from(
            "print = \"door list\"\npicture = [\"rows\"]\n[area]\nrows = { words = \"rows\", "
            "x_height = [\"1.2 mm\", \"2 mm\", \"2.4 mm\"], table = " +
            table + " }\n");
        const auto contents = testing::shaped(print, layout);
        const auto& area = layout.areas[0];
        const auto width = natural_width(contents[0], area, ten_points);
        const auto wide = measure(contents[0], area, ten_points, width + 0.01_mm);
        const auto endless = measure(contents[0], area, ten_points, 1000_mm);
        CHECK(wide.cut_paragraphs == 0);
        CHECK(wide.height == endless.height);
        CHECK(measure(contents[0], area, ten_points, width - 0.5_mm).height > endless.height);
    }
}

namespace {

/// An area of two columns with one more key.
std::string two_columns_with(const std::string& key) {
    return R"(
print = "door list"
picture = ["rows"]
[area]
rows = { words = "rows", x_height = ["1.2 mm", "2 mm", "2.4 mm"], table = ["share", "share"], space = 0.5, )" +
           key + " }\n";
}

wording::Paragraph heading(const std::string& text) {
    auto paragraph = words(text);
    paragraph.role = wording::Role::Heading;
    return paragraph;
}

wording::Paragraph boxes(int count) {
    wording::Paragraph paragraph;
    for (int i = 1; i <= count; ++i) {
        paragraph.boxes.push_back(std::to_string(i));
    }
    return paragraph;
}

std::vector<std::string> faults_of(const std::string& toml) {
    Diagnostics faults;
    const auto document = toml::parse(toml, "faulty.toml", faults);
    CHECK_FALSE(read_layout(document, "faulty", faults).has_value());
    std::vector<std::string> messages;
    for (const auto& fault : faults) {
        CHECK(fault.where.line > 0);
        messages.push_back(fault.message);
    }
    return messages;
}

} // namespace

TEST_CASE("the words of a column stand where the table aligns them") {
    const auto print = list({row({words("a"), words("b")}), row({words("a"), words("bbb")})});
    const auto left = set_list(print, 100_mm, two_columns_with("merge = 0"));
    const auto right =
        set_list(print, 100_mm, two_columns_with(R"(table_align = ["left", "right"])"));
    REQUIRE(left.texts.size() == 4);
    REQUIRE(right.texts.size() == 4);
    CHECK(left.texts[1].baseline.x == left.texts[3].baseline.x);
    CHECK(right.texts[0].baseline.x == left.texts[0].baseline.x);
    CHECK(right.texts[1].baseline.x > right.texts[3].baseline.x); // the shorter begins later
    CHECK(right.texts[3].baseline.x > left.texts[3].baseline.x + 30_mm);
}

TEST_CASE("what the row above says is said once, and its line leaves it out") {
    const auto print =
        list({row({words("17 Nov"), words("stew")}), row({words("17 Nov"), words("soup")}),
              row({words("18 Nov"), words("soup")})});
    const auto keys = [](const std::string& merge) {
        return two_columns_with("row_rule = \"0.5 pt\", merge = " + merge);
    };
    CHECK(set_list(print, 100_mm, keys("0")).texts.size() == 6);
    const auto once = set_list(print, 100_mm, keys("1"));
    CHECK(once.texts.size() == 5);
    // Only where all left of it is left out too: "soup" on another day is said.
    CHECK(set_list(print, 100_mm, keys("2")).texts.size() == 5);
    REQUIRE(once.rules.size() == 3);
    CHECK(once.rules[0].area.left() > 40_mm);
    CHECK(once.rules[0].area.right().in_points() ==
          doctest::Approx(once.rules[1].area.right().in_points()));
    CHECK(once.rules[1].area.left() == Length{});
    CHECK(once.rules[2].area.left() == Length{});
}

TEST_CASE("boxes stand side by side, as many in a line as there is room for, and none is lost") {
    const auto print = list({row({words("stew"), boxes(14)})});
    for (const auto width : {200_mm, 100_mm, 60_mm}) {
        CAPTURE(width.in_millimetres());
        const auto result = set_list(print, width, two_columns_with("merge = 0"));
        REQUIRE(result.boxes.size() == 14);
        REQUIRE(result.texts.size() == 15);
        std::map<double, int> in_line;
        for (std::size_t i = 0; i < result.boxes.size(); ++i) {
            const auto& box = result.boxes[i].area;
            const auto& number = result.texts[i + 1];
            CHECK(number.baseline.x > box.right());
            CHECK(number.baseline.x < box.right() + 3_mm);
            CHECK(number.baseline.y.in_points() == doctest::Approx(box.bottom().in_points()));
            CHECK(box.right() < width);
            CHECK(box.bottom() < result.extent.height);
            ++in_line[box.top().in_points()];
        }
        CHECK(in_line.begin()->second > 1);
        CHECK(in_line.begin()->second >= in_line.rbegin()->second);
    }
    CHECK(set_list(print, 200_mm, two_columns_with("merge = 0")).extent.height <
          set_list(print, 60_mm, two_columns_with("merge = 0")).extent.height);
    CHECK(set_list(print, 15_mm, two_columns_with("merge = 0")).extent.cut_paragraphs > 0);
}

TEST_CASE("an area that is as wide as its boxes holds them on one line") {
    const auto layout = testing::layout_from(
        "print = \"door list\"\npicture = [\"rows\"]\n[area]\nrows = { words = \"rows\", "
        "x_height = [\"1.2 mm\", \"2 mm\", \"2.4 mm\"] }\n");
    const auto contents = testing::shaped(list({boxes(7)}), layout);
    const auto& area = layout.areas[0];
    const auto width = natural_width(contents[0], area, ten_points);
    CHECK(measure(contents[0], area, ten_points, width + 0.01_mm).height == ten_points.leading);
    CHECK(measure(contents[0], area, ten_points, width - 0.5_mm).height > ten_points.leading);
}

TEST_CASE("what stands below a cell's words is smaller, but never under the legal floor") {
    auto cell = words("Stew");
    cell.below = {words("Serves 6")};
    const auto size_with = [&](const std::string& smallest) {
        auto toml = two_columns_with("merge = 0");
        toml.replace(toml.find("1.2 mm"), 6, smallest);
        const auto result = set_list(list({row({cell, words("x")})}), 100_mm, toml);
        CHECK(result.texts[1].baseline.x == result.texts[0].baseline.x);
        CHECK(result.texts[1].baseline.y > result.texts[0].baseline.y);
        return result.texts[1].size / result.texts[0].size;
    };
    CHECK(size_with("1.8 mm") == doctest::Approx(below_size));
    CHECK(size_with("1.2 mm") == doctest::Approx(1.0));
}

TEST_CASE("no words of boxes or below are lost in an area that is no table") {
    auto cell = words("Stew");
    cell.below = {words("Serves 6")};
    const auto line = without_columns(row({cell, boxes(3)}));
    REQUIRE(line.spans.size() == 3);
    CHECK(line.spans[2].text == "Serves 6");
    CHECK(line.boxes.size() == 3);
}

TEST_CASE("a line stands under each heading, before what it heads") {
    const auto result = set_list(list({heading("Nov"), row({words("a"), words("b")})}), 100_mm,
                                 two_columns_with("heading_rule = \"1 pt\""));
    REQUIRE(result.rules.size() == 1);
    const auto& rule = result.rules.front().area;
    CHECK(rule.top() > result.texts[0].baseline.y);
    CHECK(rule.bottom() < result.texts[1].baseline.y - ten_points.size * 0.7);
    CHECK(rule.size.width == 100_mm);
}

TEST_CASE("a layout says how much room stands above a heading") {
    const auto height_with = [](const std::string& space) {
        return set_list(list({words("a"), heading("Nov")}), 100_mm,
                        two_columns_with("heading_space = " + space))
            .extent.height;
    };
    CHECK(height_with("1.5") - height_with("0.5") == ten_points.leading);
}

namespace {

/// Where each strip of a list begins, and how many baselines it has.
std::map<double, std::vector<double>> strips_of(const SetList& result) {
    std::map<double, std::vector<double>> strips;
    for (const auto& text : result.texts) {
        const double strip = text.baseline.x < 55_mm ? 0 : text.baseline.x < 115_mm ? 1 : 2;
        strips[strip].push_back(text.baseline.y.in_points());
    }
    return strips;
}

} // namespace

TEST_CASE("strips side by side are of even height, and hold every row in order") {
    for (const int rows : {1, 5, 6, 12, 13, 17, 18, 20, 30}) {
        CAPTURE(rows);
        std::vector<wording::Paragraph> all;
        for (int i = 0; i < rows; ++i) {
            all.push_back(row({words("r" + std::to_string(i)), {}}));
        }
        const auto in_one = set_list(list(all), 180_mm, two_columns_with("merge = 0"));
        const auto result = set_list(list(all), 180_mm, two_columns_with("strips = \"50 mm\""));
        REQUIRE(result.texts.size() == all.size());
        const auto strips = strips_of(result);
        const int count = std::clamp(rows / 6, 1, 3); // few rows stay below each other
        CHECK(strips.size() == static_cast<std::size_t>(count));
        std::size_t most = 0;
        for (const auto& [strip, baselines] : strips) {
            CHECK(std::ranges::is_sorted(baselines));
            most = std::max(most, baselines.size());
        }
        CHECK(most == static_cast<std::size_t>((rows + count - 1) / count));
        CHECK(result.extent.height <= in_one.extent.height);
    }
}

TEST_CASE("as many strips stand side by side as are as wide as they must be") {
    std::vector<wording::Paragraph> all(18, row({words("a"), {}}));
    const auto toml = two_columns_with("strips = \"50 mm\"");
    CHECK(strips_of(set_list(list(all), 90_mm, toml)).size() == 1);
    CHECK(strips_of(set_list(list(all), 110_mm, toml)).size() == 2);
    CHECK(strips_of(set_list(list(all), 180_mm, toml)).size() == 3);
}

TEST_CASE("a strip never ends with a heading, and says again what heads it and what it merged") {
    int parted = 0;
    for (int before = 3; before <= 12; ++before) {
        CAPTURE(before);
        std::vector<wording::Paragraph> all(static_cast<std::size_t>(before),
                                            row({words("x"), words("1")}));
        all.push_back(heading("B"));
        for (int i = 0; i < 9; ++i) {
            all.push_back(row({words("y"), words(std::to_string(i))}));
        }
        const auto result =
            set_list(list(all), 110_mm, two_columns_with("merge = 2, strips = \"50 mm\""));
        const auto strips = strips_of(result);
        REQUIRE(strips.size() == 2);
        const auto lowest = *std::ranges::max_element(strips.at(0));
        const auto highest = *std::ranges::min_element(strips.at(1));
        int said = 0;
        int headings = 0;
        int rows_at_the_top = 0; // of the right strip
        for (const auto& text : result.texts) {
            const bool is_left = text.baseline.x < 55_mm;
            const bool is_heading = text.size > ten_points.size;
            const auto y = text.baseline.y.in_points();
            CHECK_FALSE((is_left && y == lowest && is_heading));
            said += is_heading ? 0 : 1;
            headings += is_heading ? 1 : 0;
            rows_at_the_top += !is_left && y == highest && !is_heading ? 1 : 0;
        }
        // "x" and "1" once, "y" once, its numbers all; and what a parted block says again.
        const int again = said - (2 + 1 + 9);
        CHECK(rows_at_the_top == 0); // a heading, here or again
        CHECK(again == headings - 1);
        parted += headings - 1;
    }
    CHECK(parted > 0);
}

namespace {

/// Kinds of goods, each with its head and so many rows.
std::vector<wording::Paragraph> kinds_of(const std::vector<int>& rows) {
    std::vector<wording::Paragraph> all;
    for (const int count : rows) {
        all.push_back(words("kind " + std::to_string(all.size())));
        all.back().role = wording::Role::ColumnHeads;
        for (int i = 0; i < count; ++i) {
            all.push_back(row({words("r"), {}}));
        }
    }
    return all;
}

/// The uppermost words of the second strip.
std::string top_of_second_strip(const SetList& result) {
    const Text* top = nullptr;
    for (const auto& text : result.texts) {
        const bool is_right = text.baseline.x >= 55_mm;
        if (is_right && (top == nullptr || text.baseline.y < top->baseline.y)) {
            top = &text;
        }
    }
    REQUIRE(top != nullptr);
    return top->run.text;
}

} // namespace

TEST_CASE("rows stay below what heads them, and where strips part them it is said again") {
    const auto toml = two_columns_with("strips = \"50 mm\"");
    const auto count_of = [](const SetList& result, const std::string& words) {
        return std::ranges::count_if(result.texts,
                                     [&](const Text& text) { return text.run.text == words; });
    };
    const auto even = set_list(list(kinds_of({5, 5})), 110_mm, toml);
    CHECK(top_of_second_strip(even) == "kind 6");
    CHECK(count_of(even, "kind 0") == 1);
    const auto parted = set_list(list(kinds_of({16})), 110_mm, toml);
    CHECK(top_of_second_strip(parted) == "kind 0"); // much less even else
    CHECK(count_of(parted, "kind 0") == 2);
    CHECK(count_of(parted, "r") == 16);
}

TEST_CASE("a heading that is said again on another strip says that it is continued") {
    auto print = list({heading("Goods")});
    for (int i = 0; i < 15; ++i) {
        print.fields.front().paragraphs.push_back(row({words("r"), {}}));
    }
    print.continued_phrase = "{0}, continued";
    const auto toml = two_columns_with("strips = \"50 mm\"");
    const auto result = set_list(print, 110_mm, toml);
    CHECK(top_of_second_strip(result) == "Goods, continued");
    CHECK(result.texts.front().run.text == "Goods");
    auto& first = print.fields.front().paragraphs.front();
    first = wording::said_again(first, print.continued_phrase);
    CHECK(top_of_second_strip(set_list(print, 110_mm, toml)) == "Goods, continued"); // once
}

TEST_CASE("words reach into what the cell beside them, which stands on the right, leaves") {
    const std::string toml = R"(
print = "door list"
picture = ["rows"]
[area]
rows = { words = "rows", x_height = ["1.2 mm", "2 mm", "2.4 mm"], table = ["share", "content"], table_align = ["left", "right"] }
)";
    const auto lines = [&](const std::string& amount) {
        const auto result = set_list(list({row({words("one two three"), words(amount)}),
                                           row({words("x"), words("1.25 kg (2 lb 12 oz)")})}),
                                     55_mm, toml);
        return std::ranges::count_if(result.texts,
                                     [](const Text& text) { return text.baseline.x < 1_mm; });
    };
    CHECK(lines("2") == 2);                    // "one two three" and "x"
    CHECK(lines("1.25 kg (2 lb 12 oz)") == 3); // no room beside it
}

TEST_CASE("what stands below a row is as wide as all its cells together") {
    auto with_below = row({words("a"), words("b"), words("c")});
    const auto bare = set_list(list({with_below}), 120_mm);
    with_below.below = {words(std::string{"words that would not stand on one line in a cell"})};
    const auto result = set_list(list({with_below}), 120_mm);
    REQUIRE(result.texts.size() == bare.texts.size() + 1);
    CHECK(result.texts.back().baseline.y > bare.texts.back().baseline.y);
    CHECK(result.texts.back().baseline.x < 1_mm);
    CHECK(result.extent.height > bare.extent.height);
    CHECK(result.rules.front().area.top() > result.texts.back().baseline.y);
}

TEST_CASE("blocks that are kept whole are not parted over strips") {
    std::vector<wording::Paragraph> all;
    for (const char* name : {"A", "B", "C"}) {
        all.push_back(heading(name)); // twelve in all, for two strips
        for (int i = 0; i < 3; ++i) {
            all.push_back(row({words(name), {}}));
        }
    }
    const auto result =
        set_list(list(all), 110_mm, two_columns_with("keep_whole = true, strips = \"50 mm\""));
    const auto strips = strips_of(result);
    REQUIRE(strips.size() == 2);
    CHECK(strips.at(0).size() == 8);
    CHECK(strips.at(1).size() == 4);
}

TEST_CASE("what a table is told wrongly is told with its place and what to write instead") {
    using Messages = std::vector<std::string>;
    CHECK(faults_of(two_columns_with(R"(table_align = ["left"])")) ==
          Messages{"1 alignments are given, but the table has 2 columns"});
    CHECK(faults_of(two_columns_with(R"(table_align = ["left", "rigth"])")) ==
          Messages{"\"rigth\" is not an alignment: expected \"left\", \"centre\" or \"right\""});
    CHECK(faults_of(two_columns_with("merge = 3")) ==
          Messages{"3 columns are merged, but the table has 2"});
    CHECK(faults_of(two_columns_with("columns_flow = true, merge = 1")) ==
          Messages{"there are no rows that could say the same where the columns flow"});
    CHECK(faults_of(two_columns_with("columns_flow = true, strips = \"50 mm\"")) ==
          Messages{"there are no rows to part into strips where the columns flow"});
    CHECK(faults_of(two_columns_with("strips = \"5 mm\"")).size() == 1);
    CHECK(faults_of(two_columns_with("heading_rule = \"9 pt\"")).size() == 1);
    CHECK(faults_of(two_columns_with("heading_space = 9")).size() == 1);
    CHECK(faults_of(two_columns_with("keep_hole = true")).size() == 1);
}
