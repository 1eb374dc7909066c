// What would be printed, one of each dish.

#include "service/print/preview.h"
#include "service/print/printing.h"
#include "surroundings.h"

#include <doctest/doctest.h>

namespace preview_test {

using namespace thawslip;
using service::Look;
using service::What;
using test_support::shipped_text;

namespace {

/// Three bags of a stew with something to add, two of a compote with nothing.
const std::string orchard = R"([day]
made = 2026-10-17

[[package]]
dish = "Quince and barley stew"
servings = 4
bags = 3
food = "soup or stew"
contains = []

[package.thaw]
method = "refrigerator"

[[package.finish]]
add = "200 g baby spinach"
when = "last 10 min"

[package.cook]
in = "pot"
time = "20 min"
until = "74 °C"

[[package.ingredient]]
add = "6 onions"

[[package]]
dish = "Plum compote"
servings = 2
bags = 2
food = "fruit"
contains = []
use_by = 2027-03-17
thaw.method = "refrigerator"
)";

/// Also a stock for cards, and the layouts of cards and lists.
service::Surroundings surroundings() {
    auto around = test_support::surroundings();
    around.stock = [](const std::string& name) -> std::optional<layout::StockReading> {
        const auto file = name == "roll" ? std::string{} : name + ".toml";
        return name == "roll" ? test_support::roll()
                              : layout::read_stock(shipped_text("stock/" + file), file, name);
    };
    around.layouts = [](const std::set<wording::Kind>&) {
        std::vector<service::ShippedText> texts;
        for (const std::string file :
             {"label/wide", "card/cook-day-tall", "card/cook-day-wide", "card/finishing-tall",
              "card/finishing-wide", "list/day", "list/door"}) {
            texts.push_back({file.substr(file.find('/') + 1), file, shipped_text(file + ".toml")});
        }
        return texts;
    };
    return around;
}

service::Outcome<service::Preview> preview_of(What what, Look look = {},
                                              const std::string& day = orchard) {
    if (look.stock.empty() && what == What::Labels) {
        look.stock = "roll";
    }
    return service::preview({{{"day.toml", day}}, {}}, what, look, {}, surroundings());
}

Look with_part(service::Part part) {
    Look look;
    look.part = std::move(part);
    return look;
}

/// "stew x3": each sample by the last word of its name, and how many such prints come out.
std::string shown(const service::Outcome<service::Preview>& preview) {
    CAPTURE(to_text(preview.messages));
    REQUIRE(preview);
    std::string text;
    for (const auto& sample : preview.value->samples) {
        text += (text.empty() ? "" : ", ") + sample.name.substr(sample.name.rfind(' ') + 1) +
                (sample.card == 1 ? "" : " card " + std::to_string(sample.card)) + " x" +
                std::to_string(sample.copies);
    }
    return text;
}

} // namespace

TEST_CASE("of the labels one of each dish is shown, and how many come out") {
    const auto preview = preview_of(What::Labels);
    CHECK(shown(preview) == "stew x3, compote x2");
    const auto& [first, second] =
        std::tie(preview.value->samples.front(), preview.value->samples.back());
    CHECK(preview.value->days.documents.front().place(first.where).line == 4);
    CHECK(preview.value->days.documents.front().place(second.where).line == 26);
    CHECK_FALSE(first.frame.items.empty());
    CHECK_FALSE(first.areas.empty());
    CHECK(preview.value->why_nothing == "");
}

TEST_CASE("copies multiply what comes out, and of a part only its own bags count") {
    CHECK(shown(preview_of(What::Labels, with_part({.copies = 2}))) == "stew x6, compote x4");
    CHECK(shown(preview_of(What::Labels, with_part({.dishes = "compote"}))) == "compote x2");
    CHECK(shown(preview_of(What::Labels, with_part({.bags = "2-4", .copies = 3}))) ==
          "stew x6, compote x3");
    CHECK(shown(preview_of(What::Labels, with_part({.bags = "5"}))) == "compote x1");
}

TEST_CASE("of cards each kind is shown for itself, a finishing card for each bag") {
    CHECK(shown(preview_of(What::Cards)) == "stew x1, stew x3, compote x1");
    CHECK(shown(preview_of(What::CookDayCards)) == "stew x1, compote x1");
    CHECK(shown(preview_of(What::FinishingCards)) == "stew x3");
    CHECK(shown(preview_of(What::CookDayCards, with_part({.bags = "4"}))) == "compote x1");
}

TEST_CASE("a card that runs on is shown card by card, numbered from 1 for each dish") {
    auto day = orchard;
    std::string steps = "steps = [";
    for (int i = 0; i < 40; ++i) {
        steps += "\"Stir slowly, and scrape the bottom of the pot with a wooden spoon.\",\n";
    }
    day.insert(day.find("\n\n[[package.ingredient]]"), "\n" + steps + "]");
    Look small;
    small.stock = "card-a6";
    const auto text = shown(preview_of(What::CookDayCards, small, day));
    CAPTURE(text);
    CHECK(text.starts_with("stew x1, stew card 2 x1, stew card 3 x1"));
    CHECK(text.ends_with(", compote x1"));
}

TEST_CASE("a list is shown under its own name, and is of no package") {
    const auto preview = preview_of(What::DaySheets);
    REQUIRE(preview);
    REQUIRE(preview.value->samples.size() == 2); // the day and what is bought
    for (const auto& sample : preview.value->samples) {
        CHECK(sample.where == KeyPath{});
        CHECK(sample.copies == 1);
        CHECK_FALSE(sample.name.empty());
    }
    CHECK(preview.value->samples[0].name != preview.value->samples[1].name);
}

TEST_CASE("a layout that is drawn for another kind of print is refused") {
    Look look;
    look.layout = "door";
    const auto labels = preview_of(What::Labels, look);
    CHECK(to_text(labels.messages) ==
          "error: door is not drawn for a label\n    hint: what a layout is for stands under its "
          "key \"print\"\n");
    look.layout = "wide";
    CHECK(shown(preview_of(What::Labels, look)) == "stew x3, compote x2");
}

TEST_CASE("where there is nothing to print, that is said, and why") {
    auto bare = orchard;
    bare.erase(bare.find("[[package.finish]]"),
               bare.find("[package.cook]") - bare.find("[[package.finish]]"));
    bare.erase(bare.find("[[package.ingredient]]"),
               bare.rfind("[[package]]") - bare.find("[[package.ingredient]]"));
    const auto why = [&bare](What what, const service::Part& part = {}) {
        const auto preview = preview_of(what, with_part(part), bare);
        CHECK(preview.value->samples.empty());
        return preview.value->why_nothing;
    };
    CHECK(why(What::FinishingCards) == "no dish has a finishing ingredient");
    CHECK(why(What::Shopping) == "no ingredient is listed");
    // print says the same, and has no print.
    const auto printing =
        print({{{"day.toml", bare}}, {}}, What::FinishingCards, {}, {}, surroundings());
    REQUIRE(printing);
    CHECK(printing.value->job.prints.empty());
    CHECK(printing.value->why_nothing == "no dish has a finishing ingredient");
}

TEST_CASE("what is wrong with the day, the part or the stock is said, with what is known so far") {
    const auto broken = preview_of(What::Labels, {}, "[day]\nmade = 2026-13-40\n");
    CHECK_FALSE(broken);
    CHECK(broken.messages.have_errors());
    const auto no_dish = preview_of(What::Labels, with_part({.dishes = "chowder"}));
    REQUIRE(no_dish);
    CHECK(no_dish.value->samples.empty());
    CHECK(no_dish.value->days.plans.size() == 1);
    CHECK(to_text(no_dish.messages).find("no dish has the words \"chowder\"") != std::string::npos);
    Look gone;
    gone.stock = "gone.toml";
    const auto no_stock = preview_of(What::Labels, gone);
    REQUIRE(no_stock);
    CHECK(no_stock.value->samples.empty());
    CHECK(to_text(no_stock.messages) == "gone.toml: error: there is no such file\n");
}

} // namespace preview_test
