#include "wording/plan_order.h"

#include "wording/fields.h"
#include "wording/list_parts.h"
#include "wording/phrases.h"
#include "wording/plan_sheet.h"
#include "wording/plan_words.h"
#include "wording/print_fields.h"
#include "wording/timeline_words.h"
#include "wording/typography.h"

#include <algorithm>
#include <iterator>

namespace thawslip::wording {
namespace {

/// Its time and what is to be done, strong; below that what else there is to know and to mind.
Paragraph row_of(const kitchen::TimelineEvent& event, const PlanSource& from) {
    const auto [summary, description] =
        say_event(from.line, from.dishes, event, from.style, DishNamed::InList);
    auto what = as_is(typeset_text(summary), Emphasis::Strong);
    if (!description.empty()) {
        what.below.push_back(plain(description));
    }
    std::ranges::move(minded_at(event, description, from), std::back_inserter(what.below));
    Paragraph row;
    const auto time = say_time_of_day(from.clock(event.at), from.style.language);
    row.cells = {ticked(as_is(time, Emphasis::Strong)), std::move(what)};
    return row;
}

/// What is said of a dish before all, below its name.
void add_notices(std::vector<Paragraph>& all, const PlanSource& from) {
    for (std::size_t dish = 0; dish < from.dishes.size(); ++dish) {
        auto notices = notices_of(dish, from);
        if (!notices.empty()) {
            all.push_back(heading(dish_name(dish, from)));
            std::ranges::move(notices, std::back_inserter(all));
        }
    }
}

Field in_order_field(const PlanSource& from) {
    Field field{field_name::in_order, {}, KeyPath{"package"}};
    add_notices(field.paragraphs, from);
    std::string last_day;
    for (const auto& event : from.line.events) {
        const auto day = say_weekday_date(from.clock(event.at), from.style.language);
        if (day != last_day) {
            field.paragraphs.push_back(heading(day));
            last_day = day;
        }
        field.paragraphs.push_back(row_of(event, from));
    }
    return field;
}

} // namespace

Print plan_in_order(const kitchen::Timeline& line, std::span<const kitchen::TimelineDish> dishes,
                    const Style& style) {
    auto print = new_plan(line, style.say("plan-sheet.in-order"), style);
    print.page_phrase = style.say("list.page");
    print.continued_phrase = style.say("list.continued");
    const PlanSource from{line, dishes, style};
    print.fields.push_back(remarks_field(from));
    print.fields.push_back(in_order_field(from));
    return print;
}

} // namespace thawslip::wording
