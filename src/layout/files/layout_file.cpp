#include "layout/files/layout_file.h"

#include "base/nearest.h"
#include "layout/files/picture.h"
#include "layout/files/track_text.h"
#include "toml/length_text.h"
#include "toml/reader.h"
#include "toml/table.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <set>

namespace thawslip::layout {
namespace {

using namespace literals;
using toml::Table;
using toml::Word;

const std::array<Word, 5> print_words = {{{"bag label", {"label"}},
                                          {"finishing card", {"finish card"}},
                                          {"cook-day card", {"cook day card", "cook card"}},
                                          {"door list", {"freezer door list", "door"}},
                                          {"day sheet", {"day list", "day"}}}};
const std::array<Word, 3> kind_words = {{{"text"}, {"code", {"qr"}}, {"write", {"writing"}}}};
const std::array<Word, 3> weight_words = {{{"regular", {"normal"}}, {"medium"}, {"bold"}}};
const std::array<Word, 3> align_words = {{{"left"}, {"centre", {"center"}}, {"right"}}};
const std::array<Word, 3> stand_words = {{{"top"}, {"middle", {"centre"}}, {"bottom"}}};
const std::array<Word, 3> label_words = {{{"run-in", {"inline"}}, {"column"}, {"above"}}};
const std::array<Word, 2> join_words = {{{"paragraphs"}, {"line"}}};

/// Every field that the wording stage can offer to a layout.
const std::array<Word, 27> field_words = {
    {{"dish"},        {"servings"},    {"bag"},   {"id"},       {"made"},     {"use-by"},
     {"thaw"},        {"finish"},      {"cook"},  {"contains"}, {"note"},     {"kitchen"},
     {"cautions"},    {"local-rules"}, {"title"}, {"bags"},     {"timeline"}, {"steps"},
     {"frozen-safe"}, {"page"},        {"date"},  {"summary"},  {"rows"},     {"dishes"},
     {"freezing"},    {"shopping"},    {"raw"}}};

template <class Enum>
Enum choice(Table& table, const toml::Key& key, std::string_view what, std::span<const Word> words,
            Enum fallback) {
    const auto found = table.word(key, what, words);
    return found ? static_cast<Enum>(*found) : fallback;
}

std::vector<Track> read_track_list(Table& table, const toml::Key& key) {
    const auto texts = table.strings(key, 64);
    std::vector<Track> tracks;
    for (const auto& text : texts) {
        auto track = parse_track(text.value);
        if (track) {
            tracks.push_back(track.value());
        } else {
            table.reader().error(text.key, track.fault(),
                                 {R"(write "content", "share", "share 2", "30 %" or "12 mm")"});
            tracks.emplace_back();
        }
    }
    return tracks;
}

std::vector<Track> read_tracks(Table& table, const toml::Key& key, int count) {
    auto tracks = read_track_list(table, key);
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

XHeights read_x_heights(Table& table) {
    const toml::Key key{"x_height", R"(["1.2 mm", "1.4 mm", "1.9 mm"])"};
    const auto texts = table.strings(key, 3);
    XHeights heights{least_x_height, least_x_height, least_x_height};
    if (!table.has(key)) {
        table.require(key);
        return heights;
    }
    if (texts.size() != 3) {
        table.reader().error(table.path_of(key),
                             fmt::format("{} x-heights are given, expected three", texts.size()),
                             {R"(smallest, comfortable, largest: ["1.2 mm", "1.4 mm", "1.9 mm"])"});
        return heights;
    }
    std::array<Length, 3> sizes{};
    for (std::size_t i = 0; i < 3; ++i) {
        const auto length = toml::parse_length(texts[i].value);
        if (!length) {
            table.reader().error_inside(texts[i].key, length.fault().offset,
                                        length.fault().message);
            return heights;
        }
        sizes[i] = length.value();
        if (sizes[i] < least_x_height - 0.001_mm || sizes[i] > 60.0_mm) {
            table.reader().error(texts[i].key,
                                 fmt::format("an x-height of {:.2f} mm is not allowed: at least "
                                             "1.2 mm, at most 60 mm",
                                             sizes[i].in_millimetres()),
                                 {"1.2 mm is the floor of Regulation (EU) 1169/2011, Art. 13(2)"});
        }
    }
    if (!(sizes[0] <= sizes[1] && sizes[1] <= sizes[2])) {
        table.reader().error(table.path_of(key), "the x-heights do not rise",
                             {"give the smallest first, then comfortable, then the largest"});
    }
    return {sizes[0], sizes[1], sizes[2]};
}

std::vector<std::string> read_words(Table& table) {
    std::vector<std::string> words;
    for (const auto& text : table.string_or_strings({"words", R"(["thaw"])"}, 12)) {
        const auto known = std::ranges::find(field_words, text.value, &Word::word);
        if (known != field_words.end()) {
            words.push_back(text.value);
            continue;
        }
        std::vector<std::string> names;
        for (const auto& field : field_words) {
            names.push_back(field.word);
        }
        const auto near = nearest(text.value, names);
        table.reader().error(
            text.key, fmt::format("\"{}\" is not a field of any print", text.value),
            {near ? fmt::format("did you mean \"{}\"?", *near) : "expected " + list_of(names)});
    }
    return words;
}

/// What an area has to say of rows, headings and the space between paragraphs.
void read_rows(Table& table, Area& area) {
    area.table = read_track_list(table, {"table", R"(["content", "share"])"});
    area.columns_flow = table.boolean("columns_flow").value_or(false);
    area.row_rule = table.length({"row_rule", "\"0.5 pt\""}, {0.5_pt, 6.0_pt}).value_or(Length{});
    area.space = table.real("space", {0.0, 3.0}).value_or(area.space);
    area.heading_size = table.real("heading_size", {1.0, 3.0}).value_or(area.heading_size);
    if (area.columns_flow && area.row_rule > Length{}) {
        table.reader().error(table.path_of("row_rule"),
                             "there are no rows to draw lines under where the columns flow",
                             {"leave out row_rule or columns_flow"});
    }
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

void read_text_area(Table& table, Area& area) {
    table.require({"words", R"(["thaw"])"});
    area.words = read_words(table);
    area.weight = choice(table, "weight", "a weight", weight_words, typeset::Weight::Regular);
    area.x_height = read_x_heights(table);
    area.leading = table.real("leading", {1.0, 2.5}).value_or(area.leading);
    area.labels = choice(table, "labels", "a place for labels", label_words, LabelPlace::RunIn);
    area.join = choice(table, "join", "a way to join fields", join_words, Join::Paragraphs);
    area.align = choice(table, "align", "an alignment", align_words, Align::Left);
    area.leave = static_cast<int>(table.integer({"leave", "1"}, {0, 99}).value_or(0));
    area.continues = table.boolean("continues").value_or(false);
    area.repeats = table.boolean("repeats").value_or(false);
    read_rows(table, area);
    if (area.labels == LabelPlace::Above &&
        area.x_height.smallest * above_size < least_x_height - 0.001_mm) {
        table.reader().error(table.path_of("x_height"),
                             "labels above are set at 0.75 of the size and would be under 1.2 mm",
                             {"let the smallest x-height be at least 1.6 mm"});
    }
    const auto pinned =
        std::ranges::find_if(area.words, [](const auto& w) { return must_stay(w); });
    if (area.leave > 0 && pinned != area.words.end()) {
        table.reader().error(
            table.path_of("leave"),
            fmt::format("this area may not leave: no print may lack \"{}\"", *pinned));
    }
}

Area read_area(Table& areas, const PictureArea& drawn) {
    Area area;
    area.name = drawn.name;
    area.row = drawn.row;
    area.column = drawn.column;
    area.rows = drawn.rows;
    area.columns = drawn.columns;
    const toml::Key key{drawn.name.c_str()};
    areas.require(key);
    auto table = areas.table(key);
    if (!table) {
        return area;
    }
    area.kind = choice(*table, "kind", "a kind of area", kind_words, AreaKind::Text);
    area.stand = choice(*table, "stand", "a place to stand", stand_words, Stand::Top);
    if (area.kind == AreaKind::Text) {
        read_text_area(*table, area);
    }
    table->refuse_unknown();
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
    const auto texts = table.strings(key, 2);
    if (!table.has(key)) {
        return;
    }
    std::vector<Length> heights;
    for (const auto& text : texts) {
        if (const auto length = toml::parse_length(text.value)) {
            heights.push_back(length.value());
        }
    }
    if (heights.size() == 2 && heights[0] < heights[1]) {
        layout.lowest = heights[0];
        layout.highest = heights[1];
    } else {
        table.reader().error(table.path_of(key), "expected two heights of cells, the smaller first",
                             {R"(heights = ["20 mm", "44 mm"])"});
    }
}

std::optional<Picture> read_drawn(Table& table) {
    std::vector<std::string> lines;
    const toml::Key key{"picture", R"(["dish code", "thaw code"])"};
    table.require(key);
    const auto texts = table.strings(key, 64);
    for (const auto& text : texts) {
        lines.push_back(text.value.substr(0, 2000));
    }
    if (lines.empty()) {
        return std::nullopt;
    }
    auto picture = read_picture(lines);
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

/// That food is raw stands before the dish where a layout has no place for it.
void place_raw(Layout& layout) {
    const auto holds = [](std::string_view field) {
        return [field](const Area& area) {
            return std::ranges::find(area.words, field) != area.words.end();
        };
    };
    const auto beside = std::ranges::find_if(layout.areas, holds("dish"));
    if (beside != layout.areas.end() && std::ranges::none_of(layout.areas, holds("raw"))) {
        beside->words.insert(std::ranges::find(beside->words, "dish"), "raw");
    }
}

std::optional<Layout> read_root(toml::Reader& reader, std::string name) {
    auto root = reader.root();
    Layout layout;
    layout.name = std::move(name);
    root.line("about", 200);
    root.require({"print", "\"bag label\""});
    layout.kind = choice(root, "print", "a kind of print", print_words, wording::Kind::BagLabel);
    read_cells(root, layout);
    read_heights(root, layout);
    layout.column_gap = root.length("column_gap", {0.0_mm, 50.0_mm}).value_or(2.0_mm);
    read_row_gaps(root, layout);
    const auto picture = read_drawn(root);
    if (!picture) {
        return std::nullopt;
    }
    layout.columns = read_tracks(root, "columns", picture->columns);
    layout.rows = read_tracks(root, "rows", picture->rows);
    root.require("area");
    if (auto areas = root.table("area")) {
        for (const auto& drawn : picture->areas) {
            layout.areas.push_back(read_area(*areas, drawn));
        }
        areas->refuse_unknown();
    }
    place_raw(layout);
    read_rules(root, layout);
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
    // A reader notes every key it is asked for; one area is like the other.
    Diagnostics unwanted;
    const auto document = toml::parse("picture = [\"name\"]\n[area.name]\n[rule]\n", "", unwanted);
    std::set<std::string> asked;
    toml::Reader reader{document, unwanted, &asked};
    read_root(reader, "");
    return {asked.begin(), asked.end()};
}

} // namespace thawslip::layout
