#include "labels.h"
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

TEST_CASE("each card of a long recipe fits at a comfortable size") {
    const auto layout = testing::layout_from(card_layout);
    for (const auto& card : cards_of(30, 60_mm)) {
        const auto solution =
            solve(layout, testing::shaped(card, layout), {120_mm, 60_mm}, testing::fonts());
        REQUIRE(solution.has_value());
        CHECK(solution->choice.scale.value >= 1.0);
    }
}
