#include "layout/areas/text_area.h"

#include "base/list.h"
#include "base/nearest.h"
#include "base/printable.h"
#include "layout/areas/align_names.h"
#include "layout/areas/entry.h"
#include "layout/areas/orders.h"
#include "layout/areas/stack.h"
#include "layout/areas/tick_boxes.h"
#include "layout/areas/word_choice.h"
#include "layout/files/sheet_keys.h"
#include "layout/track_text.h"

#include <algorithm>
#include <fmt/format.h>
#include <tuple>

namespace thawslip::layout {
namespace {

using namespace literals;
using toml::Table;
using typeset::Weight;

const std::array<Named<Weight>, 3> weights = {{{{"regular", {"normal"}}, Weight::Regular},
                                               {{"medium"}, Weight::Medium},
                                               {{"bold"}, Weight::Bold}}};
const std::array<Named<LabelPlace>, 4> label_places = {{{{"run-in", {"inline"}}, LabelPlace::RunIn},
                                                        {{"column"}, LabelPlace::Column},
                                                        {{"above"}, LabelPlace::Above},
                                                        {{"rail"}, LabelPlace::Rail}}};
const std::array<Named<SecondPlace>, 2> second_places = {
    {{{"below"}, SecondPlace::Below}, {{"beside"}, SecondPlace::Beside}}};
const std::array<Named<Border>, 3> borders = {
    {{{"none"}, Border::None}, {{"frame"}, Border::Frame}, {{"reversed"}, Border::Reversed}}};
const std::array<Named<BorderOn>, 2> borders_on = {
    {{{"all", {"always"}}, BorderOn::All}, {{"critical"}, BorderOn::Critical}}};
const std::array<Named<Join>, 2> joins = {
    {{{"paragraphs"}, Join::Paragraphs}, {{"line"}, Join::Line}}};
constexpr toml::Range<Length> rule_widths{0.5_pt, 6.0_pt};

XHeights read_x_heights(Table& table) {
    const toml::Key key{"x_height", R"(["1.2 mm", "1.4 mm", "1.9 mm"])"};
    table.require(key);
    const auto sizes = read_lengths(table, key, 3, "smallest, comfortable, largest");
    if (!sizes) {
        return {least_x_height, least_x_height, least_x_height};
    }
    for (std::size_t i = 0; i < sizes->size(); ++i) {
        const auto size = sizes->at(i);
        if (size < least_x_height - 0.001_mm || size > 60.0_mm) {
            table.reader().error(table.path_of(key).index(i),
                                 fmt::format("an x-height of {:.2f} mm is not allowed: at least "
                                             "1.2 mm, at most 60 mm",
                                             size.in_millimetres()),
                                 {"1.2 mm is the floor of Regulation (EU) 1169/2011, Art. 13(2)"});
        }
    }
    if (!std::ranges::is_sorted(*sizes)) {
        table.reader().error(table.path_of(key), "the x-heights do not rise",
                             {"give the smallest first, then comfortable, then the largest"});
    }
    return {sizes->at(0), sizes->at(1), sizes->at(2)};
}

std::vector<std::string> read_words(Table& table, const PrintFields& fields) {
    table.require({"words", R"(["thaw"])"});
    const auto names =
        mapped(fields.fields, [](const auto& field) { return std::string{field.name}; });
    std::vector<std::string> words;
    for (const auto& text : table.string_or_strings({"words", R"(["thaw"])"}, 12)) {
        words.push_back(text.value);
        if (std::ranges::find(names, text.value) == names.end()) {
            table.reader().error(
                text.key,
                fmt::format("{} is not a field of a {}", in_quotes(text.value), fields.print),
                {near_names(text.value, names)});
        }
    }
    return words;
}

/// The group that an area is sized with: the last, where it names none.
std::size_t read_group(Table& table, const PrintFields& fields) {
    const auto& groups = fields.groups;
    const auto usual = groups.empty() ? 0 : groups.size() - 1;
    const toml::Key key{"group", "\"facts\""};
    const auto name = table.line(key, 40);
    if (!name) {
        return usual;
    }
    const auto found = std::ranges::find(groups, *name);
    if (found == groups.end()) {
        table.reader().error(table.path_of(key),
                             fmt::format("{} is none of the layout's groups", in_quotes(*name)),
                             {groups.empty() ? "name the layout's groups: groups = [\"facts\"]"
                                             : "expected " + list_of(groups)});
        return usual;
    }
    return static_cast<std::size_t>(found - groups.begin());
}

/// What no print may lack does not drop, however little room there is.
void read_drop(Table& table, const PrintFields& fields, TextArea& area) {
    // A layout that was kept with a print may be older than the name of this key.
    const toml::Key key{!table.has("drop") && table.has("leave") ? "leave" : "drop", "1"};
    area.drop = static_cast<int>(table.integer(key, {0, 99}).value_or(0));
    if (key.name == "leave") {
        table.reader().caution(table.path_of(key), "this key has another name now",
                               {fmt::format("write drop = {}", area.drop)});
    }
    const auto kept = std::ranges::find_if(fields.fields, [&area](const auto& field) {
        return field.stays == wording::Stays::Always && takes(area, field.name);
    });
    if (area.drop > 0 && kept != fields.fields.end()) {
        table.reader().error(
            table.path_of(key),
            fmt::format("this area may not drop: no {} may lack \"{}\"", fields.print, kept->name));
    }
}

/// What is drawn around the words, and on which prints.
void read_border(Table& table, TextArea& area) {
    area.border = choice(table, "border", "a border", borders, Border::None);
    area.border_on =
        choice(table, "border_on", "where a border is drawn", borders_on, BorderOn::All);
    if (area.border == Border::None && table.has("border_on")) {
        table.reader().error(table.path_of("border_on"), "there is no border here",
                             {"add border = \"frame\", or leave this out"});
    }
}

/// How wide the columns of rows are, and what stands in them.
void read_columns(Table& table, TextArea& area) {
    area.columns_flow = table.boolean("columns_flow").value_or(false);
    const toml::Key key{"table_align", R"(["left", "right"])"};
    area.table_align = choices(table, key, "an alignment", align_names);
    const auto columns = area.table.size();
    if (!area.table_align.empty() && area.table_align.size() != columns) {
        table.reader().error(table.path_of(key),
                             fmt::format("{} alignments are given, but the table has {} columns",
                                         area.table_align.size(), columns),
                             {"give one for each column of table"});
        area.table_align.clear();
    }
    const auto merged = table.integer({"merge", "1"}, {0, 64}).value_or(0);
    if (std::cmp_greater(merged, columns)) {
        table.reader().error(
            table.path_of("merge"),
            fmt::format("{} columns are merged, but the table has {}", merged, columns),
            {"merge counts columns from the left: merge = 1"});
        return;
    }
    area.merge = static_cast<int>(merged);
}

/// How headings stand, and whether what is below them stays with them.
void read_headings(Table& table, TextArea& area) {
    area.heading_size = table.real("heading_size", {1.0, 3.0}).value_or(area.heading_size);
    area.heading_space = table.real("heading_space", {0.0, 3.0}).value_or(area.heading_space);
    area.heading_rule =
        table.length({"heading_rule", "\"0.8 pt\""}, rule_widths).value_or(Length{});
    area.keep_whole = table.boolean("keep_whole").value_or(false);
}

/// Where each column runs on by itself there are no rows.
void refuse_rows_that_flow(Table& table, const TextArea& area) {
    const std::tuple<const char*, bool, const char*> of_rows[] = {
        {"row_rule", area.row_rule > Length{}, "there are no rows to draw lines under"},
        {"merge", area.merge > 0, "there are no rows that could say the same"},
        {"strips", area.strips > Length{}, "there are no rows to part into strips"}};
    for (const auto& [key, is_set, why] : of_rows) {
        if (area.columns_flow && is_set) {
            table.reader().error(table.path_of(key), fmt::format("{} where the columns flow", why),
                                 {fmt::format("leave out {} or columns_flow", key)});
        }
    }
}

/// What an area has to say of rows, headings and the space between paragraphs.
void read_rows(Table& table, TextArea& area) {
    area.table = read_tracks(table, {"table", R"(["content", "share"])"});
    read_columns(table, area);
    area.row_rule = table.length({"row_rule", "\"0.5 pt\""}, rule_widths).value_or(Length{});
    area.strips = table.length({"strips", "\"80 mm\""}, {20.0_mm, 1000.0_mm}).value_or(Length{});
    area.space = table.real("space", {0.0, 3.0}).value_or(area.space);
    read_headings(table, area);
    refuse_rows_that_flow(table, area);
}

} // namespace

void read(toml::Table& table, const PrintFields& fields, TextArea& area) {
    area.words = read_words(table, fields);
    area.weight = choice(table, "weight", "a weight", weights, Weight::Regular);
    area.x_height = read_x_heights(table);
    area.leading = table.real("leading", {1.0, 2.5}).value_or(area.leading);
    area.labels = choice(table, "labels", "a place for labels", label_places, LabelPlace::RunIn);
    area.join = choice(table, "join", "a way to join fields", joins, Join::Paragraphs);
    area.align = choice(table, "align", "an alignment", align_names, Align::Left);
    area.second = choice(table, "second", "a place for the second language", second_places,
                         SecondPlace::Below);
    area.group = read_group(table, fields);
    read_drop(table, fields, area);
    area.shorten = read_orders(table);
    read_border(table, area);
    area.continues = table.boolean("continues").value_or(false);
    area.repeats = table.boolean("repeats").value_or(false);
    read_rows(table, area);
    if (area.labels == LabelPlace::Above &&
        area.x_height.smallest * above_size < least_x_height - 0.001_mm) {
        table.reader().error(table.path_of("x_height"),
                             "labels above are set at 0.75 of the size and would be under 1.2 mm",
                             {"let the smallest x-height be at least 1.6 mm"});
    }
}

bool takes(const TextArea& area, std::string_view field) {
    return std::ranges::find(area.words, field) != area.words.end();
}

Length x_height_at(const TextArea& area, Scale scale) {
    const auto& x = area.x_height;
    const double t = std::clamp(scale.value, 0.0, 2.0);
    return t <= 1.0 ? x.smallest + (x.comfortable - x.smallest) * t
                    : x.comfortable + (x.largest - x.comfortable) * (t - 1.0);
}

TypeSize type_at(const TextArea& area, Scale scale, const typeset::FontSet& fonts) {
    const Length size = x_height_at(area, scale) / fonts.metrics(area.weight).x_height;
    return {size, size * area.leading};
}

Extent measure(const Content& content, const TextArea& area, TypeSize type, Length width,
               RowHeights /*rows*/) {
    Extent extent;
    if (!content.is_there()) {
        return extent;
    }
    const auto pad = padding_of(content, area, type.size);
    const Length inner = std::max(width - pad.side * 2.0, type.size * 0.1);
    const auto columns = columns_of(content, area, type.size, inner);
    for (const auto& entry : content.entries()) {
        extent.cut_paragraphs += cuts_words(entry, columns) ? 1 : 0;
    }
    extent.height = pad.above + type.leading * stack(content, area, columns).height + pad.below;
    extent.first_baseline = pad.above + type.leading * first_baseline(content.entries().front());
    return extent;
}

Length natural_width(const Content& content, const TextArea& area, TypeSize type) {
    if (!content.is_there()) {
        return {};
    }
    constexpr double endless = 1e6;
    const auto columns = columns_of(content, area, type.size, type.size * endless);
    double widest = area.table.empty() ? 0.0 : table_natural_width(content, area, type.size);
    for (const auto& entry : content.entries()) {
        if (!entry.cells.empty()) {
            continue;
        }
        const bool heads = entry.role == wording::Role::Heading;
        const double own = std::max(entry.text.natural_width(), tick_boxes_width(entry));
        const double indent = heads ? 0.0 : columns.prose.text;
        widest = std::max(widest, indent + own * entry.size);
        for (const auto& second : entry.second) {
            widest = std::max(widest, indent + second.text.natural_width() * second.size);
        }
        if (entry.label_above) {
            widest = std::max(widest, entry.label->natural_width() * above_size * entry.size);
        }
    }
    return type.size * widest + padding_of(content, area, type.size).side * 2.0;
}

Padding padding_of(const Content& content, const TextArea& area, Length em) {
    const bool is_drawn =
        area.border != Border::None && (area.border_on == BorderOn::All || says_critical(content));
    if (!is_drawn) {
        return {};
    }
    // A line that stands close is taken for a stroke of a letter; the edge of a black field is not.
    return area.border == Border::Frame ? Padding{em * 0.45, em * 0.3, em * 0.22}
                                        : Padding{em * 0.4, em * 0.14, em * 0.08};
}

} // namespace thawslip::layout
