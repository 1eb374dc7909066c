// What a label says where there is little room: less, but nothing that keeps people safe.

#include "kitchen/plan.h"
#include "wording/print_fields.h"
#include "wording/prints.h"
#include "wording/shipped.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::wording;
using namespace std::chrono_literals;

namespace {

kitchen::Plan three_dishes() {
    kitchen::Day day;
    day.made = std::chrono::year{2026} / 10 / 17;
    for (const char* dish : {"Pumpkin stew", "Pumpkin curry", "Bean bake"}) {
        kitchen::Package package;
        package.dish = dish;
        package.servings = 4;
        package.bags = 2;
        package.use_by = std::chrono::year{2027} / 2 / 28;
        package.note = "Serve with rice";
        for (int i = 0; i < 3; ++i) {
            kitchen::Finish finish;
            finish.add.as_written = "1 l stock";
            finish.when.anchor = kitchen::When::Anchor::AtStart;
            finish.bag = "small bag";
            package.finish.push_back(finish);
        }
        day.packages.push_back(package);
    }
    Diagnostics faults;
    return kitchen::plan(day, {}, faults);
}

Print label(const kitchen::Plan& plan, std::size_t dish, const char* language = "en") {
    const auto style = style_for(shipped_language(language), {});
    return bag_label(plan, plan.packages[dish], plan.packages[dish].bags.front(), style);
}

std::string text_of(const std::vector<Paragraph>& paragraphs) {
    std::string text;
    for (const auto& paragraph : paragraphs) {
        text += paragraph.label + " ";
        for (const auto& span : paragraph.spans) {
            text += span.text;
        }
        text += "\n";
    }
    return text;
}

std::string in_form(const Print& print, const char* field, std::size_t form) {
    return text_of(print.field(field)->said(form));
}

} // namespace

TEST_CASE("each form of a field is no longer than the one before") {
    const auto plan = three_dishes();
    for (const char* language : {"en", "es", "de"}) {
        CAPTURE(language);
        for (const auto& field : label(plan, 0, language).fields) {
            CAPTURE(field.name);
            for (std::size_t form = 1; form <= field.shorter.size(); ++form) {
                CAPTURE(form);
                CHECK(text_of(field.said(form)).size() <= text_of(field.said(form - 1)).size());
                CHECK_FALSE(field.said(form).empty());
            }
        }
    }
}

TEST_CASE("what goes in together is said together, and where there is no room, how much it is") {
    const auto plan = three_dishes();
    const auto print = label(plan, 0);
    CHECK(print.field(field_name::finish)->paragraphs.size() == 1);
    CHECK(in_form(print, field_name::finish, 0).find("small bag") != std::string::npos);
    CHECK(in_form(print, field_name::finish, 1).find("small bag") == std::string::npos);
    CHECK(in_form(print, field_name::finish, 2).find("3 things: see the card") !=
          std::string::npos);
}

TEST_CASE("dish, servings, allergens, date and cautions are never said away") {
    const auto plan = three_dishes();
    const auto print = label(plan, 0);
    for (const char* name : {field_name::dish, field_name::servings, field_name::cautions}) {
        CHECK(print.field(name)->shorter.empty());
    }
    CHECK(in_form(print, field_name::use_by, 9).find("2027") != std::string::npos);
    CHECK(print.field(field_name::use_by)->said(9).front().critical);
}

TEST_CASE("a dish's number is its place in the description, on whichever print") {
    const auto plan = three_dishes();
    const auto style = style_for(shipped_language("en"), {});
    for (std::size_t i = 0; i < plan.packages.size(); ++i) {
        const auto& planned = plan.packages[i];
        const auto number = std::to_string(i + 1);
        for (const auto& print : {label(plan, i), cook_day_card(plan, planned, style),
                                  finishing_card(plan, planned, planned.bags.front(), style)}) {
            CHECK(text_of(print.field(field_name::mark)->paragraphs) == " " + number + "\n");
        }
    }
}

TEST_CASE("a label's dish says in strong words what tells it from its neighbour") {
    const auto plan = three_dishes();
    const auto print = label(plan, 1);
    const auto& spans = print.field(field_name::dish)->paragraphs.front().spans;
    REQUIRE(spans.size() == 2);
    CHECK(spans[0] == Span{"Pumpkin", Emphasis::Plain});
    CHECK(spans[1] == Span{" curry", Emphasis::Strong});
}

TEST_CASE("the strip of months has twelve letters, the limit's critical, and its year") {
    const auto plan = three_dishes();
    for (const char* language : {"en", "es", "de"}) {
        const auto print = label(plan, 0, language);
        const auto& strip = print.field(field_name::month_strip)->paragraphs;
        REQUIRE(strip.size() == 13);
        for (std::size_t i = 0; i < 12; ++i) {
            CHECK(strip[i].spans.front().text.size() == 1);
            CHECK(strip[i].critical == (i == 1));
        }
        CHECK(strip[12].spans.front().text == "2027");
    }
}
