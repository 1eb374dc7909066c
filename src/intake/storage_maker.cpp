// Run when Thawslip is built: turns storage.toml into the constants of storage_data.h. A table with
// faults does not build.
//
// usage: thawslip_storage STORAGE.toml OUT.cpp

#include "base/text_file.h"
#include "intake/storage_file.h"

#include <cstdio>
#include <fmt/format.h>
#include <fstream>

namespace {

using namespace thawslip;

std::string in_quotes(const std::string& text) {
    return "R\"(" + text + ")\"";
}

template <class Row>
std::string row_data(const std::string& food, const Row& row) {
    return fmt::format("{{{}, {}, {}, {}, {}, {}, {}}}", in_quotes(food), in_quotes(row.rule_set),
                       row.low.count(), row.high.count(), in_quotes(row.row), in_quotes(row.source),
                       in_quotes(row.status));
}

/// One array of constants, an element of `rows` a line.
template <class Rows, class Write>
std::string array(const char* type, const char* name, const Rows& rows, Write write) {
    auto text = fmt::format("constexpr {} {}[] = {{\n", type, name);
    for (const auto& row : rows) {
        text += "    " + write(row) + ",\n";
    }
    return text + "};\n";
}

std::string constants_of(const kitchen::StorageTable& table) {
    const auto keeps = [](const auto& row) { return row_data(row.food, row); };
    const auto frozen = [](kitchen::StorageRow row) {
        const bool weeks = row.high_weeks.count() > 0;
        if (weeks) {
            row.low = std::chrono::months{row.low_weeks.count()};
            row.high = std::chrono::months{row.high_weeks.count()};
        }
        auto text = row_data(row.food, row);
        text.insert(text.size() - 1, weeks ? ", true" : "");
        return text;
    };
    const auto thawed = [](const kitchen::ThawedRow& row) {
        const int kind = row.kind ? static_cast<int>(*row.kind) : -1;
        return fmt::format("{{{}, {}, {}}}", row_data("", row), kind, row.days_before_count);
    };
    const auto unsuitable = [](const kitchen::UnsuitableRow& row) {
        return fmt::format("{{{}, {}, {}, {}, {}, {}}}", in_quotes(row.food), in_quotes(row.row),
                           in_quotes(row.source), in_quotes(row.status), in_quotes(row.why),
                           in_quotes(row.instead));
    };
    const auto known = [](const kitchen::FoodClass& food) {
        return fmt::format("{{{}, kitchen::FoodKind{{{}}}, {}, {}}}", in_quotes(food.food),
                           static_cast<int>(food.kind), food.watery, food.eaten_frozen);
    };
    return "// Made from src/kitchen/storage.toml by thawslip_storage.\n"
           "#include \"intake/storage_data.h\"\n\n"
           "namespace thawslip::intake {\nnamespace {\n\n" +
           array("std::string_view", "rule_sets", table.rule_sets, in_quotes) +
           array("ClassData", "classes", table.classes, known) +
           array("RowData", "freezer", table.rows, frozen) +
           array("RowData", "before_freezing", table.before_freezing, keeps) +
           array("ThawedData", "after_thawing", table.after_thawing, thawed) +
           array("UnsuitableData", "unsuitable", table.unsuitable, unsuitable) +
           "\n} // namespace\n\n"
           "const StorageData storage_data{rule_sets, classes, freezer, before_freezing,\n"
           "                               after_thawing, unsuitable};\n\n"
           "} // namespace thawslip::intake\n";
}

} // namespace

int main(int count, char** words) {
    if (count != 3) {
        fmt::print(stderr, "usage: thawslip_storage STORAGE.toml OUT.cpp\n");
        return 2;
    }
    constexpr std::size_t most_bytes = 1'000'000;
    auto text = read_text_file(words[1], most_bytes);
    if (!text) {
        fmt::print(stderr, "{}", to_text(to_diagnostic(text.fault())));
        return 1;
    }
    Diagnostics faults;
    const auto document = toml::parse(std::move(text).value(), words[1], faults);
    const auto table = intake::read_storage(document, faults);
    for (const auto& fault : faults) {
        fmt::print(stderr, "{}", to_text(fault, document.text()));
    }
    if (!faults.empty()) {
        return 1;
    }
    std::ofstream out{words[2]};
    out << constants_of(table);
    return out.flush() ? 0 : 1;
}
