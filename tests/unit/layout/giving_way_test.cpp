// What a print gives up for room, in which order, and what is drawn around words that count.

#include "labels.h"
#include "layout/compose.h"

#include <set>

namespace giving_way_test {

using namespace thawslip;
using namespace thawslip::layout;
using namespace thawslip::literals;

namespace {

constexpr double comfortable = 1.0;

std::vector<wording::Paragraph> said(const std::string& text) {
    return testing::field("", {text}).paragraphs;
}

/// A dish, a long thaw line that can be said twice shorter, and a cooking line that may leave.
wording::Print wordy() {
    wording::Print print;
    print.fields = {
        testing::field("dish", {"Barley stew"}),
        testing::field("thaw",
                       {"Thaw in the refrigerator on a tray: look from thirty hours on, allow "
                        "forty-six; cook within two days of thawing"}),
        testing::field("cook", {"Cook in the slow cooker, low, seven to nine hours"}),
        testing::field("mark", {"4"}),
    };
    print.fields[1].shorter = {said("Thaw in the refrigerator, forty-six hours; then two days"),
                               said("Thaw 46 h")};
    print.fields[3].paragraphs.front().number = 4;
    return print;
}

Layout one_below_the_other(const std::string& thaw, const std::string& cook) {
    return testing::layout_from(R"(
print = "bag label"
picture = ["dish", "thaw", "cook"]
columns = ["share"]
[area]
dish = { words = "dish", x_height = ["1.2 mm", "2 mm", "2 mm"] }
thaw = { words = "thaw", x_height = ["1.2 mm", "1.5 mm", "2 mm"])" +
                                thaw + R"( }
cook = { words = "cook", x_height = ["1.2 mm", "1.5 mm", "2 mm"])" +
                                cook + " }\n");
}

struct Given {
    Layout layout;
    Contents contents = testing::shaped(wordy(), layout);

    Sizing in(Length height) const {
        const auto sizing = solve(layout, contents, {50_mm, height}, testing::fonts());
        REQUIRE(sizing.has_value());
        return *sizing;
    }
    std::vector<std::optional<std::size_t>> forms(Length height) const {
        return forms_in_use(layout, contents, in(height));
    }
};

/// The items that are drawn of one area at its comfortable size.
std::vector<Item> drawn(const std::string& area, const wording::Print& print) {
    const auto layout =
        testing::layout_from("print = \"bag label\"\npicture = [\"one\"]\ncolumns = [\"share\"]\n"
                             "[area]\none = { " +
                             area + " }\n");
    const auto contents = testing::shaped(print, layout);
    const auto arrangement =
        arrange(layout, contents, {60_mm, 12_mm}, sizing_at({comfortable}, 0), testing::fonts());
    return draw(contents[0], layout.areas[0], arrangement.areas[0].type,
                arrangement.areas[0].place);
}

template <class Kind>
std::vector<Kind> all(const std::vector<Item>& items) {
    std::vector<Kind> found;
    for (const auto& item : items) {
        if (const auto* kind = std::get_if<Kind>(&item)) {
            found.push_back(*kind);
        }
    }
    return found;
}

constexpr const char* dish_area = R"(words = "dish", x_height = ["2 mm", "2 mm", "2 mm"])";

} // namespace

TEST_CASE("words are said shorter, form by form, where they would else be too small") {
    const Given given{one_below_the_other(", shorten = [1, 2]", "")};
    CHECK(given.forms(60_mm)[1] == 0);
    CHECK(given.in(60_mm).scales[0].value > comfortable);
    std::set<std::size_t> seen;
    for (auto height = 60_mm; height > 14_mm; height = height - 0.5_mm) {
        const auto form = given.forms(height)[1];
        REQUIRE(form.has_value());
        CHECK((seen.empty() || *form >= *seen.rbegin())); // less room never says more
        seen.insert(*form);
        if (*form > 0 && *form < 2) {
            CHECK(given.in(height).scales[0].value == comfortable); // bought by what was not said
        }
    }
    CHECK(seen == std::set<std::size_t>{0, 1, 2});
}

TEST_CASE("no gap takes what is to spare for an area that is not there") {
    const auto layout = testing::layout_from(R"(
print = "bag label"
picture = ["dish", "cook", "thaw"]
columns = ["share"]
row_gap = "1 mm"
row_gap_most = "4 mm"
spare_under = ["cook"]
[area]
dish = { words = "dish", x_height = ["2 mm", "2 mm", "2 mm"] }
cook = { words = "cook", x_height = ["2 mm", "2 mm", "2 mm"] }
thaw = { words = "thaw", x_height = ["2 mm", "2 mm", "2 mm"] }
)");
    const auto gap_above_thaw = [&](const wording::Print& print, std::size_t above) {
        const auto arrangement = arrange(layout, testing::shaped(print, layout), {60_mm, 90_mm},
                                         sizing_at({comfortable}, 0), testing::fonts());
        return arrangement.areas[2].room.top() - arrangement.areas[above].room.bottom();
    };
    auto print = wordy();
    CHECK(gap_above_thaw(print, 1).in_millimetres() == doctest::Approx(4.0));
    print.fields[2].paragraphs.clear();
    CHECK(gap_above_thaw(print, 0).in_millimetres() == doctest::Approx(1.0));
}

TEST_CASE("what shortens and what drops stand in one order") {
    const Given drop_last{one_below_the_other(", shorten = [1, 2]", ", drop = 3")};
    const Given drop_between{one_below_the_other(", shorten = [1, 3]", ", drop = 2")};
    const auto steps = [](const Given& given) {
        std::string order;
        for (const auto& step : concessions(given.layout, given.contents)) {
            order += step.what == Concession::What::Drop ? "d" : "s";
        }
        return order;
    };
    CHECK(steps(drop_last) == "ssd");
    CHECK(steps(drop_between) == "sds");
    const auto forms =
        forms_in_use(drop_between.layout, drop_between.contents, sizing_at({comfortable}, 2));
    CHECK(forms[1] == 1);
    CHECK_FALSE(forms[2].has_value());
}

TEST_CASE("what was conceded and need not have been is taken back") {
    // The short line goes first and saves too little; what the long one saves is room for both.
    const auto layout = one_below_the_other(", shorten = [2]", ", drop = 1");
    auto print = wordy();
    print.fields[1].shorter = {said("Thaw 46 h")};
    const Given given{layout, testing::shaped(print, layout)};
    int taken_back = 0;
    for (auto height = 40_mm; height > 8_mm; height = height - 0.25_mm) {
        const auto sizing = solve(given.layout, given.contents, {30_mm, height}, testing::fonts());
        if (!sizing || sizing->taken_back.empty()) {
            continue;
        }
        ++taken_back;
        const auto forms = forms_in_use(given.layout, given.contents, *sizing);
        CHECK(forms[2].has_value());                     // the line is there again
        CHECK(forms[1] > std::optional<std::size_t>{0}); // and the other still says less
        CHECK(arrange(given.layout, given.contents, {30_mm, height}, *sizing, testing::fonts())
                  .fits());
    }
    CHECK(taken_back > 0);
}

TEST_CASE("an area that may not shorten says all it has to say") {
    const Given given{one_below_the_other("", "")};
    CHECK(concessions(given.layout, given.contents).empty());
    CHECK(given.contents[1].shorter_forms() == 0);
}

TEST_CASE("a code gives way down to its least side, and takes what it is left") {
    const auto layout = testing::layout_from(R"(
print = "bag label"
picture = ["dish code", ".    code"]
columns = ["share", "30 mm"]
rows    = ["content", "share"]
[area]
dish = { words = "dish", x_height = ["1.2 mm", "2 mm", "2 mm"] }
code = { kind = "code", least_side = "18 mm", shorten = [1] }
)");
    auto print = wordy();
    print.has_code = true;
    const auto contents = testing::shaped(print, layout);
    const auto side_in = [&](Length height) -> std::optional<double> {
        const Size room{90_mm, height};
        const auto sizing = solve(layout, contents, room, testing::fonts());
        if (!sizing) {
            return std::nullopt;
        }
        const auto arrangement = arrange(layout, contents, room, *sizing, testing::fonts());
        return arrangement.areas[1].place.size.height.in_millimetres();
    };
    CHECK(*side_in(40_mm) == doctest::Approx(30.0));
    CHECK(*side_in(25_mm) == doctest::Approx(25.0));
    CHECK(*side_in(18.1_mm) == doctest::Approx(18.1));
    CHECK_FALSE(side_in(17.9_mm).has_value());
}

TEST_CASE("a code gives way to what its texts need, if its columns are that wide, then further") {
    const CodeArea area{18_mm, {1, 4}, {}};
    using Sides = std::vector<Length>;
    const auto asked = [&](const Sides& needed, Length width) {
        const auto content = content_for(area, needed);
        Sides sides;
        for (std::size_t form = 0; form <= content.shorter_forms(); ++form) {
            const auto rows = RowHeights::FollowContent;
            sides.push_back(measure(content.in(form), area, {}, width, rows).height);
        }
        return sides;
    };
    CHECK((asked({28_mm, 24_mm}, 30_mm) == Sides{30_mm, 28_mm, 24_mm, 18_mm}));
    CHECK((asked({33_mm, 24_mm}, 30_mm) == Sides{30_mm, 24_mm, 24_mm, 18_mm}));
    CHECK((asked({33_mm, 31_mm}, 30_mm) == Sides{30_mm, 18_mm, 18_mm, 18_mm}));
    CHECK((asked({15_mm}, 30_mm) == Sides{30_mm, 18_mm}));
    CHECK((asked({24_mm}, 12_mm) == Sides{12_mm, 12_mm, 12_mm}));
    CHECK(content_for({}, {24_mm}).shorter_forms() == 0); // it never gives way
}

TEST_CASE("a frame stands close around its words, and its words inside it") {
    const auto items = drawn(std::string{dish_area} + R"(, border = "frame")", wordy());
    const auto frames = all<Outline>(items);
    const auto words = all<Text>(items);
    REQUIRE(frames.size() == 1);
    REQUIRE(words.size() == 1);
    CHECK(words[0].tone == Tone::Black);
    CHECK(frames[0].area.left() < words[0].baseline.x);
    CHECK(frames[0].area.bottom() > words[0].baseline.y);
    CHECK(frames[0].area.right() < 40_mm); // of the 60 mm that there are
    CHECK(all<Outline>(drawn(dish_area, wordy())).empty());
}

TEST_CASE("reversed words are white in a black field") {
    const auto items = drawn(std::string{dish_area} + R"(, border = "reversed")", wordy());
    REQUIRE(all<Rule>(items).size() == 1);
    for (const auto& text : all<Text>(items)) {
        CHECK(text.tone == Tone::White);
        CHECK(all<Rule>(items)[0].area.contains({text.baseline, {}}));
    }
    CHECK(std::holds_alternative<Rule>(items.front())); // the field is there before the words
}

TEST_CASE("where a border is for what is critical, other prints have none") {
    const std::string area =
        std::string{dish_area} + R"(, border = "frame", border_on = "critical")";
    auto print = wordy();
    CHECK(all<Outline>(drawn(area, print)).empty());
    print.fields[0].paragraphs[0].critical = true;
    CHECK(all<Outline>(drawn(area, print)).size() == 1);
}

TEST_CASE("a pattern of a given height stands on the first line of its row") {
    const auto layout = testing::layout_from(R"(
print = "bag label"
picture = ["dish mark"]
columns = ["share", "5 mm"]
[area]
dish = { words = "dish", x_height = ["3 mm", "3 mm", "3 mm"] }
mark = { kind = "pattern", height = "3.9 mm" }
)");
    const auto contents = testing::shaped(wordy(), layout);
    const auto arrangement =
        arrange(layout, contents, {90_mm, 12_mm}, sizing_at({comfortable}, 0), testing::fonts());
    const auto& dish = arrangement.areas[0];
    const auto& mark = arrangement.areas[1];
    const auto words = all<Text>(draw(contents[0], layout.areas[0], dish.type, dish.place));
    REQUIRE(words.size() == 1);
    CHECK(mark.place.size.height == 3.9_mm);
    CHECK(std::abs((mark.place.bottom() - words[0].baseline.y).in_millimetres()) < 1e-6);
}

TEST_CASE("the patterns of six dishes are six, stay inside their place, and are coarse") {
    std::set<std::string> patterns_seen;
    for (int dish = 1; dish <= patterns; ++dish) {
        CAPTURE(dish);
        auto print = wordy();
        print.fields[3].paragraphs[0].number = dish;
        const auto layout = testing::layout_from(
            "print = \"bag label\"\npicture = [\"one\"]\n[area]\none = { kind = \"pattern\" }\n");
        const auto contents = testing::shaped(print, layout);
        const Rect place{{1_mm, 1_mm}, {5_mm, 6_mm}};
        std::string drawing;
        for (const auto& item : draw(contents[0], layout.areas[0], {}, place)) {
            const auto* rule = std::get_if<Rule>(&item);
            const auto area = rule != nullptr ? rule->area : std::get<Outline>(item).area;
            CHECK(place.contains(area));
            // A module of half a millimetre is what codes are given to last: a bar no less.
            const auto thickness = rule != nullptr ? std::min(area.size.width, area.size.height)
                                                   : std::get<Outline>(item).thickness;
            CHECK(thickness >= 0.5_mm);
            drawing += std::to_string(area.left().in_points()) + "," +
                       std::to_string(area.top().in_points()) + "," +
                       std::to_string(area.size.width.in_points()) + ";";
        }
        CHECK_FALSE(drawing.empty());
        const Rect small{{1_mm, 1_mm}, {2.2_mm, 2_mm}}; // the same on the smallest label
        CHECK(draw(contents[0], layout.areas[0], {}, small).size() ==
              draw(contents[0], layout.areas[0], {}, place).size());
        patterns_seen.insert(drawing);
    }
    CHECK(patterns_seen.size() == patterns);
}

TEST_CASE("of the strip of months one is black: that of the limit, at its place in the year") {
    for (int month = 1; month <= 12; ++month) {
        CAPTURE(month);
        wording::Print print;
        print.fields = {testing::field(
            "month-strip", {"J", "F", "M", "A", "M", "J", "J", "A", "S", "O", "N", "D", "2027"})};
        print.fields[0].paragraphs[static_cast<std::size_t>(month) - 1].critical = true;
        const auto items = drawn("kind = \"months\"", print);
        std::vector<Rect> fields;
        for (const auto& rule : all<Rule>(items)) {
            if (rule.area.size.height > 1_mm) {
                fields.push_back(rule.area);
            }
        }
        REQUIRE(fields.size() == 1);
        CHECK(fields[0].left() / fields[0].size.width == doctest::Approx(month - 1));
        const auto texts = all<Text>(items);
        CHECK(std::ranges::count(texts, Tone::White, &Text::tone) == 1);
        CHECK(texts.back().run.text == "2027");
    }
}

TEST_CASE("on a line, what belongs together is not parted, and no dot hangs at its end") {
    wording::Print print;
    print.fields = {testing::field("made", {"Made 17 Oct 2026"}),
                    testing::field("bag", {"Bag 1 of 3"}), testing::field("id", {"C8H-YNW-87N"})};
    const std::string area = R"(words = ["made", "bag", "id"], join = "line", )"
                             R"(x_height = ["2 mm", "2 mm", "2 mm"])";
    const auto layout = testing::layout_from(
        "print = \"bag label\"\npicture = [\"one\"]\ncolumns = [\"share\"]\n[area]\none = { " +
        area + " }\n");
    const auto contents = testing::shaped(print, layout);
    const auto& text = contents[0].entries()[0].text;
    for (double em = 12.0; em < 40.0; em += 0.5) {
        CAPTURE(em);
        const auto lines = text.set(em);
        for (const auto& line : lines) {
            std::string words;
            for (const auto& piece : line.pieces) {
                words += piece.run.text;
            }
            CAPTURE(words);
            CHECK_FALSE(words.ends_with("·"));
            CHECK_FALSE(words.ends_with("Made"));
            CHECK_FALSE(words.ends_with("Bag"));
        }
    }
}

TEST_CASE("orders are whole numbers that do not fall, and a code that gives way says how far") {
    const auto faults = [](const std::string& area) {
        Diagnostics found;
        const auto text =
            "print = \"bag label\"\npicture = [\"one\"]\ncolumns = [\"share\"]\n[area]\none = { " +
            area + " }\n";
        read_layout(toml::parse(text, "test.toml", found), "test", found);
        return found;
    };
    const std::string words = R"(words = "thaw", x_height = ["2 mm", "2 mm", "2 mm"])";
    CHECK(faults(words + ", shorten = [2, 5]").empty());
    REQUIRE(faults(words + ", shorten = [5, 2]").size() == 1);
    CHECK(faults(words + ", shorten = [5, 2]")[0].message == "the orders fall");
    REQUIRE(faults(words + ", shorten = [1.5]").size() == 1);
    CHECK(faults(words + ", shorten = [1.5]")[0].message == "an order is a whole number");
    CHECK(faults(words + R"(, border_on = "critical")").size() == 1);
    CHECK(faults(R"(kind = "code", least_side = "20 mm")").size() == 1);
    CHECK(faults(R"(kind = "code", shorten = [1])").size() == 1);
    CHECK(faults(R"(kind = "code", shorten = [1], least_side = "20 mm")").empty());
}

} // namespace giving_way_test
