// Where what the second language says stands, and moments on a rail.

#include "labels.h"
#include "layout/paginate.h"

#include <algorithm>

namespace second_language_test {

using namespace thawslip;
using namespace thawslip::layout;
using namespace thawslip::literals;

namespace {

wording::Paragraph said(const std::string& text, wording::Voice voice = wording::Voice::First,
                        const std::string& label = "") {
    wording::Paragraph paragraph;
    paragraph.spans = {{text, {}}};
    paragraph.voice = voice;
    paragraph.label = label;
    return paragraph;
}

Layout with_area(const std::string& keys) {
    return testing::layout_from("print = \"cook-day card\"\npicture = [\"it\"]\ncolumns = "
                                "[\"share\"]\n[area]\nit = { words = "
                                "[\"note\", \"sequence\"], x_height = [\"1.2 mm\", \"2 mm\", \"2.3 "
                                "mm\"], " +
                                keys + " }\n");
}

/// The texts drawn in an area of a width.
std::vector<Text> texts_of(const Layout& layout, const wording::Print& print, Length width,
                           std::vector<Rule>* rules = nullptr) {
    const auto contents = testing::shaped(print, layout);
    const auto& area = layout.areas.front();
    const auto type = type_at(area, {1.0}, testing::fonts());
    const auto extent = measure(contents.front(), area, type, width, RowHeights::FollowContent);
    std::vector<Text> texts;
    for (const auto& item :
         draw(contents.front(), area, type, {{0_mm, 0_mm}, {width, extent.height}})) {
        if (const auto* text = std::get_if<Text>(&item)) {
            texts.push_back(*text);
        } else if (const auto* rule = std::get_if<Rule>(&item);
                   rule != nullptr && rules != nullptr) {
            rules->push_back(*rule);
        }
    }
    return texts;
}

const Text& one_with(const std::vector<Text>& texts, const std::string& words) {
    const auto found = std::ranges::find_if(
        texts, [&](const Text& text) { return text.run.text.find(words) != std::string::npos; });
    REQUIRE(found != texts.end());
    return *found;
}

wording::Print two_languages() {
    wording::Print print;
    print.kind = wording::Kind::CookDayCard;
    print.fields = {{"note", {said("Stir"), said("Remuevan", wording::Voice::Second)}, {}}};
    return print;
}

} // namespace

TEST_CASE("the second language stands beside the first where the area has the width, else below") {
    const auto layout = with_area("second = \"beside\"");
    const auto wide = texts_of(layout, two_languages(), 120_mm);
    CHECK(one_with(wide, "Remuevan").baseline.x > 60_mm);
    CHECK(one_with(wide, "Remuevan").baseline.y == one_with(wide, "Stir").baseline.y);
    const auto narrow = texts_of(layout, two_languages(), 80_mm);
    CHECK(one_with(narrow, "Remuevan").baseline.x == one_with(narrow, "Stir").baseline.x);
    CHECK(one_with(narrow, "Remuevan").baseline.y > one_with(narrow, "Stir").baseline.y);
    const auto below = texts_of(with_area("second = \"below\""), two_languages(), 120_mm);
    CHECK(one_with(below, "Remuevan").baseline.y > one_with(below, "Stir").baseline.y);
}

TEST_CASE("no line mixes two languages") {
    wording::Print print;
    print.kind = wording::Kind::CookDayCard;
    print.fields = {{"note", {said("Stir"), said("Remuevan", wording::Voice::Second)}, {}},
                    {"sequence", {said("Wait"), said("Esperen", wording::Voice::Second)}, {}}};
    const auto texts = texts_of(with_area("join = \"line\""), print, 200_mm);
    CHECK(one_with(texts, "Stir").baseline.y == one_with(texts, "Wait").baseline.y);
    CHECK(one_with(texts, "Remuevan").baseline.y == one_with(texts, "Esperen").baseline.y);
    CHECK(one_with(texts, "Remuevan").baseline.y > one_with(texts, "Wait").baseline.y);
}

TEST_CASE("on a rail the moments stand left of boxes and steps, each with a stop") {
    wording::Print print;
    print.kind = wording::Kind::CookDayCard;
    auto box = said("200 g peas", wording::Voice::First, "Last 5 min");
    box.marker = wording::Marker::TickBox;
    print.fields = {
        {"sequence", {said("Pan", wording::Voice::First, "Start"), said("Stir it."), box}, {}}};
    std::vector<Rule> rules;
    const auto texts = texts_of(with_area("labels = \"rail\""), print, 100_mm, &rules);
    CHECK(rules.size() == 1 + 2); // the rail, and two stops
    const auto x = [&](const char* words) { return one_with(texts, words).baseline.x; };
    CHECK(x("Last") < rules.front().area.left());
    CHECK(x("Pan") == x("Stir it."));
    CHECK(x("Pan") == x("200 g"));
    CHECK(x("Pan") > rules.front().area.right());
}

TEST_CASE("a label of two lines takes no room from what follows beside it without a label") {
    wording::Print print;
    print.kind = wording::Kind::CookDayCard;
    print.fields = {{"sequence",
                     {said("Pan", wording::Voice::First, "Start"),
                      said("Pan", wording::Voice::Second, "Empezar"), said("Stir it.")},
                     {}}};
    const auto texts = texts_of(with_area("labels = \"rail\", space = 0"), print, 100_mm);
    CHECK(std::ranges::count_if(texts, [](const Text& text) { return text.run.text == "Pan"; }) ==
          1);
    const auto y = [&](const char* words) { return one_with(texts, words).baseline.y; };
    CHECK(y("Empezar") > y("Start"));
    CHECK(y("Stir it.") <= y("Empezar") + 1_mm);
}

namespace {

/// A card of `moments` moments with `lines` lines each.
wording::Print long_card(int moments, int lines) {
    wording::Print print;
    print.kind = wording::Kind::CookDayCard;
    print.page_phrase = "Card {0} of {1}";
    wording::Field sequence{"sequence", {}, {}};
    for (int moment = 0; moment < moments; ++moment) {
        for (int line = 0; line < lines; ++line) {
            sequence.paragraphs.push_back(
                said("Step " + std::to_string(moment) + "." + std::to_string(line),
                     wording::Voice::First, line == 0 ? "Moment " + std::to_string(moment) : ""));
        }
    }
    print.fields = {std::move(sequence)};
    return print;
}

std::vector<wording::Print> cards_of(const wording::Print& print, Length height) {
    Shaper shaper{testing::fonts()};
    return paginate(print, with_area("labels = \"rail\", continues = true"), {100_mm, height},
                    shaper);
}

} // namespace

TEST_CASE("a card that runs on parts no moment, and fills both cards alike") {
    const auto cards = cards_of(long_card(4, 3), 50_mm);
    REQUIRE(cards.size() == 2);
    for (const auto& card : cards) {
        CHECK(card.field("sequence")->paragraphs.size() == 6);
        CHECK(card.field("sequence")->paragraphs.front().label.substr(0, 6) == "Moment");
    }
}

TEST_CASE("a moment too long for one card is said again where it goes on") {
    const auto cards = cards_of(long_card(1, 12), 50_mm);
    REQUIRE(cards.size() == 2);
    CHECK(cards[1].field("sequence")->paragraphs.front().label == "Moment 0");
    const auto first = cards[0].field("sequence")->paragraphs.size();
    const auto second = cards[1].field("sequence")->paragraphs.size();
    CHECK(first + second == 12);
    CHECK(std::max(first, second) - std::min(first, second) <= 2); // neither is nearly empty
}

TEST_CASE("what belongs together stays on one card") {
    auto print = long_card(1, 12);
    auto& lines = print.fields.front().paragraphs;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        lines[i].with_previous = i % 4 != 0;
    }
    for (const auto& card : cards_of(print, 50_mm)) {
        CHECK(card.field("sequence")->paragraphs.size() % 4 == 0);
    }
}

} // namespace second_language_test
