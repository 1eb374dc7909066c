#include "service/print/look.h"

#include "base/list.h"
#include "layout/sheets/stock.h"
#include "toml/reader.h"

#include <fmt/format.h>

namespace thawslip::service {
namespace {

using toml::Table;

/// Every option that is kept: its name, how it is written, how it is read. All that belongs to a
/// look is in this list, or the test of it says so; `stock`, `layout` and `kept` have columns of
/// their own, and of a trial nothing is kept.
struct KeptOption {
    const char* name;
    std::string (*write)(const Look& look, const Settings& settings);
    void (*read)(Table& table, const char* name, Look& look);
};

std::string list_text(const std::vector<int>& cells) {
    return "[" + joined(cells, ", ", [](int cell) { return fmt::format("{}.0", cell); }) + "]";
}

std::string list_text(const std::vector<std::string>& ids) {
    return ids.empty() ? "[]" : fmt::format("[\"{}\"]", fmt::join(ids, "\", \""));
}

constexpr std::int64_t most_cells = layout::most_cells;
constexpr std::size_t most_kept_bags = 100'000;

constexpr KeptOption options[] = {
    {"first_cell",
     [](const Look& look, const Settings&) { return std::to_string(look.first_cell); },
     [](Table& table, const char* name, Look& look) {
         look.first_cell = static_cast<int>(table.integer(name, {1, most_cells}).value_or(1));
     }},
    // Called so in archives since the first of them.
    {"spoiled", [](const Look& look, const Settings&) { return list_text(look.skip); },
     [](Table& table, const char* name, Look& look) {
         for (const double cell : table.reals(name, most_cells, {1.0, double{most_cells}})) {
             look.skip.push_back(static_cast<int>(cell));
         }
     }},
    {"dpi",
     [](const Look& look, const Settings&) { // settled: see Printing::look
         return fmt::format("{}", look.dots_per_inch.value_or(usual_dots_per_inch));
     },
     [](Table& table, const char* name, Look& look) {
         look.dots_per_inch = table.real(name, {72.0, 4800.0});
     }},
    {"small_modules",
     [](const Look& look, const Settings&) { return fmt::format("{}", look.small_modules); },
     [](Table& table, const char* name, Look& look) {
         look.small_modules = table.boolean(name).value_or(false);
     }},
    {"large_print",
     [](const Look& look, const Settings& settings) {
         return fmt::format("{}", is_large_print(look, settings));
     },
     [](Table& table, const char* name, Look& look) { look.large_print = table.boolean(name); }},
    // Of a part, what it came to: the words it was asked by would mean other bags later.
    {"bags", [](const Look& look, const Settings&) { return list_text(look.part.ids); },
     [](Table& table, const char* name, Look& look) {
         for (auto& id : table.strings(name, most_kept_bags)) {
             look.part.ids.push_back(std::move(id.value));
         }
     }},
    {"copies",
     [](const Look& look, const Settings&) { return std::to_string(look.part.copies.value_or(1)); },
     [](Table& table, const char* name, Look& look) {
         look.part.copies = static_cast<int>(table.integer(name, {1, most_copies}).value_or(1));
     }},
};

} // namespace

bool is_large_print(const Look& look, const Settings& settings) {
    return look.large_print.value_or(settings.large_print);
}

std::string kept_options(const Look& look, const Settings& settings) {
    std::string text;
    for (const auto& option : setting_options()) {
        text += fmt::format("{} = \"{}\"\n", option.key, option.text(settings));
    }
    for (const auto& option : options) {
        text += fmt::format("{} = {}\n", option.name, option.write(look, settings));
    }
    return text;
}

void read_kept_options(Table& table, Look& look, Settings& settings) {
    for (const auto& option : setting_options()) {
        const auto written = table.string(option.key); // older prints have fewer
        if (const auto fault = written ? option.set(settings, written->value) : std::nullopt) {
            table.reader().error(written->key, *fault);
        }
    }
    for (const auto& option : options) {
        option.read(table, option.name, look);
    }
    table.refuse_unknown();
}

} // namespace thawslip::service
