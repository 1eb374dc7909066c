// What prints say of a dish in several sizes, of several ways to thaw, and of what is cooked beside
// it.

#include "intake/day_file.h"
#include "intake/storage_file.h"
#include "kitchen/plan.h"
#include "toml/document.h"
#include "wording/day_sheet.h"
#include "wording/fields.h"
#include "wording/phrases.h"
#include "wording/prints.h"
#include "wording/shopping_sheet.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <span>

using namespace thawslip;
using namespace thawslip::wording;

namespace {

const std::string day = R"([day]
made = 2026-10-24

[[package]]
dish     = "Lentil and quince stew"
food     = "soup or stew"
[[package.size]]
servings  = 6
bags      = 3
weight    = "2.2 kg"
thickness = "30 mm"
container = "26 x 30 cm"
[[package.size]]
servings  = 2
bags      = 2
weight    = "750 g"
thickness = "20 mm"
[package.thaw]
method = ["refrigerator", "cold water", "microwave"]
[[package.finish]]
add  = "300 ml stock"
when = "at the start"
[package.cook]
in    = "pot"
time  = "20-30 min"
until = "74 °C"
[[package.side]]
add   = "450 g pearl barley"
takes = "40 min"
steps = ["Boil it in salted water."]
[[package.side]]
add   = "600 g green beans"
takes = "10 min"
in    = "steamer"
ready = "last 5 min"
[[package.ingredient]]
add = "1.2 kg brown lentils"
)";

kitchen::Plan plan() {
    Diagnostics faults;
    const auto document = toml::parse(day, "day.toml", faults);
    const auto reading = intake::read_day(document, faults);
    auto planned = kitchen::plan(reading.day, intake::built_in_storage(), faults);
    REQUIRE(faults.empty());
    return planned;
}

Style style_in(const std::string& language) {
    kitchen::KitchenSettings settings;
    settings.units = kitchen::Units::Metric;
    return style_for(shipped_language(language), settings);
}

std::string words_of(const Paragraph& paragraph) {
    std::string words = paragraph.label;
    for (const auto& span : paragraph.spans) {
        words += (words.empty() ? "" : "|") + span.text;
    }
    for (const auto& cell : paragraph.cells) {
        words += "<" + words_of(cell) + ">";
    }
    for (const auto& box : paragraph.boxes) {
        words += "[" + box + "]";
    }
    for (const auto& below : paragraph.below) {
        words += "/" + words_of(below);
    }
    return words;
}

/// All words of a field, with spaces that break.
std::string said(const Print& print, const char* name) {
    const auto* field = print.field(name);
    REQUIRE(field != nullptr);
    std::string all;
    for (const auto& paragraph : field->paragraphs) {
        all += words_of(paragraph) + "\n";
    }
    for (auto at = all.find("\u00A0"); at != std::string::npos; at = all.find("\u00A0")) {
        all.replace(at, std::string_view{"\u00A0"}.size(), " ");
    }
    return all;
}

bool has(const std::string& text, std::string_view words) {
    return text.find(words) != std::string::npos;
}

} // namespace

TEST_CASE("labels of two sizes say what each serves, its own time and its own amounts") {
    const auto planned = plan();
    const auto english = style_in("en");
    const auto label = [&](std::size_t size) {
        return bag_label(planned, planned.packages[size], planned.packages[size].bags[0], english);
    };
    CHECK(has(said(label(0), "servings"), "6"));
    CHECK(has(said(label(1), "servings"), "2"));
    CHECK(has(said(label(0), "bag"), "1 of 3"));
    CHECK(has(said(label(1), "bag"), "1 of 2"));
    CHECK(said(label(0), "thaw") != said(label(1), "thaw"));
    CHECK(has(said(label(0), "finish"), "300 ml stock"));
    CHECK(has(said(label(1), "finish"), "100 ml stock"));
    CHECK(said(label(0), "mark") == said(label(1), "mark"));
}

TEST_CASE("a label says the first way to thaw, and each other in a paragraph that may drop") {
    const auto planned = plan();
    for (const auto* language : {"en", "es", "de"}) {
        CAPTURE(language);
        const auto style = style_in(language);
        const auto& package = planned.packages[0];
        const auto label = bag_label(planned, package, package.bags[0], style);
        CHECK(label.field("thaw")->paragraphs.size() == 1);
        const auto* others = label.field("other-thaws");
        REQUIRE(others != nullptr);
        REQUIRE(others->paragraphs.size() == 2);
        for (const auto& other : others->paragraphs) {
            CHECK(other.label == style.say("thaw.or"));
        }
        REQUIRE(others->shorter.size() == 1);
        // A card says them in full.
        const auto card = cook_day_card(planned, package, style);
        CHECK(card.field("other-thaws")->paragraphs == others->paragraphs);
    }
}

TEST_CASE("a caution of another way says for which it is, and one way alone says nothing of it") {
    const auto planned = plan();
    const auto card = cook_day_card(planned, planned.packages[0], style_in("en"));
    CHECK(has(said(card, "cautions"),
              "If thawed in cold water or in the microwave: Do not freeze it again"));
    auto alone = planned.packages[0].other_thaws[0];
    for (const auto& caution : alone.cautions) {
        CHECK_FALSE(has(say_caution(caution, shipped_language("en")), "If thawed"));
    }
}

TEST_CASE("where from frozen is the first of several ways, nothing says that it must not thaw") {
    kitchen::PlannedPackage planned;
    planned.package.thaw.method = kitchen::ThawMethod::FromFrozen;
    const auto english = style_in("en");
    CHECK(say_thaw(planned, english.language).starts_with("cook from frozen"));
    kitchen::PlannedPackage other;
    other.package.thaw.method = kitchen::ThawMethod::Microwave;
    planned.other_thaws = {other};
    CHECK(say_thaw(planned, english.language).starts_with("not needed: cook from frozen"));
}

TEST_CASE("another cooking time from frozen is said where it is known, else that there is none") {
    kitchen::PlannedPackage first;
    first.package.cook = kitchen::Cook{};
    first.package.cook->time =
        kitchen::TimeRange{std::chrono::minutes{40}, std::chrono::minutes{40}};
    auto frozen = first;
    frozen.package.thaw.method = kitchen::ThawMethod::FromFrozen;
    frozen.package.cook->time->high = std::chrono::minutes{60};
    const auto& english = shipped_language("en");
    CHECK(has(say_other_thaw(first, frozen, english), "cooks 40–60 min"));
    frozen.package.cook->time.reset();
    CHECK(has(say_other_thaw(first, frozen, english), "from frozen it takes longer"));
}

TEST_CASE("a card says each side when it is started: the longer one before the dish") {
    const auto planned = plan();
    const auto card = cook_day_card(planned, planned.packages[0], style_in("en"));
    const auto sequence = said(card, "sequence");
    const char* in_order[] = {"40 min before serving|450 g pearl barley| (40 min)",
                              "Boil it in salted water.", "Start|Pot, 20–30 min",
                              "15 min before serving|600 g green beans| (steamer, 10 min)|, "
                              "ready 5 min before serving",
                              "Done"};
    std::size_t at = 0;
    for (const auto* words : in_order) {
        CAPTURE(words);
        CAPTURE(sequence);
        const auto found = sequence.find(words);
        REQUIRE(found != std::string::npos);
        CHECK(found >= at);
        at = found;
    }
    const auto small = cook_day_card(planned, planned.packages[1], style_in("en"));
    CHECK(has(said(small, "sequence"), "150 g pearl barley"));
}

TEST_CASE("a finishing card has the sides too, and counts what is added") {
    const auto planned = plan();
    const auto& package = planned.packages[0];
    const auto card = finishing_card(planned, package, package.bags[0], style_in("en"));
    CHECK(has(said(card, "sides"), "40 min before serving|450 g pearl barley"));
    const auto grouped = said(card, "finish-grouped"); // with what is added, by moments
    CHECK(has(grouped, "40 min before serving|450 g pearl barley"));
    CHECK(has(said(card, "finish-count"), "1 thing"));
    CHECK(card.field("sides")->shorter.size() == 1); // what they are, and where the rest stands
}

TEST_CASE("the day sheet says a dish once, and each size below it") {
    const auto planned = plan();
    const auto sheets = day_sheets(planned, SheetPer::Day, style_in("en"));
    const auto& sheet = sheets.front();
    const auto dishes = said(sheet, "dishes");
    CHECK(std::ranges::count(planned.packages, 1, &kitchen::PlannedPackage::number) == 2);
    CHECK(dishes.find("1 · Lentil and quince stew") == dishes.rfind("1 · Lentil and quince stew"));
    CHECK(has(dishes, "3 bags, each serves 6 · 26 × 30 cm · 2.2 kg · 30 mm thick"));
    CHECK(has(dishes, "2 bags, each serves 2 · 750 g · 20 mm thick"));
    CHECK(has(dishes, "300 ml stock (for 6)"));
    CHECK(has(dishes, "100 ml stock (for 2)"));
    CHECK(dishes.find("brown lentils") == dishes.rfind("brown lentils"));
    CHECK(has(dishes, "[1][2][3]"));
    CHECK(has(dishes, "[1][2]>"));
}

TEST_CASE("the shopping list names a dish in sizes once, and its sides for cook day") {
    const auto planned = plan();
    const auto sheet = shopping_sheet(std::span{&planned, 1}, shipped_goods(), style_in("en"));
    const auto list = said(sheet, "shopping");
    CHECK(list.find("brown lentils") == list.rfind("brown lentils"));
    CHECK(has(list, "green beans><2.2 kg><no. 1>")); // 3 × 600 g and 2 × 200 g
    CHECK(has(list, "stock><1.1 l><no. 1>"));
    CHECK(sheet.field("dish-numbers")->paragraphs.size() == 2); // a heading and one dish
}
