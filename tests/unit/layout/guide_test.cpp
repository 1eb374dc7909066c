// layouts/README.md is what people draw layouts and measure stocks by: its examples are read by
// the readers themselves, and its tables have every key these know.

#include "layout/files/layout_file.h"
#include "layout/files/stock_file.h"
#include "support/command.h"
#include "wording/print_fields.h"

#include <doctest/doctest.h>
#include <set>
#include <string>

using namespace thawslip;
using namespace thawslip::layout;

namespace {

std::string guide() {
    return test_support::read_file(THAWSLIP_SOURCE_DIR "/layouts/README.md");
}

/// The example in TOML that has `part` in it.
std::string example_with(const std::string& part) {
    const auto text = guide();
    constexpr std::string_view opening = "```toml\n";
    for (auto at = text.find(opening); at != std::string::npos; at = text.find(opening, at + 1)) {
        const auto begin = at + opening.size();
        const auto example = text.substr(begin, text.find("```", begin) - begin);
        if (example.find(part) != std::string::npos) {
            return example;
        }
    }
    return {};
}

/// The words in backquotes that open the rows of the table headed `heading`.
std::set<std::string> rows_of(const std::string& heading) {
    const auto text = guide();
    const auto from = text.find("| " + heading + " |");
    REQUIRE(from != std::string::npos);
    const auto table = text.substr(from, text.find("\n\n", from) - from);
    std::set<std::string> keys;
    constexpr std::string_view opening = "\n| `";
    for (auto at = table.find(opening); at != std::string::npos; at = table.find(opening, at + 1)) {
        const auto begin = at + opening.size();
        keys.insert(table.substr(begin, table.find('`', begin) - begin));
    }
    return keys;
}

/// What stands in backquotes in one column of the row that begins with `name`.
std::set<std::string> words_in_row(const std::string& name, int column) {
    const auto text = guide();
    auto from = text.find("\n| " + name + " |") + 1;
    REQUIRE(from != 0);
    for (int i = 0; i <= column; ++i) {
        from = text.find('|', from) + 1;
    }
    const auto cell = text.substr(from, text.find('|', from) - from);
    std::set<std::string> words;
    for (auto at = cell.find('`'); at != std::string::npos;) {
        const auto end = cell.find('`', at + 1);
        words.insert(cell.substr(at + 1, end - at - 1));
        at = cell.find('`', end + 1);
    }
    return words;
}

std::optional<Layout> read(const std::string& text, Diagnostics& faults) {
    return read_layout(toml::parse(text, "guide", faults), "guide", faults);
}

} // namespace

TEST_CASE("the guide's stock and layout are read without a fault") {
    const auto stock = read_stock(example_with("pitch"), "guide", "guide");
    CHECK(stock.diagnostics.empty());
    REQUIRE(stock.stock);
    CHECK(stock.stock->cells() == 10);
    Diagnostics faults;
    const auto layout = read(example_with("picture"), faults);
    CHECK(faults.empty());
    REQUIRE(layout);
    CHECK(layout->areas.size() == 7);
}

TEST_CASE("the guide's tables have every key that the readers know, and no other") {
    const auto stock = accepted_stock_keys();
    CHECK(rows_of("key of a stock") == std::set<std::string>{stock.begin(), stock.end()});
    std::set<std::string> of_layout;
    std::set<std::string> of_area;
    const std::string area = "area.name.";
    for (const auto& key : accepted_layout_keys()) {
        if (key.starts_with(area)) {
            of_area.insert(key.substr(area.size()));
        } else if (key != "area.name" && key != "rule.name") {
            of_layout.insert(key);
        }
    }
    CHECK(rows_of("key of a layout") == of_layout);
    CHECK(rows_of("key of an area") == of_area);
}

TEST_CASE("the guide names every field of each kind of print, and which may never be lacking") {
    const std::pair<std::string, wording::Kind> kinds[] = {
        {"bag label", wording::Kind::BagLabel},
        {"finishing card", wording::Kind::FinishingCard},
        {"cook-day card", wording::Kind::CookDayCard},
        {"door list", wording::Kind::DoorList},
        {"day sheet", wording::Kind::DaySheet},
        {"plan sheet", wording::Kind::PlanSheet}};
    for (const auto& [name, kind] : kinds) {
        CAPTURE(name);
        std::set<std::string> always;
        std::set<std::string> others;
        for (const auto& field : wording::fields_of(kind)) {
            (field.stays == wording::Stays::Always ? always : others).insert(field.name);
        }
        CHECK(words_in_row(name, 1) == always);
        CHECK(words_in_row(name, 2) == others);
    }
}

TEST_CASE("the guide's layout has a place for all that a label may not lack") {
    Diagnostics faults;
    const auto layout = read(example_with("picture"), faults);
    REQUIRE(layout);
    for (const auto& field : wording::fields_of(layout->kind)) {
        CAPTURE(field.name);
        const bool is_said = std::ranges::any_of(
            field.said_by, [&](const auto& name) { return layout->area_with(name) != nullptr; });
        CHECK((field.stays == wording::Stays::IfRoom || is_said ||
               layout->area_with(field.name) != nullptr));
    }
}
