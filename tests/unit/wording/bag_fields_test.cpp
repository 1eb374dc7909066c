#include "kitchen/plan.h"
#include "wording/prints.h"

#include <algorithm>
#include <doctest/doctest.h>

using namespace thawslip;

namespace {

kitchen::Plan three_bags() {
    kitchen::Day day;
    day.made = std::chrono::year{2026} / 10 / 17;
    day.kitchen = "Orchard house";
    kitchen::Package package;
    package.dish = "Quince and barley pottage";
    package.servings = 4;
    package.bags = 3;
    package.use_by = std::chrono::year{2027} / 1 / 17;
    package.finish.push_back({{}, {}, {}, {}});
    day.packages.push_back(package);
    Diagnostics faults;
    return kitchen::plan(day, {}, faults);
}

/// The fields of `print` that are not of its bag alone.
std::vector<wording::Field> shared_fields(wording::Print print, const kitchen::Bag& bag,
                                          const wording::Style& style) {
    const auto own = bag_fields(bag, style);
    std::erase_if(print.fields, [&own](const wording::Field& field) {
        return std::ranges::find(own, field.name, &wording::Field::name) != own.end();
    });
    return print.fields;
}

bool say_the_same(const std::vector<wording::Field>& some,
                  const std::vector<wording::Field>& others) {
    return std::ranges::equal(some, others, [](const auto& one, const auto& other) {
        return one.name == other.name && one.paragraphs == other.paragraphs;
    });
}

} // namespace

TEST_CASE("prints of a dish's bags differ in the fields of the bag alone, in every language") {
    const auto plan = three_bags();
    const auto& planned = plan.packages.front();
    const auto& first = planned.bags[0];
    const auto& last = planned.bags[2];
    for (const auto& code : wording::shipped_languages()) {
        CAPTURE(code);
        const auto style = wording::style_for(wording::shipped_language(code), {});
        const auto same = [&](const auto& print) {
            return say_the_same(shared_fields(print(plan, planned, first, style), first, style),
                                shared_fields(print(plan, planned, last, style), last, style));
        };
        CHECK(same(wording::bag_label));
        CHECK(same(wording::finishing_card));
        CHECK_FALSE(say_the_same(bag_fields(first, style), bag_fields(last, style)));
    }
}
