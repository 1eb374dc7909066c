// What a label says where there is little room: less, but nothing that keeps people safe.

#include "kitchen/plan.h"
#include "wording/print_fields.h"
#include "wording/prints.h"
#include "wording/shipped.h"
#include "wording/typography.h"

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

TEST_CASE(
    "where the code has no room for the steps, each form of the cook line says where they are") {
    auto plan = three_dishes();
    kitchen::Cook cook;
    cook.in = "oven";
    cook.setting = "lid on";
    cook.time = kitchen::TimeRange{40min, 50min};
    cook.until = kitchen::Temperature{74.0, kitchen::TemperatureScale::Celsius};
    cook.steps = {"Bake."};
    const auto card = [](const std::string& text) {
        return text.find("card") != std::string::npos ||
               text.find("tarjeta") != std::string::npos || text.find("Karte") != std::string::npos;
    };
    for (const char* language : {"en", "es", "de"}) {
        for (const bool has_target : {true, false}) {
            CAPTURE(language);
            plan.packages.front().package.cook = cook;
            if (!has_target) {
                plan.packages.front().package.cook->until.reset();
            }
            const auto print = label(plan, 0, language);
            REQUIRE(print.if_code_is_cut.size() == 1);
            const auto& cut = print.if_code_is_cut.front();
            const auto& whole = *print.field(field_name::cook);
            CHECK(cut.name == whole.name);
            CHECK(cut.shorter.size() == whole.shorter.size());
            CHECK_FALSE(card(text_of(whole.said(0))));
            CHECK(card(text_of(whole.said(2)))); // no longer says how it is cooked
            CHECK(card(text_of(whole.said(3))));
            for (std::size_t form = 0; form <= cut.shorter.size(); ++form) {
                CAPTURE(form);
                CHECK(card(text_of(cut.said(form))));
                CHECK((text_of(cut.said(form)).find("74") != std::string::npos) == has_target);
                CHECK((form == 0 ||
                       text_of(cut.said(form)).size() <= text_of(cut.said(form - 1)).size()));
            }
        }
    }
}

TEST_CASE("dish, servings, allergens, date and cautions are never said away") {
    const auto plan = three_dishes();
    const auto print = label(plan, 0);
    for (const char* name : {field_name::dish, field_name::limit_date, field_name::cautions}) {
        CHECK(print.field(name)->shorter.empty());
    }
    for (const char* language : {"en", "es", "de"}) {
        const auto servings = in_form(label(plan, 0, language), field_name::servings, 9);
        CHECK(servings.ends_with(" 4\n"));
        CHECK(servings.size() > 4); // what is counted is said
    }
    CHECK(in_form(print, field_name::use_by, 9).find("2027") != std::string::npos);
    CHECK(print.field(field_name::use_by)->said(9).front().critical);
}

TEST_CASE("a limit's phrase and its date are what the limit says as one, in each form") {
    const auto plan = three_dishes();
    for (const char* language : {"en", "es", "de"}) {
        const auto print = label(plan, 0, language);
        for (std::size_t form = 0; form < 2; ++form) {
            const auto& whole = print.field(field_name::use_by)->said(form).front();
            const auto& phrase = print.field(field_name::limit_phrase)->said(form).front();
            const auto& date = print.field(field_name::limit_date)->said(form).front();
            CHECK(phrase.critical);
            CHECK(date.critical);
            CHECK(date.spans == whole.spans);
            CHECK(date.label.empty());
            // On one line: a break would leave half a phrase.
            CHECK(phrase.spans.front().text.find(' ') == std::string::npos);
            CHECK(phrase.spans.front().text.size() >= whole.label.size());
        }
    }
}

TEST_CASE("how long to thaw is strong in the thaw line, once") {
    auto plan = three_dishes();
    auto& planned = plan.packages.front();
    planned.package.thaw.method = kitchen::ThawMethod::Refrigerator;
    planned.thaw_lead = kitchen::ThawLead{.method = kitchen::ThawMethod::Refrigerator,
                                          .lead = 46h,
                                          .soonest = 30h,
                                          .missing = kitchen::MissingSize::None};
    for (const char* language : {"en", "es", "de"}) {
        CAPTURE(language);
        const auto print = label(plan, 0, language);
        for (std::size_t form = 0; form < 4; ++form) {
            CAPTURE(form);
            std::vector<std::string> strong;
            for (const auto& span : print.field(field_name::thaw)->said(form).front().spans) {
                if (span.emphasis == Emphasis::Strong) {
                    strong.push_back(span.text);
                }
            }
            const bool is_range = form == 3; // half a range must not be strong
            CHECK(strong == std::vector{typeset_text(is_range ? "30-46 h" : "46 h")});
        }
    }
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
