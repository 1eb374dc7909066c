#include "layout/files/layout_file.h"

#include "base/list.h"
#include "base/nearest.h"
#include "base/printable.h"
#include "layout/areas/word_choice.h"
#include "layout/files/area_map.h"
#include "layout/files/sheet_keys.h"
#include "layout/track_text.h"
#include "toml/file_table.h"
#include "toml/reader.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <set>

namespace thawslip::layout {
namespace {

using namespace literals;
using toml::Table;
namespace field_name = wording::field_name;

const std::array<Named<wording::Kind>, 6> prints = {
    {{{"bag label", {"label"}}, wording::Kind::BagLabel},
     {{"finishing card", {"finish card"}}, wording::Kind::FinishingCard},
     {{"cook-day card", {"cook day card", "cook card"}}, wording::Kind::CookDayCard},
     {{"door list", {"freezer door list", "door"}}, wording::Kind::DoorList},
     {{"day sheet", {"day list", "day"}}, wording::Kind::DaySheet},
     {{"plan sheet", {"plan", "timeline"}}, wording::Kind::PlanSheet}}};

/// Reads for which kind of print the layout is. \returns what such a print can say; what any can
/// where no kind is named, so that only that is told
PrintFields read_print(Table& root, Layout& layout) {
    const auto errors = root.reader().errors();
    root.require({"print", "\"bag label\""});
    layout.kind = choice(root, "print", "a kind of print", prints, wording::Kind::BagLabel);
    const bool is_known = root.reader().errors() == errors;
    PrintFields said{"print", {}};
    for (const auto& [word, kind] : prints) {
        if (is_known && kind != layout.kind) {
            continue;
        }
        said.print = is_known ? word.word : said.print;
        const auto fields = wording::fields_of(kind);
        said.fields.insert(said.fields.end(), fields.begin(), fields.end());
    }
    return said;
}

/// The groups of areas that are sized together; one for all where none are named.
std::vector<std::string> read_groups(Table& root) {
    const toml::Key key{"groups", R"(["identity", "facts", "body"])"};
    std::vector<std::string> groups;
    for (const auto& text : root.strings(key, 40)) {
        if (std::ranges::find(groups, text.value) != groups.end()) {
            root.reader().error(text.key,
                                fmt::format("{} stands here twice", in_quotes(text.value)));
        }
        groups.push_back(text.value);
    }
    if (groups.size() > most_groups) {
        root.reader().error(root.path_of(key),
                            fmt::format("a layout has at most {} groups", most_groups));
        groups.resize(most_groups);
    }
    return groups.empty() ? std::vector<std::string>{"all"} : groups;
}

/// As many as the picture has.
std::vector<Track> read_tracks(Table& table, const toml::Key& key, int count) {
    auto tracks = layout::read_tracks(table, key);
    if (tracks.empty()) {
        tracks.resize(static_cast<std::size_t>(count));
    } else if (std::cmp_not_equal(tracks.size(), count)) {
        table.reader().error(table.path_of(key),
                             fmt::format("{} sizes are given, but the picture has {} {}",
                                         tracks.size(), count, key.name));
        tracks.resize(static_cast<std::size_t>(count));
    }
    return tracks;
}

/// How far rows stand apart.
void read_row_gaps(Table& root, Layout& layout) {
    const toml::Range<Length> range{0.0_mm, 50.0_mm};
    layout.row_gap = root.length("row_gap", range).value_or(1.0_mm);
    layout.most_row_gap = root.length("row_gap_most", range).value_or(layout.row_gap * 2.0);
    if (layout.most_row_gap < layout.row_gap) {
        root.reader().error(root.path_of("row_gap_most"), "the gap at most is below row_gap",
                            {"give row_gap again, for gaps that never grow"});
    }
}

Area read_area(Table& areas, const PrintFields& fields, const MappedArea& mapped) {
    Area area{mapped.name, mapped.grid, {}, {}};
    const toml::Key key{mapped.name.c_str()};
    areas.require(key);
    if (auto table = areas.table(key)) {
        read(*table, fields, area);
        table->refuse_unknown();
    }
    return area;
}

void read_cells(Table& table, Layout& layout) {
    const auto ratios = table.reals({"cells", "[1.2, 2.4]"}, 2, {0.01, 100.0});
    if (ratios.size() == 2 && ratios[0] < ratios[1]) {
        layout.narrowest = ratios[0];
        layout.widest = ratios[1];
    } else if (table.has("cells")) {
        table.reader().error(table.path_of("cells"),
                             "expected two ratios of width to height, the smaller first",
                             {"cells = [1.2, 2.4]"});
    }
}

/// Optional: a layout for small cells leaves the large ones to another of the same shape.
void read_heights(Table& table, Layout& layout) {
    const toml::Key key{"heights", R"(["20 mm", "44 mm"])"};
    const auto heights = read_lengths(table, key, 2, "of cells, from – to");
    if (!heights) {
        return;
    }
    layout.lowest = heights->front();
    layout.highest = heights->back();
    if (layout.lowest >= layout.highest) {
        table.reader().error(table.path_of(key), "expected two heights of cells, the smaller first",
                             {R"(heights = ["20 mm", "44 mm"])"});
    }
}

std::optional<AreaMap> read_drawn(Table& table) {
    const toml::Key key{"picture", R"(["dish code", "thaw code"])"};
    table.require(key);
    const auto texts = table.strings(key, 64);
    const auto lines =
        mapped(texts, [](const toml::Text& text) { return text.value.substr(0, 2000); });
    if (lines.empty()) {
        return std::nullopt;
    }
    auto picture = read_area_map(lines);
    if (picture) {
        return std::move(picture).value();
    }
    for (const auto& fault : picture.fault()) {
        table.reader().error_inside(texts[fault.line].key, fault.offset, fault.message,
                                    fault.hint.empty() ? toml::Hints{} : toml::Hints{fault.hint});
    }
    return std::nullopt;
}

void read_rules(Table& table, Layout& layout) {
    layout.rule_gap = table.length({"rule_gap", "\"0.6 mm\""}, {0.0_mm, 20.0_mm}).value_or(0.0_mm);
    auto rules = table.table("rule");
    if (!rules) {
        return;
    }
    for (const auto& area : layout.areas) {
        const auto thickness = rules->length({area.name.c_str(), "\"0.8 pt\""}, {0.5_pt, 6.0_pt});
        if (thickness) {
            layout.rules.push_back({area.name, *thickness});
        }
    }
    rules->refuse_unknown();
}

/// Under which areas gaps take what is to spare.
void read_spare(Table& root, Layout& layout) {
    for (const auto& text : root.strings({"spare_under", R"(["thaw", "finish"])"}, 64)) {
        if (layout.area(text.value) != nullptr) {
            layout.spare_under.push_back(text.value);
            continue;
        }
        root.reader().error(text.key,
                            fmt::format("{} is no area of the picture", in_quotes(text.value)),
                            {"expected " + list_of(mapped(layout.areas, &Area::name))});
    }
}

/// A print has one code, and no room to say it twice.
void refuse_second_code(Table& areas, const Layout& layout) {
    const Area* first = nullptr;
    for (const auto& area : layout.areas) {
        if (!std::holds_alternative<CodeArea>(area.kind)) {
            continue;
        }
        if (first != nullptr) {
            areas.reader().error(
                areas.path_of(area.name.c_str()).key("kind"),
                fmt::format("\"{}\" would be a second code, and a print has one: "
                            "\"{}\" holds it already",
                            area.name, first->name),
                {fmt::format("leave out \"{}\" or \"{}\"", first->name, area.name)});
        }
        first = &area;
    }
}

enum class Where { Before, Behind };

/// Has a field stand where another does, where a layout has no place for it.
void place_with(Layout& layout, const char* field, Where where, const char* other) {
    if (layout.area_with(field) != nullptr) {
        return;
    }
    for (auto& area : layout.areas) {
        auto* text = std::get_if<TextArea>(&area.kind);
        if (text != nullptr && takes(*text, other)) {
            const auto place = std::ranges::find(text->words, other);
            text->words.insert(where == Where::Behind ? place + 1 : place, field);
            return;
        }
    }
}

/// What no print may lack, and layouts that are older have no area for: that food is raw stands
/// before the dish, and the allergens of what is added behind that.
void place_what_none_may_lack(Layout& layout) {
    place_with(layout, field_name::raw, Where::Before, field_name::dish);
    if (layout.kind == wording::Kind::FinishingCard) {
        place_with(layout, field_name::contains_of_finish, Where::Behind,
                   field_name::finish_grouped);
        place_with(layout, field_name::contains_of_finish, Where::Behind, field_name::finish);
    }
}

std::optional<Layout> read_root(toml::Reader& reader, std::string name) {
    auto root = reader.root();
    Layout layout;
    layout.name = std::move(name);
    root.line("about", 200);
    auto fields = read_print(root, layout);
    read_cells(root, layout);
    read_heights(root, layout);
    layout.column_gap = root.length("column_gap", {0.0_mm, 50.0_mm}).value_or(2.0_mm);
    read_row_gaps(root, layout);
    const auto picture = read_drawn(root);
    if (!picture) {
        return std::nullopt;
    }
    layout.picture = root.reader().document().place(root.path_of("picture"));
    layout.groups = read_groups(root);
    fields.groups = layout.groups;
    layout.columns = read_tracks(root, "columns", picture->columns);
    layout.rows = read_tracks(root, "rows", picture->rows);
    root.require("area");
    if (auto areas = root.table("area")) {
        for (const auto& drawn : picture->areas) {
            layout.areas.push_back(read_area(*areas, fields, drawn));
        }
        refuse_second_code(*areas, layout);
        areas->refuse_unknown();
    }
    place_what_none_may_lack(layout);
    read_rules(root, layout);
    read_spare(root, layout);
    root.refuse_unknown();
    return layout;
}

} // namespace

std::optional<Layout> read_layout(const toml::Document& document, std::string name,
                                  Diagnostics& faults) {
    if (!document.well_formed()) {
        return std::nullopt;
    }
    toml::Reader reader{document, faults};
    auto layout = read_root(reader, std::move(name));
    reader.finish();
    return reader.errors() == 0 ? std::move(layout) : std::nullopt;
}

std::vector<std::string> accepted_layout_keys() {
    // A reader notes every key it is asked for; one area is like another of its kind.
    std::set<std::string> asked;
    for (const auto& kind : area_kinds()) {
        Diagnostics unwanted;
        const auto document = toml::parse(
            "picture = [\"name\"]\n[area.name]\nkind = \"" + kind + "\"\n[rule]\n", "", unwanted);
        toml::Reader reader{document, unwanted, &asked};
        read_root(reader, "");
    }
    return {asked.begin(), asked.end()};
}

} // namespace thawslip::layout
