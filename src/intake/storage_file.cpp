#include "intake/storage_file.h"

#include "base/printable.h"
#include "toml/choice.h"
#include "toml/file_table.h"
#include "toml/reader.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <string_view>
#include <vector>

namespace thawslip::intake {
namespace {

using kitchen::FoodKind;

constexpr std::size_t most_rows = 1000;
constexpr std::size_t most_letters = 200;

/// Citations by their key: "publisher, title, year".
using Sources = std::map<std::string, std::string>;

const std::vector<toml::Choice<FoodKind>>& kinds() {
    static const std::vector<toml::Choice<FoodKind>> all{
        {FoodKind::Other, {"other"}},
        {FoodKind::CookedDish, {"cooked dish"}},
        {FoodKind::Leftover, {"leftover"}},
        {FoodKind::ReadyToEat, {"ready to eat"}},
        {FoodKind::EggDish, {"egg dish"}},
        {FoodKind::RawGround, {"raw ground"}},
        {FoodKind::RawPoultry, {"raw poultry"}},
        {FoodKind::RawCut, {"raw cut"}},
        {FoodKind::RawFish, {"raw fish"}},
        {FoodKind::RawShellfish, {"raw shellfish"}},
        {FoodKind::RawEgg, {"raw egg"}},
        {FoodKind::Vegetable, {"vegetable"}},
        {FoodKind::InfantFood, {"infant food"}}};
    return all;
}

const std::vector<toml::Word>& statuses() {
    static const std::vector<toml::Word> words{
        {"read"}, {"read in a copy"}, {"from memory"}, {"mapping ours"}};
    return words;
}

/// What every row of every list has.
struct Row {
    int low = 0;
    int high = 0;
    bool weeks = false; ///< where months are usual
    std::string name;
    std::string source;
    std::string status;
};

std::string required_line(toml::Table& table, const toml::Key& key) {
    table.require(key);
    return table.line(key, most_letters).value_or("");
}

Sources read_sources(toml::Table& root) {
    Sources sources;
    auto list = root.table("source");
    if (!list) {
        return sources;
    }
    for (const auto& name : list->keys()) {
        if (auto entry = list->table(name.c_str())) {
            auto text = required_line(*entry, "publisher") + ", " + required_line(*entry, "title");
            if (const auto year = entry->line("year", most_letters)) {
                text += ", " + *year;
            }
            sources[name] = std::move(text);
            entry->refuse_unknown();
        }
    }
    return sources;
}

std::string read_source(toml::Table& table, const Sources& sources) {
    const auto name = required_line(table, "source");
    const auto found = sources.find(name);
    if (found == sources.end() && !name.empty()) {
        table.reader().error(table.path().key("source"),
                             in_quotes(name) + " is not a source: expected a key of [source]");
    }
    return found == sources.end() ? std::string{} : found->second;
}

std::string read_status(toml::Table& table) {
    const toml::Key key{"status", "\"read\""};
    table.require(key);
    const auto position = table.word(key, "a status", statuses());
    return position ? statuses()[*position].word : std::string{};
}

/// A row whose [low, high] stands under `span`, or under `weeks`.
std::optional<Row> read_row(toml::Table& table, const char* span, const Sources& sources) {
    constexpr double longest = 60;
    const bool weeks = table.has("weeks");
    span = weeks ? "weeks" : span;
    const toml::Key key{span, "[2, 3]"};
    table.require(key);
    const auto ends = table.reals(key, 2, {0, longest});
    Row row{
        0, 0, weeks, required_line(table, "row"), read_source(table, sources), read_status(table)};
    const auto is_whole = [](double end) { return end == std::floor(end); };
    if (ends.size() != 2 || ends[0] > ends[1] || !std::ranges::all_of(ends, is_whole)) {
        table.reader().error(table.path().key(span),
                             "expected two whole numbers, the lower one first");
        return std::nullopt;
    }
    row.low = static_cast<int>(ends[0]);
    row.high = static_cast<int>(ends[1]);
    return row;
}

/// Calls `take(list, row)` for every list's row in the subtable `key` of a class, in the order in
/// which lists are asked.
template <class Take>
void read_lists(toml::Table& entry, const char* key, const char* span,
                const std::vector<std::string>& lists, const Sources& sources, Take take) {
    auto table = entry.table(key);
    if (!table) {
        return;
    }
    for (const auto& list : lists) {
        if (auto cell = table->table(list.c_str())) {
            if (auto row = read_row(*cell, span, sources)) {
                take(list, *row);
            }
            cell->refuse_unknown();
        }
    }
    table->refuse_unknown();
}

kitchen::StorageRow freezer_row(const std::string& food, const std::string& list, const Row& row) {
    const int months = row.weeks ? 0 : 1;
    return {.food = food,
            .rule_set = list,
            .low = std::chrono::months{row.low * months},
            .high = std::chrono::months{row.high * months},
            .row = row.name,
            .source = row.source,
            .status = row.status,
            .low_weeks = std::chrono::weeks{row.low * (1 - months)},
            .high_weeks = std::chrono::weeks{row.high * (1 - months)}};
}

void read_class(toml::Table& entry, const Sources& sources, kitchen::StorageTable& result) {
    const auto food = required_line(entry, "food");
    const toml::Key kind_key{"kind", "\"cooked dish\""};
    entry.require(kind_key);
    const auto kind = read_choice(entry, kind_key, "a kind of food", kinds());
    const bool watery = entry.boolean("watery").value_or(false);
    const bool eaten_frozen = entry.boolean("eaten_frozen").value_or(false);
    result.classes.push_back({food, kind.value_or(FoodKind::Other), watery, eaten_frozen});
    read_lists(entry, "freezer", "months", result.rule_sets, sources,
               [&](const std::string& list, const Row& row) {
                   result.rows.push_back(freezer_row(food, list, row));
               });
    read_lists(entry, "fridge", "days", result.rule_sets, sources,
               [&](const std::string& list, const Row& row) {
                   result.before_freezing.push_back({food, list, std::chrono::days{row.low},
                                                     std::chrono::days{row.high}, row.name,
                                                     row.source, row.status});
               });
    entry.refuse_unknown();
}

std::optional<FoodKind> kind_named(toml::Table& entry, const toml::Text& name) {
    for (const auto& [kind, word] : kinds()) {
        if (word.word == name.value) {
            return kind;
        }
    }
    entry.reader().error(name.key, in_quotes(name.value) + " is not a kind of food");
    return std::nullopt;
}

void read_thawed(toml::Table& entry, const Sources& sources, kitchen::StorageTable& result) {
    const auto list = required_line(entry, "list");
    const auto counts = entry.boolean("days_before_count").value_or(true);
    const bool for_all_kinds = !entry.has("kinds");
    const auto names = entry.strings("kinds", kinds().size());
    const auto row = read_row(entry, "days", sources);
    entry.refuse_unknown();
    if (!row) {
        return;
    }
    const kitchen::ThawedRow any{std::nullopt,
                                 list,
                                 std::chrono::days{row->low},
                                 std::chrono::days{row->high},
                                 counts,
                                 row->name,
                                 row->source,
                                 row->status};
    if (for_all_kinds) {
        result.after_thawing.push_back(any);
    }
    for (const auto& name : names) {
        if (const auto kind = kind_named(entry, name)) {
            result.after_thawing.push_back(any);
            result.after_thawing.back().kind = kind;
        }
    }
}

void read_unsuitable(toml::Table& entry, const Sources& sources, kitchen::StorageTable& result) {
    const auto foods = entry.strings("foods", most_rows);
    const auto row = required_line(entry, "row");
    const auto source = read_source(entry, sources);
    const auto status = read_status(entry);
    const auto why = entry.line("why", most_letters).value_or("");
    const auto instead = entry.line("instead", most_letters).value_or("");
    for (const auto& food : foods) {
        result.unsuitable.push_back({food.value, row, source, status, why, instead});
    }
    entry.refuse_unknown();
}

} // namespace

kitchen::StorageTable read_storage(const toml::Document& document, Diagnostics& faults) {
    kitchen::StorageTable result;
    toml::Reader reader{document, faults};
    auto root = reader.root();
    for (const auto& list : root.strings("lists", most_rows)) {
        result.rule_sets.push_back(list.value);
    }
    const auto sources = read_sources(root);
    for (auto& entry : root.tables("class", most_rows)) {
        read_class(entry, sources, result);
    }
    for (auto& entry : root.tables("thawed", most_rows)) {
        read_thawed(entry, sources, result);
    }
    for (auto& entry : root.tables("unsuitable", most_rows)) {
        read_unsuitable(entry, sources, result);
    }
    root.refuse_unknown();
    reader.finish();
    return result;
}

} // namespace thawslip::intake
