#include "layout/files/stock_file.h"

#include "base/text_file.h"
#include "layout/files/sheet_keys.h"
#include "layout/sheets/ruler_text.h"
#include "toml/document.h"
#include "toml/file_table.h"
#include "toml/reader.h"

#include <algorithm>
#include <filesystem>
#include <fmt/format.h>
#include <set>

namespace thawslip::layout {
namespace {

constexpr std::size_t largest_file = 65'536; // bytes
constexpr std::size_t longest_about = 100;
constexpr Length default_safe_margin = Length::millimetres(2);

const toml::Key about_key{"about", "\"US Letter, 10 labels of 4 x 2 in\""};
const toml::Key cell_key{"cell", "[\"4 in\", \"2 in\"]"};
const toml::Key columns_key{"columns", "2"};
const toml::Key rows_key{"rows", "5"};
const toml::Key first_key{"first", "[\"5/32 in\", \"1/2 in\"]"};
const toml::Key pitch_key{"pitch", "[\"4 3/16 in\", \"2 in\"]"};
const toml::Key radius_key{"corner_radius", "\"2 mm\""};
const toml::Key margin_key{"safe_margin", "\"2 mm\""};
const toml::Key cut_key{"cut", "true"};
const toml::Key roll_key{"roll", "true"};
const toml::Key halves_key{"halves", "true"};

/// Reads the keys of one stock file. A key that is there but cannot be read makes the geometry
/// incomplete: then its arithmetic is not checked, since it would be about numbers nobody wrote.
class StockReader {
public:
    StockReader(toml::Reader& reader, std::string name) : reader_{reader}, table_{reader.root()} {
        stock_.name = std::move(name);
    }

    std::optional<Stock> read() {
        const auto about = table_.line(about_key, longest_about);
        stock_.cut = flag(cut_key);
        stock_.roll = flag(roll_key);
        stock_.halves = flag(halves_key);
        stock_.corner_radius = length(radius_key, {});
        stock_.safe_margin = length(margin_key, default_safe_margin);
        const Written written{paper(),         size(cell_key),     size(first_key),
                              size(pitch_key), count(columns_key), count(rows_key)};
        if (stock_.roll) {
            make_roll(written);
        } else {
            make_sheet(written);
        }
        table_.refuse_unknown();
        if (is_complete_) {
            place(check_geometry(stock_));
        }
        if (reader_.errors() > 0) {
            return std::nullopt;
        }
        stock_.about = about ? *about : described();
        return stock_;
    }

private:
    /// The grid's keys, as far as they are there.
    struct Written {
        std::optional<Size> sheet;
        std::optional<Size> cell;
        std::optional<Size> first;
        std::optional<Size> pitch;
        std::optional<int> columns;
        std::optional<int> rows;
    };

    void make_sheet(const Written& written) {
        if (!table_.has(paper_key) && !table_.has(sheet_key)) {
            table_.require(paper_key);
        }
        is_complete_ = is_complete_ && written.sheet;
        stock_.sheet = written.sheet.value_or(Size{});
        stock_.cell = written.cell.value_or(stock_.sheet);
        stock_.columns = written.columns.value_or(1);
        stock_.rows = written.rows.value_or(1);
        stock_.pitch = written.pitch.value_or(stock_.cell);
        stock_.first =
            written.first ? Point{written.first->width, written.first->height} : centred();
    }

    void make_roll(const Written& written) {
        for (const auto* key :
             {&paper_key, &sheet_key, &columns_key, &rows_key, &first_key, &pitch_key}) {
            if (table_.has(*key)) {
                reader_.error(table_.path_of(*key),
                              fmt::format("a roll has no {}: its page is its label", key->name),
                              {fmt::format("say cell = {} alone", cell_key.example)});
            }
        }
        table_.require(cell_key);
        is_complete_ = is_complete_ && written.cell;
        stock_.cell = written.cell.value_or(Size{});
        stock_.sheet = stock_.pitch = stock_.cell;
    }

    /// A key that was written but could not be read leaves the geometry incomplete.
    void note(const toml::Key& key, bool was_read) {
        is_complete_ = is_complete_ && (was_read || !table_.has(key));
    }

    /// The sheet's size, by name or by measure.
    std::optional<Size> paper() {
        const auto size = read_paper(table_);
        note(paper_key, size.has_value());
        note(sheet_key, size.has_value());
        return size;
    }

    bool flag(const toml::Key& key) {
        const auto value = table_.boolean(key);
        note(key, value.has_value());
        return value.value_or(false);
    }

    std::optional<int> count(const toml::Key& key) {
        const auto value = table_.integer(key, {1, most_cells});
        note(key, value.has_value());
        return value ? std::optional{static_cast<int>(*value)} : std::nullopt;
    }

    Length length(const toml::Key& key, Length fallback) {
        // Which lengths make sense is for check_geometry to say.
        constexpr Length far = Length::millimetres(10'000);
        const auto value = table_.length(key, {-far, far});
        note(key, value.has_value());
        return value.value_or(fallback);
    }

    std::optional<Size> size(const toml::Key& key) {
        const auto value = read_size(table_, key);
        note(key, value.has_value());
        return value;
    }

    /// The first cell's corner when all cells stand in the middle of the sheet. Cells that are
    /// too large start at the edge, so that the arithmetic tells by how much.
    Point centred() const {
        const Size block = stock_.block().size;
        return {std::max((stock_.sheet.width - block.width) / 2, Length{}),
                std::max((stock_.sheet.height - block.height) / 2, Length{})};
    }

    /// Faults of the geometry belong to the key that was written: not `sheet` but `paper`, not a
    /// `cell` that was left out.
    void place(const Diagnostics& faults) {
        for (const auto& fault : faults) {
            KeyPath key = fault.key;
            if (key == table_.path_of(cell_key) && !table_.has(cell_key)) {
                key = table_.path_of(sheet_key);
            }
            if (key == table_.path_of(sheet_key) && !table_.has(sheet_key)) {
                key = table_.path_of(paper_key);
            }
            reader_.error(key, fault.message, fault.hints);
        }
    }

    std::string described() const {
        const auto cell = ruler_text(stock_.cell, unit_of(stock_));
        if (stock_.cells() == 1) {
            return (stock_.roll ? "roll, label of " : "one cell of ") + cell;
        }
        return fmt::format("{} columns x {} rows of {}", stock_.columns, stock_.rows, cell);
    }

    toml::Reader& reader_;
    toml::Table table_;
    Stock stock_;
    bool is_complete_ = true;
};

} // namespace

StockReading read_stock(std::string text, std::string file, std::string name) {
    StockReading reading;
    const auto document = toml::parse(std::move(text), std::move(file), reading.diagnostics);
    reading.text = document.text();
    if (!document.well_formed()) {
        return reading;
    }
    toml::Reader reader{document, reading.diagnostics};
    reading.stock = StockReader{reader, std::move(name)}.read();
    reader.finish();
    sort_by_place(reading.diagnostics);
    return reading;
}

std::vector<std::string> accepted_stock_keys() {
    // A reader notes every key it is asked for.
    Diagnostics unwanted;
    const auto document = toml::parse("", "", unwanted);
    std::set<std::string> asked;
    toml::Reader reader{document, unwanted, &asked};
    StockReader{reader, ""}.read();
    return {asked.begin(), asked.end()};
}

StockReading load_stock(const std::string& path) {
    auto text = read_text_file(path, largest_file);
    if (!text) {
        return {std::nullopt, {to_diagnostic(text.fault())}, {}};
    }
    return read_stock(std::move(text).value(), path, std::filesystem::path{path}.stem().string());
}

StockShelf load_stocks(const std::string& folder) {
    std::vector<std::string> paths;
    for (const auto& entry : std::filesystem::directory_iterator{folder}) {
        if (entry.path().extension() == ".toml") {
            paths.push_back(entry.path().string());
        }
    }
    std::ranges::sort(paths);
    StockShelf shelf;
    for (const auto& path : paths) {
        auto reading = load_stock(path);
        if (reading.stock) {
            shelf.stocks.push_back(*std::move(reading.stock));
        }
        std::ranges::move(reading.diagnostics, std::back_inserter(shelf.diagnostics));
    }
    std::ranges::sort(shelf.stocks, {}, &Stock::name);
    return shelf;
}

} // namespace thawslip::layout
