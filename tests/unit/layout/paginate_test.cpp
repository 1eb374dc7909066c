#include "labels.h"
#include "layout/large_print.h"
#include "layout/paginate.h"

#include <algorithm>

using namespace thawslip;
using namespace thawslip::layout;
using namespace thawslip::literals;

namespace {

const std::string card_layout = R"(
print = "cook-day card"
picture = ["title", "dish", "thaw", "steps", "rules"]
row_gap = "2 mm"
[area]
title = { words = ["page"], repeats = true, x_height = ["1.2 mm", "1.4 mm", "1.7 mm"] }
dish  = { words = "dish", repeats = true, weight = "bold", x_height = ["1.8 mm", "2.4 mm", "3.4 mm"] }
thaw  = { words = "thaw", x_height = ["1.3 mm", "2.1 mm", "2.3 mm"] }
steps = { words = "steps", continues = true, x_height = ["1.3 mm", "2.1 mm", "2.3 mm"] }
rules = { words = "local-rules", repeats = true, x_height = ["1.2 mm", "1.3 mm", "1.4 mm"] }
)";

wording::Print card_with(int steps) {
    auto print = testing::small_label();
    print.kind = wording::Kind::CookDayCard;
    print.page_phrase = "Card {0} of {1}";
    print.has_code = true;
    std::vector<std::string> texts;
    for (int i = 1; i <= steps; ++i) {
        texts.push_back("Step " + std::to_string(i) + ": stir slowly and let it simmer a while.");
    }
    print.fields.push_back(testing::field("steps", texts));
    print.fields.push_back(testing::field("local-rules", {"Local food-safety rules come first."}));
    return print;
}

std::vector<wording::Print> cards_of(int steps, Length height) {
    Shaper shaper{testing::fonts()};
    return paginate(card_with(steps), testing::layout_from(card_layout), {120_mm, height}, shaper);
}

std::string words_of(const wording::Print& card, const char* field) {
    std::string words;
    if (const auto* found = card.field(field)) {
        for (const auto& paragraph : found->paragraphs) {
            words += paragraph.spans.front().text + "\n";
        }
    }
    return words;
}

} // namespace

TEST_CASE("a card whose steps fit stays one card and says nothing of pages") {
    const auto cards = cards_of(3, 90_mm);
    REQUIRE(cards.size() == 1);
    CHECK(cards[0].field("page") == nullptr);
}

TEST_CASE("steps that do not fit run on to further cards, all of them, once, in order") {
    for (const int steps : {12, 20, 40}) {
        CAPTURE(steps);
        const auto cards = cards_of(steps, 60_mm);
        REQUIRE(cards.size() >= 2);
        std::string all;
        for (std::size_t i = 0; i < cards.size(); ++i) {
            all += words_of(cards[i], "steps");
            CHECK(words_of(cards[i], "page") ==
                  "Card " + std::to_string(i + 1) + " of " + std::to_string(cards.size()) + "\n");
            CHECK_FALSE(words_of(cards[i], "dish").empty());
            CHECK_FALSE(words_of(cards[i], "local-rules").empty());
        }
        CHECK(all == words_of(card_with(steps), "steps"));
    }
}

TEST_CASE("a word that is wider than a card takes no cards of its own") {
    auto print = card_with(12);
    const auto place = std::ranges::find(print.fields, "steps", &wording::Field::name);
    place->paragraphs[5].spans.front().text = std::string(150, 'o');
    Shaper shaper{testing::fonts()};
    const auto cards = paginate(print, testing::layout_from(card_layout), {120_mm, 60_mm}, shaper);
    CHECK(cards.size() <= cards_of(12, 60_mm).size() + 1);
}

TEST_CASE("each card but the last ends with where more is, in both languages") {
    auto print = card_with(30);
    print.more_phrase = "More on card {0}";
    print.second_more_phrase = "Sigue en la tarjeta {0}";
    Shaper shaper{testing::fonts()};
    const auto layout = testing::layout_from(card_layout);
    const auto cards = paginate(print, layout, {120_mm, 60_mm}, shaper);
    REQUIRE(cards.size() >= 3);
    std::string all;
    for (std::size_t i = 0; i < cards.size(); ++i) {
        CAPTURE(i);
        auto steps = cards[i].field("steps")->paragraphs;
        REQUIRE(steps.size() > 2);
        if (i + 1 < cards.size()) {
            const auto next = std::to_string(i + 2);
            CHECK(steps[steps.size() - 2].spans.front().text == "More on card " + next);
            CHECK(steps.back().spans.front().text == "Sigue en la tarjeta " + next);
            CHECK(steps.back().voice == wording::Voice::Second);
            steps.resize(steps.size() - 2);
        }
        for (const auto& step : steps) {
            all += step.spans.front().text + "\n";
        }
        CHECK(solve(layout, testing::shaped(cards[i], layout), {120_mm, 60_mm}, testing::fonts()));
    }
    CHECK(all == words_of(print, "steps")); // no word of it is lost for it
}

TEST_CASE("how to thaw and the code stand on the first card alone") {
    const auto cards = cards_of(15, 60_mm);
    REQUIRE(cards.size() >= 2);
    CHECK_FALSE(words_of(cards[0], "thaw").empty());
    CHECK(cards[0].has_code);
    for (std::size_t i = 1; i < cards.size(); ++i) {
        CHECK(words_of(cards[i], "thaw").empty());
        CHECK_FALSE(cards[i].has_code);
    }
}

namespace {

/// The smallest scale among the cards of a recipe.
double smallest_scale(int steps) {
    const auto layout = testing::layout_from(card_layout);
    double smallest = 2.0;
    for (const auto& card : cards_of(steps, 60_mm)) {
        const auto sizes =
            solve(layout, testing::shaped(card, layout), {120_mm, 60_mm}, testing::fonts());
        REQUIRE(sizes.has_value());
        smallest = std::min(smallest, sizes->scales[0].value);
    }
    return smallest;
}

} // namespace

TEST_CASE("cards of a long recipe are comfortable, or a little less where that saves one") {
    int comfortable = 0;
    for (int steps = 10; steps <= 40; ++steps) {
        CAPTURE(steps);
        const double scale = smallest_scale(steps);
        CHECK(scale >= 0.5);
        comfortable += scale >= 1.0 ? 1 : 0;
        if (scale < 1.0) { // then the same steps less a few are on as many cards
            CHECK(cards_of(steps, 60_mm).size() <= cards_of(steps - 6, 60_mm).size() + 1);
        }
    }
    CHECK(comfortable > 10);
}

TEST_CASE("in large print no card is saved by smaller type") {
    const auto layout = in_large_print(testing::layout_from("columns = [\"share\"]" + card_layout));
    for (int steps = 2; steps <= 30; ++steps) {
        CAPTURE(steps);
        Shaper shaper{testing::fonts()};
        for (const auto& card : paginate(card_with(steps), layout, {120_mm, 110_mm}, shaper)) {
            const auto contents = testing::shaped(card, layout);
            const auto sizing = solve(layout, contents, {120_mm, 110_mm}, testing::fonts());
            REQUIRE(sizing.has_value());
            CHECK(sizing->scales[0].value >= 1.0);
        }
    }
}

TEST_CASE("cards of a long recipe are filled evenly") {
    for (const int steps : {12, 20, 26, 33, 40}) {
        CAPTURE(steps);
        const auto cards = cards_of(steps, 60_mm);
        REQUIRE(cards.size() >= 2);
        // The first card also says how to thaw, so the others may have a step or two more.
        std::size_t least = 99;
        std::size_t most = 0;
        for (const auto& card : cards) {
            const auto count = card.field("steps")->paragraphs.size();
            least = std::min(least, count);
            most = std::max(most, count);
        }
        CHECK(most - least <= 2);
    }
}

namespace {

const std::string sheet_layout = R"(
print = "day sheet"
picture = ["page", "dishes"]
row_gap = "2 mm"
[area]
page   = { words = "page", repeats = true, x_height = ["1.2 mm", "1.4 mm", "1.7 mm"] }
dishes = { words = "dishes", continues = true, x_height = ["1.3 mm", "2.1 mm", "2.3 mm"], table = ["share", "share"] }
)";

wording::Paragraph line(const std::string& text, wording::Role role) {
    wording::Paragraph paragraph;
    paragraph.role = role;
    paragraph.spans.push_back({text, {}});
    return paragraph;
}

/// Sections of a heading, heads of columns and rows.
wording::Print sheet_with(int sections, int rows) {
    wording::Print print;
    print.kind = wording::Kind::DaySheet;
    print.page_phrase = "Page {0} of {1}";
    print.continued_phrase = "{0}, continued";
    wording::Field field{"dishes", {}, {}};
    for (int s = 1; s <= sections; ++s) {
        field.paragraphs.push_back(line("Dish " + std::to_string(s), wording::Role::Heading));
        field.paragraphs.push_back(line("Heads", wording::Role::ColumnHeads));
        for (int r = 1; r <= rows; ++r) {
            field.paragraphs.push_back(line("row " + std::to_string(r), wording::Role::Text));
        }
    }
    print.fields = {std::move(field)};
    return print;
}

} // namespace

TEST_CASE("a heading stays with its rows, and is said again where they run on") {
    for (const int rows : {1, 2, 3, 5, 9, 30}) {
        CAPTURE(rows);
        Shaper shaper{testing::fonts()};
        const auto pages = paginate(sheet_with(8, rows), testing::layout_from(sheet_layout),
                                    {120_mm, 70_mm}, shaper);
        REQUIRE(pages.size() >= 2);
        int rows_seen = 0;
        for (const auto& page : pages) {
            const auto& lines = page.field("dishes")->paragraphs;
            REQUIRE(lines.size() >= 3);
            CHECK(lines[0].role == wording::Role::Heading);
            CHECK(lines[1].role == wording::Role::ColumnHeads);
            CHECK(lines.back().role == wording::Role::Text);
            rows_seen += static_cast<int>(
                std::ranges::count(lines, wording::Role::Text, &wording::Paragraph::role));
        }
        CHECK(rows_seen == 8 * rows);
    }
}

TEST_CASE("a heading that is said again says that it is continued") {
    Shaper shaper{testing::fonts()};
    const auto pages =
        paginate(sheet_with(1, 40), testing::layout_from(sheet_layout), {120_mm, 70_mm}, shaper);
    REQUIRE(pages.size() >= 2);
    CHECK(pages[0].field("dishes")->paragraphs[0].spans[0].text == "Dish 1");
    CHECK(pages[1].field("dishes")->paragraphs[0].spans[0].text == "Dish 1, continued");
    CHECK(pages[1].field("dishes")->paragraphs[1].spans[0].text == "Heads");
}

TEST_CASE("heads of columns are said again only where something stands below them") {
    const auto row = [](const std::string& left, const std::string& right) {
        wording::Paragraph paragraph;
        paragraph.cells = {line(left, wording::Role::Text), line(right, wording::Role::Text)};
        return paragraph;
    };
    auto print = sheet_with(1, 0);
    auto& lines = print.fields.front().paragraphs;
    lines.back() = row("Left", "Right");
    lines.back().role = wording::Role::ColumnHeads;
    for (int i = 1; i <= 60; ++i) { // the right column ends on the first page
        lines.push_back(row("in " + std::to_string(i), i <= 3 ? "out" : ""));
    }
    Shaper shaper{testing::fonts()};
    const auto pages = paginate(print, testing::layout_from(sheet_layout), {120_mm, 70_mm}, shaper);
    REQUIRE(pages.size() >= 3);
    const auto heads_of = [&](std::size_t page) {
        return pages[page].field("dishes")->paragraphs.at(1).cells;
    };
    CHECK(heads_of(0).at(1).spans.front().text == "Right");
    for (std::size_t page = 1; page < pages.size(); ++page) {
        CHECK(heads_of(page).at(0).spans.front().text == "Left");
        CHECK(heads_of(page).at(1).spans.empty());
    }
}

TEST_CASE("where only lines across run on, no heads of columns are said again") {
    auto print = sheet_with(1, 0);
    auto& lines = print.fields.front().paragraphs;
    lines.back().spans.clear();
    lines.back().cells = {line("Left", wording::Role::Text)};
    for (int i = 1; i <= 40; ++i) {
        lines.push_back(line("A line across, " + std::to_string(i), wording::Role::Text));
    }
    Shaper shaper{testing::fonts()};
    const auto pages = paginate(print, testing::layout_from(sheet_layout), {120_mm, 70_mm}, shaper);
    REQUIRE(pages.size() >= 2);
    const auto& again = pages[1].field("dishes")->paragraphs;
    CHECK(again[0].role == wording::Role::Heading);
    CHECK(again[1].role == wording::Role::Text);
}

TEST_CASE("no card begins with the second language of what stands on the card before") {
    auto print = sheet_with(1, 40);
    auto& lines = print.fields.front().paragraphs;
    for (std::size_t i = 3; i < lines.size(); i += 2) {
        lines[i].voice = wording::Voice::Second;
    }
    Shaper shaper{testing::fonts()};
    const auto pages = paginate(print, testing::layout_from(sheet_layout), {120_mm, 70_mm}, shaper);
    REQUIRE(pages.size() >= 2);
    for (std::size_t i = 1; i < pages.size(); ++i) {
        const auto& again = pages[i].field("dishes")->paragraphs;
        REQUIRE(again.size() >= 3);
        CHECK(again[2].voice == wording::Voice::First); // after the heading and the heads
    }
}

TEST_CASE("a block that is kept whole is parted only where no page holds it") {
    auto whole = sheet_layout;
    whole.replace(whole.find("continues = true"), 16, "continues = true, keep_whole = true");
    const auto pages_of = [](const wording::Print& print, const std::string& layout) {
        Shaper shaper{testing::fonts()};
        return paginate(print, testing::layout_from(layout), {120_mm, 70_mm}, shaper);
    };
    const auto parted = [](const std::vector<wording::Print>& pages) {
        return std::ranges::count_if(pages, [](const wording::Print& page) {
            const auto& first = page.field("dishes")->paragraphs.front().spans.front().text;
            return first.find("continued") != std::string::npos;
        });
    };
    long parted_by_others = 0;
    for (const int rows : {2, 3, 4, 5, 6, 7}) {
        CAPTURE(rows);
        const auto pages = pages_of(sheet_with(8, rows), whole);
        REQUIRE(pages.size() >= 2);
        CHECK(parted(pages) == 0);
        parted_by_others += parted(pages_of(sheet_with(8, rows), sheet_layout));
        long rows_seen = 0;
        for (const auto& page : pages) {
            rows_seen += std::ranges::count(page.field("dishes")->paragraphs, wording::Role::Text,
                                            &wording::Paragraph::role);
        }
        CHECK(rows_seen == 8 * rows);
    }
    CHECK(parted_by_others > 0);
    CHECK(parted(pages_of(sheet_with(2, 40), whole)) > 0); // more than a page each
}
