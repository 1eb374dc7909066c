#include "wording/plan_order.h"

#include "wording/fields.h"
#include "wording/list_parts.h"
#include "wording/phrases.h"
#include "wording/plan_sheet.h"
#include "wording/print_fields.h"
#include "wording/timeline_words.h"
#include "wording/typography.h"

namespace thawslip::wording {
namespace {

Paragraph row_of(const std::string& time, const std::string& what) {
    Paragraph row;
    row.cells = {ticked(as_is(time, Emphasis::Strong)), plain(what)};
    return row;
}

Field in_order_field(const kitchen::Timeline& line, std::span<const kitchen::TimelineDish> dishes,
                     const Style& style) {
    Field field{field_name::in_order, {}, KeyPath{"package"}};
    std::string last_day;
    for (const auto& event : line.events) {
        const auto local = on_clock(line.clock, event.at);
        const auto day = say_weekday_date(local, style.language);
        if (day != last_day) {
            field.paragraphs.push_back(heading(day));
            last_day = day;
        }
        const auto words = say_event(line, dishes, event, style, DishNamed::InSentence);
        const bool is_measured = event.what == kitchen::TimelineStep::Ready;
        field.paragraphs.push_back(
            row_of(say_time_of_day(local, style.language),
                   is_measured && !words.description.empty()
                       ? words.summary + ". " + capitalised(words.description)
                       : words.summary));
    }
    return field;
}

} // namespace

Print plan_in_order(const kitchen::Timeline& line, std::span<const kitchen::TimelineDish> dishes,
                    const Style& style) {
    auto print = new_plan(line, style.say("plan-sheet.in-order"), style);
    print.page_phrase = style.say("list.page");
    print.continued_phrase = style.say("list.continued");
    print.fields.push_back(in_order_field(line, dishes, style));
    return print;
}

} // namespace thawslip::wording
