// The bags of one dish are measured once.

#include "labels.h"
#include "layout/compose.h"
#include "stocks.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <tuple>

using namespace thawslip;
using namespace thawslip::literals;
using namespace thawslip::testing;

namespace {

const std::string layout_with_ids = R"(
print = "bag label"
picture = ["dish dish", "bag id", "finish finish"]
columns = ["share", "content"]
column_gap = "3 mm"
row_gap = "1 mm"
[area]
dish   = { words = "dish", weight = "bold", x_height = ["1.8 mm", "2.4 mm", "3.4 mm"] }
bag    = { words = "bag", x_height = ["1.2 mm", "1.5 mm", "1.9 mm"] }
id     = { words = "id", x_height = ["1.2 mm", "1.5 mm", "1.9 mm"] }
finish = { words = "finish", x_height = ["1.2 mm", "1.4 mm", "1.7 mm"] }
)";

std::vector<wording::Field> own_fields(std::size_t bag) {
    const auto wide = std::string(bag % 3, 'W'); // ids are not equally wide
    return {field("bag", {"Bag " + std::to_string(bag + 1) + " of 200"}),
            field("id", {"K7Q" + wide + std::to_string(bag)})};
}

/// Label `bag` of a dish.
wording::Print label(std::size_t bag, const std::string& finish) {
    auto print = small_label();
    const auto place = std::ranges::find(print.fields, "finish", &wording::Field::name);
    place->paragraphs = field("finish", {finish}).paragraphs;
    std::erase_if(print.fields, [](const wording::Field& said) {
        return said.name != "dish" && said.name != "finish"; // what the layout has areas for
    });
    for (auto& own : own_fields(bag)) {
        print.fields.push_back(std::move(own));
    }
    return print;
}

/// `dishes` dishes of `bags` bags each.
layout::Source labels(std::size_t dishes, std::size_t bags, const std::string& finish) {
    layout::Source source;
    source.count = dishes * bags;
    source.print = [=](std::size_t i) { return label(i % bags, finish); };
    source.code_texts = [](std::size_t) { return std::vector<std::string>{}; };
    source.alike = [=](std::size_t i) { return bags - i % bags; };
    source.own_fields = [=](std::size_t i) { return own_fields(i % bags); };
    return source;
}

layout::Layouts layouts() {
    return {{wording::Kind::BagLabel, layout_from(layout_with_ids)}};
}

layout::Medium medium() {
    layout::Medium medium;
    medium.stock = layout::ten_labels();
    return medium;
}

/// The words on a sheet with their sizes and places.
std::vector<std::tuple<std::string, double, double, double>>
texts_on(const layout::Fitting& fitting, int sheet) {
    std::vector<std::tuple<std::string, double, double, double>> texts;
    for (const auto& item : draw_sheet(fitting, sheet, layouts(), medium(), fonts()).items) {
        if (const auto* text = std::get_if<layout::Text>(&item)) {
            texts.emplace_back(text->run.text, text->size.in_points(), text->baseline.x.in_points(),
                               text->baseline.y.in_points());
        }
    }
    return texts;
}

} // namespace

TEST_CASE("the bags of a dish are measured once, however many they are") {
    const auto fitting = fit(labels(3, 200, "1 l vegetable stock"), layouts(), medium(), fonts());
    REQUIRE(fitting.ok());
    CHECK(fitting.value().prints.size() == 600);
    CHECK(fitting.value().measured == 3);
}

TEST_CASE("where only what fits is asked, one bag stands for its dish, as it stands on the sheet") {
    auto one_each = medium();
    one_each.which = layout::Which::FirstOfDish;
    const auto source = labels(3, 200, "1 l vegetable stock");
    const auto asked = fit(source, layouts(), one_each, fonts());
    const auto drawn = fit(source, layouts(), medium(), fonts());
    REQUIRE((asked.ok() && drawn.ok()));
    REQUIRE(asked.value().prints.size() == 3);
    for (std::size_t dish = 0; dish < 3; ++dish) {
        const auto& one = asked.value().prints[dish];
        const auto& same = drawn.value().prints[dish * 200];
        CHECK(one.print == same.print);
        CHECK(one.sizing.conceded == same.sizing.conceded);
        CHECK(one.sizing.scales[0].value == same.sizing.scales[0].value);
    }
}

TEST_CASE("bags measured by one of them stand as bags measured one by one") {
    const auto together = labels(2, 12, "1 l vegetable stock");
    auto apart = together;
    apart.alike = {};
    const auto one = fit(together, layouts(), medium(), fonts());
    const auto other = fit(apart, layouts(), medium(), fonts());
    REQUIRE((one.ok() && other.ok()));
    CHECK(other.value().measured == 24);
    for (int sheet = 0; sheet < one.value().sheets; ++sheet) {
        CHECK(texts_on(one.value(), sheet) == texts_on(other.value(), sheet));
    }
    CHECK(texts_on(one.value(), 0).size() == 40);
}

TEST_CASE("each bag says which it is where that is said shorter, too") {
    const auto own_shorter = [](std::size_t bag) {
        auto said = own_fields(bag);
        const auto number = std::to_string(bag + 1);
        said[0] = field("bag", {"Of two hundred bags of this dish, bag number " + number});
        said[0].shorter = {field("bag", {number + "/200"}).paragraphs};
        return said;
    };
    auto source = labels(1, 3, "1 l vegetable stock");
    source.own_fields = own_shorter;
    source.print = [=](std::size_t i) {
        auto print = label(i, "1 l vegetable stock");
        print.fields.end()[-2] = own_shorter(i)[0];
        return print;
    };
    auto text = layout_with_ids;
    text.replace(text.find("words = \"bag\""), 0, "shorten = [1], ");
    const layout::Layouts chosen{{wording::Kind::BagLabel, layout_from(text)}};
    int shortened = 0;
    for (auto height = 30_mm; height > 12_mm; height = height - 0.5_mm) {
        auto low = medium();
        low.stock.cell = {40_mm, height};
        const auto fitting = fit(source, chosen, low, fonts());
        for (std::size_t bag = 0; fitting.ok() && bag < 3; ++bag) {
            const auto& print = fitting.value().prints[bag];
            const auto frame = draw_alone(print, chosen.begin()->second, low, fonts());
            std::vector<std::string> words;
            for (const auto& item : frame.items) {
                if (const auto* drawn = std::get_if<layout::Text>(&item)) {
                    words.push_back(drawn->run.text);
                }
            }
            const auto is_short = [](const std::string& run) { return run.ends_with("/200"); };
            const auto said = std::ranges::find_if(words, is_short);
            if (said != words.end()) {
                ++shortened;
                CHECK(*said == std::to_string(bag + 1) + "/200");
            }
        }
    }
    CHECK(shortened > 0);
}

TEST_CASE("the cards that a list runs on to have it in one size") {
    const auto layout = layout_from(R"(
print = "cook-day card"
picture = ["dish", "thaw", "steps"]
row_gap = "1 mm"
[area]
dish  = { words = "dish", repeats = true, x_height = ["1.8 mm", "2.4 mm", "3.4 mm"] }
thaw  = { words = "thaw", x_height = ["1.2 mm", "1.5 mm", "1.9 mm"] }
steps = { words = "steps", continues = true, x_height = ["1.2 mm", "1.5 mm", "2.3 mm"] }
)");
    for (int steps = 16; steps < 32; ++steps) {
        CAPTURE(steps);
        layout::Source source;
        source.count = 1;
        source.print = [steps](std::size_t) {
            auto print = small_label();
            print.kind = wording::Kind::CookDayCard;
            print.page_phrase = "Card {0} of {1}";
            std::erase_if(print.fields, [](const wording::Field& said) {
                return said.name != "dish" && said.name != "thaw";
            });
            print.fields.push_back(field("steps", {}));
            for (int i = 0; i < steps; ++i) {
                const auto text = "Stir it " + std::string(static_cast<std::size_t>(i), 'o');
                print.fields.back().paragraphs.push_back(field("", {text}).paragraphs.front());
            }
            return print;
        };
        const auto fitting = fit(source, {{wording::Kind::CookDayCard, layout}}, medium(), fonts());
        REQUIRE(fitting.ok());
        const auto& cards = fitting.value().prints;
        REQUIRE(cards.size() > 1);
        for (const auto& card : cards) {
            CHECK(card.runs_on);
            CHECK(card.sizing.scales[0].value == cards.front().sizing.scales[0].value);
        }
    }
}

TEST_CASE("a dish that does not fit is refused once, not once a bag") {
    std::string too_much;
    for (int i = 0; i < 400; ++i) {
        too_much += "chestnut ";
    }
    const auto fitting = fit(labels(2, 200, too_much), layouts(), medium(), fonts());
    REQUIRE(!fitting.ok());
    CHECK(fitting.fault().size() == 2);
}
