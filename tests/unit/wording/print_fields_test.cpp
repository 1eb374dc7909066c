#include "kitchen/plan.h"
#include "wording/day_sheet.h"
#include "wording/door_list.h"
#include "wording/print_fields.h"
#include "wording/prints.h"
#include "wording/shopping_sheet.h"

#include <doctest/doctest.h>
#include <map>
#include <set>

using namespace thawslip;

namespace {

kitchen::Plan one_dish() {
    kitchen::Day day;
    day.made = std::chrono::year{2026} / 10 / 17;
    kitchen::Package package;
    package.dish = "Quince and barley pottage";
    package.servings = 4;
    package.bags = 1;
    package.use_by = std::chrono::year{2027} / 1 / 17;
    package.finish.push_back({{}, {}, {}, {}});
    day.packages.push_back(package);
    Diagnostics faults;
    return kitchen::plan(day, {}, faults);
}

/// The names of all fields that the prints of each kind have.
std::map<wording::Kind, std::set<std::string>> names_on_prints() {
    const auto plan = one_dish();
    const auto& planned = plan.packages.front();
    const auto style = wording::style_for(wording::shipped_language("en"), {});
    std::map<wording::Kind, std::set<std::string>> names;
    for (const auto& print :
         {bag_label(plan, planned, planned.bags.front(), style),
          finishing_card(plan, planned, planned.bags.front(), style),
          cook_day_card(plan, planned, style), wording::door_list({}, style),
          day_sheets(plan, wording::SheetPer::Day, style).front(),
          shopping_sheet(std::span{&plan, 1}, wording::shipped_goods(), style)}) {
        for (const auto& field : print.fields) {
            names[print.kind].insert(field.name);
        }
    }
    return names;
}

} // namespace

TEST_CASE("every print has the fields that its kind is said to have, and no others") {
    const auto on_prints = names_on_prints();
    REQUIRE(on_prints.size() == 5);
    for (const auto& [kind, names] : on_prints) {
        CAPTURE(static_cast<int>(kind));
        std::set<std::string> said;
        for (const auto& field : wording::fields_of(kind)) {
            said.insert(field.name);
        }
        said.erase(wording::field_name::page); // which a print that runs on gets with its cards
        CHECK(said == names);
    }
}

TEST_CASE("no print may lack its dish, dates, allergens, cautions or what to do with the food") {
    const auto stays = [](wording::Kind kind, const std::string& name) {
        for (const auto& field : wording::fields_of(kind)) {
            if (field.name == name) {
                return field.stays == wording::Stays::Always;
            }
        }
        return false;
    };
    for (const char* name :
         {"raw", "dish", "servings", "made", "use-by", "limit-phrase", "limit-date", "thaw",
          "finish", "contains", "note", "cautions", "local-rules"}) {
        CAPTURE(name);
        CHECK(stays(wording::Kind::BagLabel, name));
    }
    for (const char* name : {"raw", "dish", "servings", "made", "use-by", "thaw", "timeline",
                             "steps", "sequence", "contains", "note", "cautions", "local-rules"}) {
        CAPTURE(name);
        CHECK(stays(wording::Kind::CookDayCard, name));
    }
    for (const char* name : {"raw", "dish", "use-by", "finish", "finish-grouped",
                             "contains-of-finish", "local-rules"}) {
        CAPTURE(name);
        CHECK(stays(wording::Kind::FinishingCard, name));
    }
    CHECK_FALSE(stays(wording::Kind::BagLabel, "kitchen"));
}
