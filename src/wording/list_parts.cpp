#include "wording/list_parts.h"

#include "wording/fields.h"
#include "wording/phrases.h"
#include "wording/print_fields.h"
#include "wording/timeline_words.h"
#include "wording/typography.h"

#include <algorithm>

namespace thawslip::wording {

Paragraph ticked(Paragraph paragraph) {
    paragraph.marker = Marker::TickBox;
    return paragraph;
}

Paragraph heading(std::string_view words) {
    auto paragraph = plain(words);
    paragraph.role = Role::Heading;
    return paragraph;
}

std::string numbered(const kitchen::PlannedPackage& planned, const Style& style) {
    return std::to_string(planned.number) + " · " +
           say_dish(planned.package.dish, planned.raw, style.language);
}

std::string say_weekday_date(kitchen::Date date, const Language& language) {
    return with_no_break_spaces(
        say_weekday_date(kitchen::LocalMinute{std::chrono::local_days{date}}, language));
}

void add_side_by_side(Field& field, std::vector<Column> columns) {
    Paragraph heads;
    heads.role = Role::ColumnHeads;
    std::size_t rows = 0;
    for (const auto& column : columns) {
        heads.cells.push_back(column.cells.empty() ? Paragraph{} : plain(column.head));
        rows = std::max(rows, column.cells.size());
    }
    field.paragraphs.push_back(std::move(heads));
    for (std::size_t i = 0; i < rows; ++i) {
        Paragraph row;
        for (auto& column : columns) {
            row.cells.push_back(i < column.cells.size() ? std::move(column.cells[i]) : Paragraph{});
        }
        field.paragraphs.push_back(std::move(row));
    }
}

Print new_sheet(const std::string& title, const std::string& date, const std::string& kitchen,
                const Style& style) {
    Print print;
    print.kind = Kind::DaySheet;
    print.dish = title;
    print.page_phrase = style.say("list.page");
    print.continued_phrase = style.say("list.continued");
    print.where = KeyPath{"day"};
    print.fields = {{field_name::title, {plain(title)}, {}},
                    {field_name::date, {as_is(date, Emphasis::Strong)}, KeyPath{"day.made"}},
                    kitchen_field(kitchen, style)};
    return print;
}

} // namespace thawslip::wording
