// From texts to sheets with nothing of a machine around: stocks, layouts and faces are handed in.
#include "base/text_file.h"
#include "render/dump.h"
#include "service/print/check.h"
#include "service/print/printing.h"
#include "surroundings.h"

#include <algorithm>
#include <doctest/doctest.h>

namespace printing_test {

using namespace thawslip;
using service::Look;
using service::Settings;
using service::What;
using test_support::surroundings;

namespace {

const std::string stew = R"([day]
made = 2026-10-17

[[package]]
dish = "Quince and barley stew"
servings = 4
bags = 3
food = "soup or stew"
contains = []

[package.thaw]
method = "refrigerator"

[package.cook]
in = "pot"
time = "20 min"
until = "74 °C"
)";

service::Outcome<service::Printing> labels_of(const std::string& day, const Look& look) {
    return print({{{"day.toml", day}}, {}}, What::Labels, look, Settings{}, surroundings());
}

Look on(const std::string& stock) {
    Look look;
    look.stock = stock;
    return look;
}

} // namespace

TEST_CASE("the text of a day becomes sheets with its words") {
    const auto printing = labels_of(stew, on("roll"));
    CHECK(to_text(printing.messages) == "");
    REQUIRE(printing);
    const auto& laid_out = printing.value->laid_out;
    CHECK(laid_out.fitting.sheets == 3);
    const auto words = render::dump(draw_sheet(laid_out, 1), laid_out.setup.fonts);
    CHECK(words.find("Quince") != std::string::npos);
    CHECK(words.find("2026") != std::string::npos);
}

TEST_CASE("a mistake in the text comes back at its place, and nothing is laid out") {
    auto wrong = stew;
    wrong.replace(wrong.find("servings = 4"), 12, "servings = 0");
    const auto printing = labels_of(wrong, on("roll"));
    CHECK(!printing);
    REQUIRE(!printing.messages.all().empty());
    CHECK(printing.messages.all().front().what.where.file == "day.toml");
    CHECK(printing.messages.all().front().what.where.line == 6);
    CHECK(printing.messages.have_errors());
}

TEST_CASE("a file that could not be read stands beside the mistakes of the others") {
    const service::DayTexts days{{{"b.toml", "[day]\nmade = 2026-10-17\n"}},
                                 {{Severity::Error, {"a.toml"}, {}, "there is no such file", {}}}};
    const auto printing = print(days, What::Labels, on("roll"), Settings{}, surroundings());
    CHECK(!printing);
    CHECK(printing.messages.all().front().what.where.file == "a.toml");
    CHECK(printing.messages.all().back().what.where.file == "b.toml");
}

TEST_CASE("a stock that is not there is named with the nearest one") {
    const auto printing = labels_of(stew, on("rol"));
    CHECK(!printing);
    CHECK(to_text(printing.messages) ==
          "error: there is no stock called \"rol\"\n    hint: did you mean \"roll\"?\n");
}

TEST_CASE("a stock of the cook's own is read once, and remembered as it was read") {
    const auto printing = labels_of(stew, on("mine.toml"));
    CHECK(to_text(printing.messages) == "");
    REQUIRE(printing);
    const auto* text = printing.value->laid_out.setup.own.known("mine.toml");
    REQUIRE(text != nullptr);
    CHECK(text->find("90 mm") != std::string::npos);
    CHECK(to_text(labels_of(stew, on("gone.toml")).messages) ==
          "gone.toml: error: there is no such file\n");
}

TEST_CASE("a day without finishing ingredients has no finishing cards, which is no fault") {
    const auto cards =
        print({{{"day.toml", stew}}, {}}, What::FinishingCards, {}, Settings{}, surroundings());
    REQUIRE(cards);
    CHECK(cards.value->job.prints.empty());
    CHECK(!cards.messages.have_errors());
}

TEST_CASE("what does not fit is said at its place, with a stock that would take it") {
    auto around = surroundings();
    around.own_file = [](const std::string&) {
        return std::string{"cell = [\"40 mm\", \"25 mm\"]\nroll = true\n"};
    };
    around.layouts = [](const std::set<wording::Kind>&) {
        auto text = test_support::shipped_text("label/wide.toml");
        return std::vector<service::ShippedText>{{"wide", "wide.toml", text}};
    };
    Look small = on("small.toml");
    small.layout = "wide";
    const auto printing =
        print({{{"day.toml", stew}}, {}}, What::Labels, small, Settings{}, around);
    CHECK(!printing);
    const auto text = to_text(printing.messages);
    CHECK(text.find("day.toml:4:1: error: the ") != std::string::npos);
    CAPTURE(text);
    CHECK(text.find("or print on \"roll\"") != std::string::npos);
    CHECK(printing.messages.all().size() == 1); // three bags alike are told once
}

TEST_CASE("the texts of codes are those of the labels, one a bag") {
    const auto texts =
        code_texts({{{"day.toml", stew}}, {}}, on("roll"), Settings{}, surroundings());
    REQUIRE(texts);
    REQUIRE(texts.value->size() == 3);
    CHECK(texts.value->front() != texts.value->back());
}

TEST_CASE("without an archive, a bag that is named as known is refused") {
    auto around = surroundings();
    around.ids.which = {archive::WhichBatch::Kind::OfBag, {"17A4"}};
    const auto printing =
        print({{{"day.toml", stew}}, {}}, What::Labels, on("roll"), Settings{}, around);
    CHECK(!printing);
    CHECK(to_text(printing.messages) ==
          "error: nothing has been printed yet, so no bag is known\n");
}

TEST_CASE("a day that is well but fits nothing is checked with its days and an error") {
    auto around = surroundings();
    around.layouts = [](const std::set<wording::Kind>&) {
        return std::vector<service::ShippedText>{};
    };
    const auto checked = check({{{"day.toml", stew}}, {}}, on("roll"), Settings{}, around);
    REQUIRE(checked);
    CHECK(checked.value->days.plans.size() == 1);
    CHECK(!checked.value->labels);
    CHECK(checked.messages.have_errors());
}

TEST_CASE("in large print no word is smaller than 1.4 times what its layout allows") {
    auto look = on("roll");
    const auto smallest = [](const service::Outcome<service::Printing>& printing) {
        REQUIRE(printing);
        const auto& laid_out = printing.value->laid_out;
        Length least = Length::millimetres(1000);
        for (const auto& item : draw_sheet(laid_out, 0).items) {
            if (const auto* text = std::get_if<layout::Text>(&item)) {
                const auto& face = laid_out.setup.fonts.faces.at(text->run.face);
                least = std::min(least, text->size * face.metrics().x_height);
            }
        }
        return least.in_millimetres();
    };
    CHECK(smallest(labels_of(stew, look)) >= 1.19);
    look.large_print = true;
    CHECK(smallest(labels_of(stew, look)) >= 1.2 * 1.4 - 0.01);
    Settings settings;
    settings.large_print = true;
    CHECK(smallest(print({{{"day.toml", stew}}, {}}, What::Labels, on("roll"), settings,
                         surroundings())) >= 1.2 * 1.4 - 0.01);
}

} // namespace printing_test
